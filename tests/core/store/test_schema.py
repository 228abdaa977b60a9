"""The migrations lead from nothing to exactly the tables that the models describe."""

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import inspect

from core.model import Stored
from core.store import Store, StoreError, migrate


def test_the_migrated_schema_is_the_models_schema(any_store: Store) -> None:
    with any_store.engine.connect() as connection:
        context = MigrationContext.configure(
            connection, opts={"compare_type": True, "compare_server_default": True}
        )

        assert compare_metadata(context, Stored.metadata) == []


def test_migrating_again_changes_nothing(any_store: Store) -> None:
    before = set(inspect(any_store.engine).get_table_names())

    migrate(any_store)

    assert set(inspect(any_store.engine).get_table_names()) == before


def test_two_processes_may_start_on_an_empty_database_at_once(tmp_path: Path) -> None:
    url = f"sqlite:///{tmp_path / 'new.sqlite3'}"
    stores = [Store(url), Store(url), Store(url)]

    with ThreadPoolExecutor(3) as pool:
        list(pool.map(migrate, stores))

    assert "outing" in inspect(stores[0].engine).get_table_names()
    for store in stores:
        store.close()


def test_every_unique_key_of_the_models_is_in_the_database(any_store: Store) -> None:
    found = inspect(any_store.engine)

    keys = {
        (table, tuple(constraint["column_names"]))
        for table in found.get_table_names()
        for constraint in found.get_unique_constraints(table)
    }

    assert ("line", ("workspace_id", "channel", "ts")) in keys
    assert ("outboxmessage", ("workspace_id", "slot")) in keys
    assert ("outing", ("line_id", "slot")) in keys


@pytest.mark.parametrize("url", ["nonsense", "nosuch://host/db", "oracle://u@h/db"])
def test_an_address_of_no_database_is_said_in_one_sentence(url: str) -> None:
    with pytest.raises(StoreError, match="SPINKEEPER_DATABASE_URL"):
        Store(url)
