from collections.abc import Iterator

import pytest

from bot.local.server import StandIn
from core.store import Store
from tests.support.database import any_store, postgres_template, sqlite_template, store
from tests.support.post_room import PostRoom, post_room_at
from tests.support.workspace import stand_in

__all__ = ["any_store", "postgres_template", "sqlite_template", "stand_in", "store"]


@pytest.fixture
def room(stand_in: StandIn, store: Store) -> Iterator[PostRoom]:
    with post_room_at(stand_in, store) as running:
        yield running


@pytest.fixture
def any_room(stand_in: StandIn, any_store: Store) -> Iterator[PostRoom]:
    """The post room on each engine."""
    with post_room_at(stand_in, any_store) as running:
        yield running
