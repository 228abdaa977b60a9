from collections.abc import Iterator

import pytest

from bot.local.server import StandIn
from core.store import Store
from tests.support.club import Club, club_at
from tests.support.database import any_store, postgres_template, sqlite_template, store
from tests.support.post_room import PostRoom, post_room_at
from tests.support.workspace import AppHost, app_host, stand_in

__all__ = ["any_store", "app_host", "postgres_template", "sqlite_template", "stand_in", "store"]


@pytest.fixture
def club(stand_in: StandIn, app_host: AppHost, store: Store) -> Iterator[Club]:
    """The club over signed HTTP."""
    with club_at(stand_in, app_host, store) as running:
        yield running


@pytest.fixture
def room(stand_in: StandIn, store: Store) -> Iterator[PostRoom]:
    """An outbox, and messages whose words the test sets."""
    with post_room_at(stand_in, store) as running:
        yield running
