"""Insert a row unless one with its key is there: whichever process comes first has it."""

from collections.abc import Mapping
from functools import cache
from typing import Any

from sqlalchemy import bindparam
from sqlalchemy.dialects import postgresql, sqlite
from sqlmodel import Session, SQLModel


def insert_once(
    session: Session, table: type[SQLModel], values: Mapping[str, Any], returning: Any = None
) -> Any:
    """Insert; nothing happens where a row with the same unique key is there already.

    Gives what `returning` names of the new row, or none where no row was added.
    """
    dialect = session.get_bind().dialect.name
    statement = _statement(dialect, table, tuple(values), returning)
    result = session.execute(statement, {_new(name): value for name, value in values.items()})
    return result.scalar() if returning is not None else None


@cache
def _statement(dialect: str, table: type[SQLModel], names: tuple[str, ...], returning: Any) -> Any:
    """Put together once: building it costs as much as running it."""
    insert: Any = (postgresql.insert if dialect == "postgresql" else sqlite.insert)(table)
    insert = insert.values({name: bindparam(_new(name)) for name in names})
    insert = insert.on_conflict_do_nothing()
    return insert.returning(returning) if returning is not None else insert


def _new(name: str) -> str:
    return f"new_{name}"
