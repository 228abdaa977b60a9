from tests.support.database import any_store, postgres_template, sqlite_template, store
from tests.support.team_files import club

__all__ = ["any_store", "club", "postgres_template", "sqlite_template", "store"]
