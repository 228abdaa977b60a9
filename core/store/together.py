"""Rows of several tables in one question to the database."""

from collections.abc import Sequence
from typing import Any

from sqlalchemy import ColumnElement, and_, literal, select, union_all
from sqlmodel import Session

from core.model.base import Stored

#: A table, and which of its rows are wanted.
Wanted = tuple[type[Stored], ColumnElement[bool]]


class Together:
    """The question, put together once: its conditions hold `bindparam`s for what changes."""

    def __init__(self, *wanted: Wanted) -> None:
        """One statement: a numbered row for each table, each table joined to its number alone.

        No table may stand there twice.
        """
        numbers = union_all(*(select(literal(n).label("n")) for n in range(len(wanted)))).subquery()
        tables = [table for table, _ in wanted]
        asked = select(*tables).select_from(numbers)
        for number, (table, condition) in enumerate(wanted):
            asked = asked.outerjoin(table, and_(numbers.c.n == number, condition))
        self._asked, self._tables = asked, len(wanted)

    def rows(self, session: Session, **values: Any) -> list[list[Any]]:
        """The rows of each table, in the order of the tables; rows in no order."""
        found: list[list[Any]] = [[] for _ in range(self._tables)]
        for row in session.execute(self._asked, values):
            _put(found, row)
        return found


def together(session: Session, *wanted: Wanted) -> list[list[Any]]:
    """The rows of each table that is wanted, asked for once; see `Together`."""
    return Together(*wanted).rows(session)


def _put(found: list[list[Any]], row: Sequence[Any]) -> None:
    """A row holds one of the tables; none where its table has no row that is wanted."""
    for place, one in enumerate(row):
        if one is not None:
            found[place].append(one)
            return
