"""Insert a row unless one with its key is there: whichever process comes first has it."""

from collections.abc import Mapping
from typing import Any

from sqlalchemy.dialects import postgresql, sqlite
from sqlmodel import Session, SQLModel


def insert_once(
    session: Session, table: type[SQLModel], values: Mapping[str, Any]
) -> postgresql.Insert | sqlite.Insert:
    """An insert that does nothing where a row with the same unique key is there already."""
    if session.get_bind().dialect.name == "postgresql":
        return postgresql.insert(table).values(dict(values)).on_conflict_do_nothing()
    return sqlite.insert(table).values(dict(values)).on_conflict_do_nothing()
