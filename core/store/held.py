"""Keeps the rows of a short transaction in its hand, so that none is asked for twice."""

from typing import Any

from sqlalchemy import event
from sqlmodel import Session

_HELD = "rows that are held"


def hold(session: Session) -> None:
    """Let a session hold every row that it comes by until it ends.

    By itself it lets go of a row that nobody uses just now, and asks again for the next one
    who does. Only for a transaction that is a few rows long.
    """
    session.info[_HELD] = []


def _keep(session: Session, row: Any) -> None:
    held: list[Any] | None = session.info.get(_HELD)
    if held is not None:
        held.append(row)


event.listen(Session, "loaded_as_persistent", _keep)
event.listen(Session, "pending_to_persistent", _keep)


def locks_rows(session: Session) -> bool:
    """Whether a row is locked by itself: SQLite's one writer has all of them."""
    return session.get_bind().dialect.name != "sqlite"
