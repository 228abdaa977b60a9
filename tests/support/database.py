"""A fresh database for a test: a migrated template is copied, on SQLite or PostgreSQL."""

import os
import shutil
from collections.abc import Iterator
from itertools import count
from pathlib import Path

import pytest
from sqlalchemy import create_engine, text

from core.store import Store, migrate

#: The URL of a PostgreSQL server on which databases may be made, e.g. postgresql+psycopg://…
POSTGRES = "SPINKEEPER_TEST_POSTGRES"
_numbers = count(1)


@pytest.fixture(scope="session")
def sqlite_template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A migrated SQLite file, copied for each test."""
    path = tmp_path_factory.mktemp("template") / "template.sqlite3"
    store = Store(f"sqlite:///{path}")
    migrate(store)
    store.close()
    return path


@pytest.fixture(scope="session")
def postgres_template() -> Iterator[tuple[str, str]]:
    """The server's URL, and the name of a migrated template database on it.

    Each conftest that imports this fixture has one of its own, so each has its own name.
    """
    server = os.environ.get(POSTGRES)  # noqa: TID251 - tests alone go by this variable
    if not server:
        pytest.skip(f"{POSTGRES} is not set: no PostgreSQL server to test on")
    name = f"spinkeeper_template_{os.getpid()}_{next(_numbers)}"
    _on_server(server, f"DROP DATABASE IF EXISTS {name}", f"CREATE DATABASE {name}")
    store = Store(_database(server, name))
    migrate(store)
    store.close()
    yield server, name
    _on_server(server, f"DROP DATABASE {name}")


@pytest.fixture
def store(sqlite_template: Path, tmp_path: Path) -> Iterator[Store]:
    """A fresh SQLite database."""
    path = tmp_path / "test.sqlite3"
    shutil.copy(sqlite_template, path)
    fresh = Store(f"sqlite:///{path}")
    yield fresh
    fresh.close()


@pytest.fixture(params=["sqlite", pytest.param("postgres", marks=pytest.mark.postgres)])
def any_store(request: pytest.FixtureRequest) -> Iterator[Store]:
    """A fresh database on each engine: for whatever writes."""
    if request.param == "sqlite":
        yield request.getfixturevalue("store")
        return
    server, template = request.getfixturevalue("postgres_template")
    name = f"spinkeeper_test_{os.getpid()}_{next(_numbers)}"
    _on_server(server, f"CREATE DATABASE {name} TEMPLATE {template}")
    fresh = Store(_database(server, name))
    yield fresh
    fresh.close()
    _on_server(server, f"DROP DATABASE {name}")


def _database(server: str, name: str) -> str:
    return f"{server.rsplit('/', 1)[0]}/{name}"


def _on_server(server: str, *statements: str) -> None:
    engine = create_engine(server, isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        for statement in statements:
            connection.execute(text(statement))
    engine.dispose()
