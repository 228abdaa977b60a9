"""Days, counts, shares and names as people read them."""

import re
from collections.abc import Iterable, Sequence
from datetime import date, time, timedelta

_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_MONTHS = (
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
)  # fmt: skip


def safe(text: str) -> str:
    """Text that somebody typed, made harmless: no mention, no link, no formatting, no hidden mark.

    Line breaks become spaces; the four signs of Slack's formatting become their look-alikes.
    """
    seen = (" " if c.isspace() else c for c in text)
    return "".join(c for c in seen if c.isprintable()).translate(_HARMLESS)


_HARMLESS = str.maketrans(
    {"&": "&amp;", "<": "&lt;", ">": "&gt;", "*": "∗", "_": "ˍ", "~": "∼", "`": "ˋ"}
)


def day(when: date) -> str:
    """A calendar day as text: "Sat 2 May"."""
    return f"{_DAYS[when.weekday()]} {when.day} {_MONTHS[when.month - 1]}"


def weekday(when: date, seen_from: date) -> str:
    """A day within a week as its name, "Sunday"; any other as :func:`day` has it."""
    return f"{when:%A}" if 0 <= (when - seen_from).days < 7 else day(when)


def days_between(first: date, last: date) -> str:
    """A run of days: "Sun 3 May", "Sun 3 and Mon 4 May", "Sun 3 to Tue 5 May"."""
    if first == last:
        return day(first)
    joined = "and" if last - first == timedelta(days=1) else "to"
    start = f"{_DAYS[first.weekday()]} {first.day}"
    if first.month != last.month:
        start = day(first)
    return f"{start} {joined} {day(last)}"


def counted(number: int, one: str, many: str = "") -> str:
    """A count with its noun: "1 pitch", "62 pitches"."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def innings(outs: int) -> str:
    """Outs as innings pitched, the trade's way: 13 is "4.1" (four and one third)."""
    return f"{outs // 3}.{outs % 3}" if outs % 3 else f"{outs // 3}"


def innings_of(outs: int) -> str:
    """Innings with their noun: "1 inning", "4.1 innings"."""
    return f"{innings(outs)} {'inning' if outs == 3 else 'innings'}"


def percent(share: float) -> str:
    """A share as a whole percent: 0.1774 is "18 %"."""
    return f"{round(share * 100)} %"


def listed(items: Sequence[str], last: str = "and") -> str:
    """A list in a sentence: "a", "a and b", "a, b and c"."""
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def sentences(parts: Iterable[str]) -> str:
    """Lines of a message, empty ones left out."""
    return "\n".join(part for part in parts if part)


def starts(games: Sequence[tuple[date, time]]) -> str:
    """When games begin: "Sat 2 May 09:00 and Sat 2 May 14:00"."""
    return listed([f"{day(on)} {at:%H:%M}" for on, at in games])


_ISO_DAY = re.compile(r"\b\d{4}-\d{2}-\d{2}\b")


def plain(says: str) -> str:
    """A rule's sentence with its ISO dates as people say them, made safe to show."""
    return safe(_ISO_DAY.sub(lambda found: day(date.fromisoformat(found[0])), says))


def left_out(number: int) -> str:
    """What stands under a message that could not hold everything."""
    return (
        f"{counted(number, 'more paragraph does', 'more paragraphs do')} not fit into one message. "
        "Answer or fix these first, or ask for less at a time."
    )
