"""A named day becomes dates: the next such day for what lies ahead, the last for what is past."""

from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from core.reading.asking.asked import Span

DAY = timedelta(days=1)
LONGEST_LOOK_AHEAD = 120 * DAY  # a "2/3" farther ahead is more likely no date at all


class Turn(StrEnum):
    """The word before a weekday, a weekend or a week."""

    NONE = ""
    THIS = "this"
    NEXT = "next"
    LAST = "last"


@dataclass(frozen=True, slots=True)
class Named:
    """A day as named: exactly one way of naming is filled in."""

    offset: int | None = None  # days from today
    weekday: int | None = None  # 0 is Monday
    weekend: bool = False
    week: bool = False
    month: int | None = None  # with `day`, and `year` where typed
    day: int | None = None  # alone: "the 9th"
    year: int | None = None
    turn: Turn = Turn.NONE
    until: "Named | None" = None  # "fri-sun"
    also: "Named | None" = None  # "sat 5/9": both must be the same day


def resolve(named: Named, today: date, past: bool) -> tuple[date, ...]:
    """The dates of a named day, ascending; () when it is no date or two readings fit."""
    if named.also is not None:
        return _agreeing(named, today, past)
    if named.until is not None:
        return _range(named, named.until, today, past)
    if named.offset is not None:
        return (today + named.offset * DAY,)
    if named.weekend:
        return _weekend(named.turn, today, past)
    if named.week:
        return _week(named.turn, today, past)
    if named.weekday is not None:
        return _weekday(named.weekday, named.turn, today, past)
    return _dated(named, today, past)


def _weekday(weekday: int, turn: Turn, today: date, past: bool) -> tuple[date, ...]:
    if turn is Turn.LAST or (past and turn is not Turn.NEXT):
        back = (today.weekday() - weekday) % 7
        return (today - (back or (7 if turn is Turn.LAST else 0)) * DAY,)
    ahead = (weekday - today.weekday()) % 7
    if turn is Turn.NEXT:
        # "next Saturday" on a Tuesday is this week's to some and next week's to others.
        return () if 0 < ahead <= 6 - today.weekday() else (today + (ahead or 7) * DAY,)
    return (today + ahead * DAY,)


def _weekend(turn: Turn, today: date, past: bool) -> tuple[date, ...]:
    saturday = today - (today.weekday() - 5) * DAY  # of this Monday-to-Sunday week
    on_weekend = today >= saturday
    if turn is Turn.NEXT:
        return (saturday + 7 * DAY, saturday + 8 * DAY) if on_weekend else ()
    if turn is Turn.LAST:
        return (saturday - 7 * DAY, saturday - 6 * DAY)
    if past:
        saturday -= 0 * DAY if on_weekend else 7 * DAY
        return tuple(day for day in (saturday, saturday + DAY) if day <= today)
    return tuple(day for day in (saturday, saturday + DAY) if day >= today)


def _week(turn: Turn, today: date, past: bool) -> tuple[date, ...]:
    monday = today - today.weekday() * DAY
    if turn is Turn.LAST:
        return days_between(monday - 7 * DAY, monday - DAY)
    if turn is Turn.NEXT:
        return days_between(monday + 7 * DAY, monday + 13 * DAY)
    return days_between(monday, today) if past else days_between(today, monday + 6 * DAY)


def _range(first: Named, last: Named, today: date, past: bool) -> tuple[date, ...]:
    if past:
        end = _one(last, today, past)
        start = end and _one(Named(weekday=first.weekday), end, True)
    else:
        start = _one(Named(weekday=first.weekday, turn=first.turn), today, past)
        end = start and _one(last, start, past)
    return days_between(start, end) if start and end and start < end else ()


def _one(named: Named, today: date, past: bool) -> date | None:
    found = resolve(named, today, past)
    return found[0] if len(found) == 1 else None


def _agreeing(named: Named, today: date, past: bool) -> tuple[date, ...]:
    found = resolve(named.also, today, past) if named.also else ()
    return found if found and found[0].weekday() == named.weekday else ()


def _dated(named: Named, today: date, past: bool) -> tuple[date, ...]:
    if named.day is None:
        return ()
    if named.year is not None and named.month is not None:
        return _valid(named.year, named.month, named.day)
    if named.month is None:
        return _day_of_month(named.day, today, past)
    this_year = _valid(today.year, named.month, named.day)
    if past:
        before = _valid(today.year - 1, named.month, named.day)
        return this_year if this_year and this_year[0] <= today else before
    next_year = _valid(today.year + 1, named.month, named.day)
    ahead = this_year if this_year and this_year[0] >= today else next_year
    return ahead if ahead and ahead[0] - today <= LONGEST_LOOK_AHEAD else ()


def _day_of_month(day: int, today: date, past: bool) -> tuple[date, ...]:
    """The nearest "9th" in the direction asked, today included."""
    step = -DAY if past else DAY
    near = (today + n * step for n in range(62))
    return next(((found,) for found in near if found.day == day), ())


def _valid(year: int, month: int, day: int) -> tuple[date, ...]:
    try:
        return (date(year, month, day),)
    except ValueError:
        return ()


def days_between(first: date, last: date) -> tuple[date, ...]:
    """Every date from the first to the last, both included."""
    return tuple(first + n * DAY for n in range((last - first).days + 1))


def span_days(span: Span, back: int | None, today: date) -> tuple[date, ...]:
    """The days of a span of the past, where they are known and at most 31."""
    monday = today - today.weekday() * DAY
    first = today.replace(day=1)
    if span is Span.WEEK:
        return days_between(monday, today)
    if span is Span.LAST_WEEK:
        return days_between(monday - 7 * DAY, monday - DAY)
    if span is Span.MONTH:
        return days_between(first, today)
    if span is Span.LAST_MONTH:
        return days_between((first - DAY).replace(day=1), first - DAY)
    if span is Span.LAST_DAYS and back is not None and back <= 31:
        return days_between(today - (back - 1) * DAY, today)
    return ()
