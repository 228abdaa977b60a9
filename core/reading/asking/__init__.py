"""Questions in plain words that the log can answer."""

from collections.abc import Sequence
from datetime import datetime
from typing import Literal

from core.reading.asking.asked import Activity, Asked, PlannedGame, Span, Topic

__all__ = ["Activity", "Asked", "PlannedGame", "Span", "Topic", "ask"]


def ask(
    text: str,
    posted: datetime,
    *,
    roster: Sequence[str] = (),
    lang: Literal["en", "es"] | None = None,
) -> Asked | None:
    """Placeholder until the reader of questions is in place."""
    return None
