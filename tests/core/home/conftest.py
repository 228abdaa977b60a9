from tests.support.database import any_store, postgres_template, sqlite_template, store

__all__ = ["any_store", "postgres_template", "sqlite_template", "store"]
