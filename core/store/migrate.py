"""Bring a database to the newest schema; run at every start, harmless when it is there."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from alembic import command
from alembic.config import Config
from sqlalchemy import Connection, text

from core.store.engine import BUSY_TIMEOUT_MS, Store

MIGRATIONS = Path(__file__).parent / "migrations"
#: Any fixed number will do: it keeps two starting processes from migrating at once.
_LOCK = 7_142_014
#: A start waits so long for another process that migrates (ms); no line waits meanwhile.
_OTHER_MIGRATES_MS = 60_000


def migrate(store: Store, revision: str = "head") -> None:
    """Migrate the database to `revision`, one process at a time."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
    engine = store.engine.execution_options(spinkeeper_writing=True)
    with engine.connect() as connection, _free_of_references(connection), connection.begin():
        if connection.dialect.name == "postgresql":
            connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": _LOCK})
        config.attributes["connection"] = connection
        command.upgrade(config, revision)


@contextmanager
def _free_of_references(connection: Connection) -> Iterator[None]:
    """SQLite alters a table by copying it, which a reference to it would forbid meanwhile."""
    if connection.dialect.name != "sqlite":
        yield
        return
    # The pragma does nothing inside a transaction, so it goes to the driver before one begins.
    driver: Any = connection.connection.driver_connection
    driver.execute("PRAGMA foreign_keys = OFF")
    driver.execute(f"PRAGMA busy_timeout = {_OTHER_MIGRATES_MS}")
    try:
        yield
    finally:
        driver.execute("PRAGMA foreign_keys = ON")
        driver.execute(f"PRAGMA busy_timeout = {BUSY_TIMEOUT_MS}")
