"""Items that together name a day, or a span of the past, become one item."""

import re
from collections.abc import Callable, Sequence
from dataclasses import replace

from core.reading.asking.asked import Span
from core.reading.asking.calendar import Named, Turn
from core.reading.asking.items import Item

Found = tuple[Item, int]  # what the items from here are, and how many they are
_DAYS_IN = {"days": 1, "week": 7, "weeks": 7}
_TURNS = {"this": Turn.THIS, "next": Turn.NEXT, "last": Turn.LAST}
_RANGE_MARKS = frozenset("-–")


def name_days(items: Sequence[Item], lang: str) -> list[Item]:
    """The items with every day as a `day` and every span as a `span`."""
    if lang == "es":
        items = [_month_first(item) if item.symbol == "date" else item for item in items]
    made: list[Item] = []
    at = 0
    while at < len(items):
        item, length = _at(items, at)
        made.append(item)
        at += length
    return made


def _at(items: Sequence[Item], at: int) -> Found:
    for reader in _READERS.get(items[at].symbol, ()):
        found = reader(items, at)
        if found is not None:
            return found
    return items[at], 1


def _joined(items: Sequence[Item], symbol: str, value: object) -> Found:
    text = " ".join(item.text for item in items)
    return Item(symbol, text, items[0].start, items[-1].end, value), len(items)


def _symbols(items: Sequence[Item], at: int, *wanted: str) -> bool:
    """Whether the items from here have these symbols; "a|b" is either."""
    found = [item.symbol for item in items[at : at + len(wanted)]]
    return len(found) == len(wanted) and all(
        symbol in want.split("|") for symbol, want in zip(found, wanted, strict=True)
    )


def _number(item: Item) -> int | None:
    if isinstance(item.value, int):
        return item.value
    digits = re.match(r"\d+", item.text) if item.symbol == "ord" else None
    return int(digits[0]) if digits else None


def _offset(items: Sequence[Item], at: int) -> Found:
    return _joined(items[at : at + 1], "day", Named(offset=int(str(items[at].value))))


def _weekday(items: Sequence[Item], at: int) -> Found:
    named = Named(weekday=int(str(items[at].value)))
    skip = 1
    if at + 2 < len(items) and _is_through(items[at + 1]) and items[at + 2].symbol == "wd":
        last = Named(weekday=int(str(items[at + 2].value)))
        return _joined(items[at : at + 3], "day", replace(named, until=last))
    while at + skip < len(items) and items[at + skip].text.lower() in (",", "the", "el"):
        skip += 1
    found = _at(items, at + skip) if at + skip < len(items) else None
    dated = found[0].value if found else None
    if found and isinstance(dated, Named) and dated.day is not None:
        return _joined(items[at : at + skip + found[1]], "day", replace(named, also=dated))
    return _joined(items[at : at + 1], "day", named)


def _is_through(item: Item) -> bool:
    return item.symbol == "through" or item.text in _RANGE_MARKS


def _turned(items: Sequence[Item], at: int) -> Found | None:
    """A day or span with its turn: "next sat", "this weekend", "last week", "last 7 days"."""
    turn = _TURNS[items[at].symbol]
    if turn is Turn.LAST and _symbols(items, at, "last", "num", "days|weeks|week"):
        back = (_number(items[at + 1]) or 0) * _DAYS_IN[items[at + 2].symbol]
        return _joined(items[at : at + 3], "span", (Span.LAST_DAYS, back, None)) if back else None
    if _symbols(items, at + 1, "week") and "past" in items[at].text.lower():
        return _joined(items[at : at + 2], "span", (Span.LAST_DAYS, 7, None))
    if _symbols(items, at + 1, "wd|weekend|week"):
        day = _at(items, at + 1)
        named = day[0].value if isinstance(day[0].value, Named) else Named(week=True)
        return _joined(items[at : at + 1 + day[1]], "day", replace(named, turn=turn))
    return None


def _weekend(items: Sequence[Item], at: int) -> Found:
    return _joined(items[at : at + 1], "day", Named(weekend=True))


def _month(items: Sequence[Item], at: int) -> Found | None:
    """A date, month first: "May 9", "may 9th"; a lone "may" is the verb."""
    if _symbols(items, at + 1, "num|ord"):
        day = _number(items[at + 1])
        named = Named(month=int(str(items[at].value)), day=day)
        return _joined(items[at : at + 2], "day", named)
    return (replace(items[at], symbol="can"), 1) if items[at].text.lower() == "may" else None


def _day_first(items: Sequence[Item], at: int) -> Found | None:
    """A number first: "9 may", "9 de mayo", "the 9th", "3 days ago"."""
    number = _number(items[at])
    if _symbols(items, at + 1, "days", "ago|back") and number is not None:
        return _joined(items[at : at + 3], "day", Named(offset=-number))
    of = 1 if _symbols(items, at + 1, "ordmark") else 0
    if _symbols(items, at + 1 + of, "mon") and not _symbols(items, at + 2 + of, "i|he|name|unk"):
        named = Named(month=int(str(items[at + 1 + of].value)), day=number)
        return _joined(items[at : at + 2 + of], "day", named)
    if items[at].symbol == "ord" and not _symbols(items, at + 1, "innings"):
        return _joined(items[at : at + 1], "day", Named(day=number))
    return None


def _in_days(items: Sequence[Item], at: int) -> Found | None:
    if not _symbols(items, at, "in", "num", "days|week|weeks"):
        return None
    ahead = (_number(items[at + 1]) or 0) * _DAYS_IN[items[at + 2].symbol]
    return _joined(items[at : at + 3], "day", Named(offset=ahead)) if ahead else None


def _days_ago(items: Sequence[Item], at: int) -> Found | None:
    """The Spanish order: "hace 3 dias"."""
    if _symbols(items, at, "ago", "num", "days"):
        named = Named(offset=-(_number(items[at + 1]) or 0))
        return _joined(items[at : at + 3], "day", named)
    return None


def _typed_date(items: Sequence[Item], at: int) -> Found:
    parts = [int(part) for part in re.split(r"[-/]", str(items[at].value))]
    if "-" in str(items[at].value):
        named = Named(year=parts[0], month=parts[1], day=parts[2])
    else:
        named = Named(month=parts[0], day=parts[1], year=_year(parts[2:]))
    return _joined(items[at : at + 1], "day", named)


def _month_first(item: Item) -> Item:
    """A Spanish slash date, day or month first, made month first; "5/9" may be either: no date."""
    first, *rest = str(item.value).split("/")
    if not rest or first == rest[0]:
        return item
    if int(first) <= 12 and int(rest[0]) <= 12:
        return replace(item, value="0/0")
    return replace(item, value="/".join(sorted([first, rest[0]], key=int) + rest[1:]))


def _year(parts: list[int]) -> int | None:
    return parts[0] + 2000 * (parts[0] < 100) if parts else None


def _since(items: Sequence[Item], at: int) -> Found | None:
    if at + 1 < len(items) and items[at + 1].symbol == "mon":
        month = int(str(items[at + 1].value))
        if not _symbols(items, at + 2, "num|ord"):
            first = Named(month=month, day=1)
            return _joined(items[at : at + 2], "span", (Span.SINCE, None, first))
    if at + 1 < len(items):
        day, length = _at(items, at + 1)
        if day.symbol == "day":
            span = (Span.SINCE, None, day.value)
            return _joined(items[at : at + 1 + length], "span", span)
    return None


def _span(items: Sequence[Item], at: int) -> Found:
    return _joined(items[at : at + 1], "span", (Span(str(items[at].value)), None, None))


_READERS: dict[str, tuple[Callable[[Sequence[Item], int], Found | None], ...]] = {
    "offset": (_offset,),
    "wd": (_weekday,),
    "this": (_turned,),
    "next": (_turned,),
    "last": (_turned,),
    "weekend": (_weekend,),
    "mon": (_month,),
    "num": (_day_first,),
    "ord": (_day_first,),
    "in": (_in_days,),
    "ago": (_days_ago,),
    "date": (_typed_date,),
    "since": (_since,),
    "span": (_span,),
}
