"""Sums of a unit over outings in order of days, quick for any stretch of a long record."""

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import accumulate

from core.rest.record import Counted, Record
from core.rulebooks import Measure, Unit


@dataclass(frozen=True, slots=True)
class Tally:
    """A sum: of what was counted, how many outings were not, and whether one is an estimate.

    `trim` is what the last batter added, where his first pitch decides.
    """

    value: int
    uncounted: int = 0
    about: bool = False
    trim: int = 0

    @property
    def settled(self) -> int:
        """The count that decides: up to the first pitch to the last batter."""
        return self.value - self.trim


EMPTY = Tally(0)

_AMOUNTS: dict[Unit, Callable[[Counted], int | None]] = {
    "pitches": lambda outing: outing.pitches,
    "outs": lambda outing: outing.outs,
    "innings-begun": lambda outing: outing.innings_begun,
    "appearances": lambda _: 1,
}


def _steps(unit: Unit, outings: Sequence[Counted]) -> Iterator[int | None]:
    """What each outing adds to the sum; None where nobody counted."""
    if unit == "caught-innings":
        yield from (outing.caught_innings for outing in outings)
    elif unit == "caught-outs":
        yield from (outing.caught_outs for outing in outings)
    elif unit in ("days", "games"):
        yield from _firsts(outings, by_game=unit == "games")
    else:
        amount = _AMOUNTS[unit]
        yield from (amount(outing) if outing.pitched else 0 for outing in outings)


def _firsts(outings: Sequence[Counted], *, by_game: bool) -> Iterator[int]:
    """1 for the first outing of each day (or game); one without a number is a game of its own."""
    seen: set[tuple[date, int | None]] = set()
    for outing in outings:
        key = (outing.day, outing.game if by_game else None)
        fresh = key not in seen or (by_game and outing.game is None)
        if outing.pitched:
            seen.add(key)
        yield int(outing.pitched and fresh)


class Running:
    """Running sums of one unit over a whole record."""

    def __init__(self, unit: Unit, outings: Sequence[Counted]) -> None:
        steps = list(_steps(unit, outings))
        self.known = [0, *accumulate(step or 0 for step in steps)]
        self.missing = [0, *accumulate(step is None for step in steps)]
        self.about = [0, *accumulate(outing.about for outing in outings)]


def sum_between(record: Record, measure: Measure, first: date, last: date) -> Tally:
    """The measure from the first day to the last, both included."""
    low, high = bisect_left(record.dates, first), bisect_right(record.dates, last)
    if low >= high:
        return EMPTY
    running = record.running.get(measure.unit)
    if running is None:
        running = record.running[measure.unit] = Running(measure.unit, record.outings)
    return Tally(
        running.known[high] - running.known[low],
        running.missing[high] - running.missing[low],
        running.about[high] > running.about[low],
        _trim(record.outings, low, high) if measure.finish_batter else 0,
    )


def sum_of(outings: Sequence[Counted], measure: Measure) -> Tally:
    """The measure over a few outings in order of days."""
    steps = list(_steps(measure.unit, outings))
    return Tally(
        sum(step or 0 for step in steps),
        sum(step is None for step in steps),
        any(outing.about for outing in outings),
        _trim(outings, 0, len(outings)) if measure.finish_batter else 0,
    )


def _trim(outings: Sequence[Counted], low: int, high: int) -> int:
    """The trim of the last outing in which he pitched."""
    return next((outings[n].trim for n in range(high - 1, low - 1, -1) if outings[n].pitched), 0)
