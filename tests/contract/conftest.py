from collections.abc import Iterator

import pytest

from bot.local.server import StandIn
from core.store import Store
from tests.support.club import Club, club_at
from tests.support.database import any_store, postgres_template, sqlite_template, store
from tests.support.workspace import AppHost, app_host, stand_in

__all__ = [
    "any_store",
    "app_host",
    "postgres_template",
    "sqlite_template",
    "stand_in",
    "store",
]


@pytest.fixture
def club(stand_in: StandIn, app_host: AppHost, store: Store) -> Iterator[Club]:
    """The club over signed HTTP."""
    with club_at(stand_in, app_host, store) as running:
        yield running


@pytest.fixture
def socket_club(stand_in: StandIn, app_host: AppHost, store: Store) -> Iterator[Club]:
    """The club over Socket Mode."""
    with club_at(stand_in, app_host, store, socket=True) as running:
        yield running
