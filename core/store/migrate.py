"""Bring a database to the newest schema; run at every start, harmless when it is there."""

from pathlib import Path

from alembic import command
from alembic.config import Config
from sqlalchemy import text

from core.store.engine import Store

MIGRATIONS = Path(__file__).parent / "migrations"
#: Any fixed number will do: it keeps two starting processes from migrating at once.
_LOCK = 7_142_014


def migrate(store: Store, revision: str = "head") -> None:
    """Migrate the database to `revision`, one process at a time."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
    engine = store.engine.execution_options(spinkeeper_writing=True)
    with engine.begin() as connection:
        if connection.dialect.name == "postgresql":
            connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": _LOCK})
        config.attributes["connection"] = connection
        command.upgrade(config, revision)
