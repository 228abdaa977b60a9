"""Short ways to read a line in a test. Wednesday 12 August 2026, eight in the evening."""

from datetime import datetime
from typing import Any, Literal

from core.reading import Reading, read

POSTED = datetime.fromisoformat("2026-08-12T20:00")
Author = Literal["pitcher", "coach", "guardian"]


def reading_of(text: str, author: Author = "pitcher", roster: tuple[str, ...] = ()) -> Reading:
    """The whole reading."""
    return read(text, POSTED, author, roster=roster)


def entries_of(text: str, author: Author = "pitcher", roster: tuple[str, ...] = ()) -> Any:
    """The entries as JSON values; the line must leave nothing unread."""
    reading = reading_of(text, author, roster)
    assert reading.unread == (), reading.unread
    return [entry.as_json() for entry in reading.entries]


def reasons_of(text: str, author: Author = "pitcher") -> set[str]:
    """Why parts of the line were not read."""
    return {str(unread.reason) for unread in reading_of(text, author).unread}
