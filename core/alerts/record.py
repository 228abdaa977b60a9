"""A pitcher's record as the thresholds see it: plain values, oldest first."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from core.load import Day


@dataclass(frozen=True, slots=True)
class Pitched:
    """One outing; null where nobody counted. `id` tells it from the others of its day."""

    id: int
    on: date
    kind: str | None
    pitches: int | None = None
    breaking: int | None = None
    changeup: int | None = None
    effort: int | None = None
    outs: int | None = None
    caught_outs: int | None = None
    #: The team it was pitched for; null where that is not known.
    team: int | None = None


@dataclass(frozen=True, slots=True)
class Felt:
    """A day on which an arm was reported as hurting or sore (`hurts`) or as tired."""

    on: date
    hurts: bool


@dataclass(frozen=True, slots=True)
class YearCap:
    """The most outs that a rule book allows in twelve months, and the book's title."""

    outs: int
    source: str


Span = tuple[date, date]


@dataclass(frozen=True, slots=True)
class Record:
    """Everything that the thresholds of one pitcher in one team go by."""

    outings: tuple[Pitched, ...] = ()
    felt: tuple[Felt, ...] = ()
    #: First and last days of the team's seasons and of its build-ups.
    seasons: tuple[Span, ...] = ()
    build_ups: tuple[Span, ...] = ()
    #: The strictest of the books that bind him now; none where no book has such a number.
    year_cap: YearCap | None = None
    #: The first day of which the team has any outing: before it nobody was silent.
    begins: date | None = None

    def within(self, on: date, days: int) -> tuple[Pitched, ...]:
        """The outings of the so many days that end on `on`."""
        first = on - timedelta(days=days - 1)
        return tuple(one for one in self.outings if first <= one.on <= on)

    def games(self, on: date) -> tuple[Pitched, ...]:
        """The games up to a day, oldest first."""
        games = (one for one in self.outings if one.kind == "game" and one.on <= on)
        return tuple(sorted(games, key=lambda one: (one.on, one.id)))

    def days(self) -> list[Day]:
        """The outings as load counts them."""
        return [Day(one.on, 0 if one.kind == "off" else one.pitches) for one in self.outings]


def inside(on: date, spans: Iterable[Span]) -> Span | None:
    """The span that holds a day, if one does."""
    return next((span for span in spans if span[0] <= on <= span[1]), None)
