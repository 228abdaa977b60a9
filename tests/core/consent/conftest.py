from collections.abc import Iterator

import pytest

from core.store import Store
from tests.support.database import any_store, postgres_template, sqlite_template, store
from tests.support.ledger_desk import Desk, desk_on

__all__ = ["any_store", "postgres_template", "sqlite_template", "store"]


@pytest.fixture
def desk(any_store: Store) -> Iterator[Desk]:
    """The team's record on each engine."""
    with desk_on(any_store) as running:
        yield running
