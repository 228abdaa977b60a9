"""Engine, sessions and migrations: SQLite by default, PostgreSQL by its URL."""

from core.store.engine import Store, StoreError
from core.store.migrate import migrate

__all__ = ["Store", "StoreError", "migrate"]
