"""What share of his game pitches a pitcher threw as breaking balls.

The share is a count of what was thrown, so it stands as it is. Pitches of a game whose
breaking balls nobody counted are untyped and reported apart, and so are breaking balls of
a game whose pitches nobody counted.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum


class Window(StrEnum):
    """The spans a share is given over."""

    WEEK = "last 7 days"
    MONTH = "last 28 days"
    SEASON = "season"


DAYS = {Window.WEEK: 7, Window.MONTH: 28}


@dataclass(frozen=True, slots=True)
class Game:
    """The counts of one game outing; null where nobody counted."""

    on: date
    pitches: int | None = None
    breaking: int | None = None
    curve: int | None = None
    slider: int | None = None


@dataclass(frozen=True, slots=True)
class Mix:
    """Breaking balls among typed game pitches; `curve + slider` may be less than `breaking`."""

    breaking: int = 0
    typed: int = 0
    curve: int = 0
    slider: int = 0
    untyped: int = 0
    games: int = 0

    @property
    def share(self) -> float | None:
        """Breaking balls over typed pitches, 0 to 1; none when no pitch was typed."""
        return self.breaking / self.typed if self.typed else None


def mix_of(games: Iterable[Game]) -> Mix:
    """The mix of these games together."""
    chosen = [game for game in games if game.pitches is not None or game.breaking is not None]
    typed = [game for game in chosen if game.pitches is not None and game.breaking is not None]
    return Mix(
        breaking=sum(game.breaking or 0 for game in typed),
        typed=sum(game.pitches or 0 for game in typed),
        curve=sum(game.curve or 0 for game in typed),
        slider=sum(game.slider or 0 for game in typed),
        untyped=sum(game.pitches or 0 for game in chosen if game.breaking is None),
        games=len(chosen),
    )


def windows(games: Sequence[Game], on: date, season_start: date | None = None) -> dict[Window, Mix]:
    """The mix over the windows that end on `on`, that day included.

    The season begins on `season_start`, by default on 1 January of the year of `on`.
    """
    starts = {window: on - timedelta(days=days - 1) for window, days in DAYS.items()}
    starts[Window.SEASON] = season_start or date(on.year, 1, 1)
    return {
        window: mix_of(game for game in games if start <= game.on <= on)
        for window, start in starts.items()
    }
