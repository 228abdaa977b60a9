"""The days and the span that a clause names, as dates."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from core.reading.asking.asked import Span
from core.reading.asking.calendar import DAY, Named, Turn, resolve, span_days
from core.reading.asking.items import Item


@dataclass(frozen=True, slots=True)
class Days:
    """Dates, ascending; a span of the past; and, as typed, what names no day for sure."""

    days: tuple[date, ...] = ()
    span: Span | None = None
    back: int | None = None
    unclear: tuple[str, ...] = ()

    @property
    def last(self) -> date | None:
        """The last of the days."""
        return self.days[-1] if self.days else None


def days_of(items: Sequence[Item], today: date, *, past: bool, after: date | None = None) -> Days:
    """Every day that the items name. Ahead, a day gone by is unclear; looking back, one to come.

    `after`: the day of an outing that a weekday named here must follow.
    """
    found: set[date] = set()
    spans: list[tuple[Span, int | None]] = []
    unclear: list[str] = []
    for item in items:
        if item.symbol not in ("day", "span"):
            continue
        span, back, named = _told(item, past)
        dates = span_days(span, back, today) if span else ()
        if named is not None:
            start = _start(named, today, after)
            dates = _in_time(resolve(named, start, past), today, past)
        if (span and not past) or (span is None and not dates) or (span and spans):
            unclear.append(item.text)
            continue
        found.update(dates)
        spans.extend([(span, back)] if span else [])
    span, back = spans[0] if spans else (None, None)
    return Days(tuple(sorted(found)), span, back, tuple(unclear))


def _start(named: Named, today: date, after: date | None) -> date:
    """The day to look ahead from: "thursday and still go saturday" is the Saturday after it."""
    free = named.weekday is not None and named.turn is Turn.NONE
    return max(today, after + DAY) if after is not None and free else today


def _told(item: Item, past: bool) -> tuple[Span | None, int | None, Named | None]:
    if item.symbol == "span" and isinstance(item.value, tuple):
        span, back, first = item.value
        return span, back, first
    named = item.value if isinstance(item.value, Named) else Named()
    if past and named.week and named.turn is not Turn.NEXT:
        return (Span.LAST_WEEK if named.turn is Turn.LAST else Span.WEEK), None, None
    return None, None, named


def _in_time(dates: tuple[date, ...], today: date, past: bool) -> tuple[date, ...]:
    fit = all((day <= today) if past else (day >= today) for day in dates)
    return dates if fit else ()


def is_past(item: Item, today: date) -> bool:
    """Whether an item names a span of the past, or a day that can only be one."""
    if item.symbol == "span":
        return True
    named = item.value if item.symbol == "day" else None
    if not isinstance(named, Named):
        return False
    if named.week or named.weekend:
        return named.turn is not Turn.NEXT
    if named.turn is Turn.LAST or (named.offset is not None and named.offset <= 0):
        return True
    return not resolve(named, today, False) and bool(resolve(named, today, True))
