"""From outings to throws by day: known, known to be none, or unknown."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta


@dataclass(frozen=True, slots=True)
class Day:
    """One thing on record about a day: so many throws of any kind, or an uncounted outing.

    A day off that somebody logged has zero throws.
    """

    on: date
    throws: int | None


def daily(record: Iterable[Day], first: date, last: date) -> list[int | None]:
    """Throws on each day from `first` to `last`, both included, oldest first.

    A day without a line is unknown, and so is one with an outing that nobody counted.
    """
    by_day: dict[date, int | None] = {}
    for one in record:
        so_far = by_day.get(one.on, 0)
        known = so_far is not None and one.throws is not None
        by_day[one.on] = (so_far or 0) + (one.throws or 0) if known else None
    days = (last - first).days + 1
    return [by_day.get(first + timedelta(days=place)) for place in range(days)]
