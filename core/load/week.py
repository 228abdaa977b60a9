"""This week's throws beside the three weeks before, for a coach to read."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from core.load.averages import ACUTE, CHRONIC
from core.load.daily import Day, daily

#: "More than usual": at least half as much again, and this many throws more (common practice,
#: no source); a comparison with so many unknown days would compare what was logged, no more.
MORE_BY, MORE_THROWS, MOST_UNKNOWN = 1.5, 60, 2


@dataclass(frozen=True, slots=True)
class WeekLoad:
    """Throws of the last 7 days, the weekly average of the 28 and of the 21 before the week.

    Sums of what was logged: `unknown_week` and `unknown` say how many of the 7 and of the 28
    days nobody logged. `days` are the days from the first line on, at most 28.
    """

    week: int
    month_average: float
    before_average: float
    unknown_week: int
    unknown: int
    days: int

    @property
    def comparable(self) -> bool:
        """Whether 28 days are on record, of which nearly all are known."""
        return self.days >= CHRONIC and self.unknown <= MOST_UNKNOWN

    @property
    def more_than_usual(self) -> bool:
        """Whether this week is well above the three before; false where that cannot be said."""
        return self.comparable and self.is_more(MORE_THROWS)

    def is_more(self, throws: float) -> bool:
        """At least half as much again as the average of the three weeks, and `throws` more."""
        more = self.week - self.before_average
        return more >= throws and self.week >= MORE_BY * self.before_average


def week_load(record: Sequence[Day], on: date) -> WeekLoad | None:
    """The load of the seven days that end on `on`; none before the first line."""
    so_far = [one for one in record if one.on <= on]
    if not so_far:
        return None
    loads = daily(so_far, on - timedelta(days=CHRONIC - 1), on)
    begun = (on - min(one.on for one in so_far)).days + 1
    days = min(begun, CHRONIC)
    logged = [load or 0 for load in loads]
    return WeekLoad(
        week=sum(logged[-ACUTE:]),
        month_average=sum(logged) / (CHRONIC / ACUTE),
        before_average=sum(logged[:-ACUTE]) / (CHRONIC / ACUTE - 1),
        unknown_week=sum(load is None for load in loads[-ACUTE:]),
        unknown=sum(load is None for load in loads),
        days=days,
    )
