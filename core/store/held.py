"""Keeps the rows of a short transaction in its hand, so that none is asked for twice."""

from typing import Any

from sqlalchemy import event
from sqlmodel import Session

_HELD = "rows that are held"


def hold(session: Session) -> Session:
    """Let a session hold every row that it comes by until it ends.

    By itself it lets go of a row that nobody uses just now, and asks again for the next one
    who does. Only for a transaction that is a few rows long.
    """
    held: list[Any] = session.info.setdefault(_HELD, [])

    def keep(_session: Any, row: Any) -> None:
        held.append(row)

    event.listen(session, "loaded_as_persistent", keep)
    event.listen(session, "pending_to_persistent", keep)
    return session


def locks_rows(session: Session) -> bool:
    """Whether a row is locked by itself: SQLite's one writer has all of them."""
    return session.get_bind().dialect.name != "sqlite"
