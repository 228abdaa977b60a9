"""The base of every stored row, and how constraints are named.

Names are given, so that a later migration can drop or change a constraint on any database.
"""

from typing import Any

from sqlalchemy import MetaData
from sqlmodel import SQLModel


class Stored(SQLModel):
    """A row of the database."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "fk": "fk_%(table_name)s_%(column_0_name)s_%(referred_table_name)s",
            "pk": "pk_%(table_name)s",
        }
    )


def key(row: Any) -> int:
    """The primary key of a row that has been flushed; `ValueError` before that."""
    if row.id is None:
        raise ValueError(f"{type(row).__name__} has no id yet: flush the session first")
    return int(row.id)
