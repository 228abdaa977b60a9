"""When: what may stand after `go to`."""

import re
from datetime import UTC, date, datetime, time, timedelta

from bot.wording.words import day

#: The tick runs for every half hour that goes by, so a year would take a while.
FARTHEST = timedelta(days=60)
EXAMPLES = "Monday 07:00, tomorrow 07:00, 21:30, +2h, +3d or 2026-06-01 07:00"

_SPAN = re.compile(r"\+\s*(?P<number>\d{1,4})\s*(?P<unit>m|min|h|d|w)", re.IGNORECASE)
_CLOCK = re.compile(r"(?:(?P<day>\S+)\s+)?(?P<hour>\d{1,2}):(?P<minute>\d\d)")
_UNITS = {"m": 1, "min": 1, "h": 60, "d": 24 * 60, "w": 7 * 24 * 60}
_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


class MomentError(Exception):
    """The words name no moment to go to; the message is one sentence for a person."""


def parse_moment(words: str, now: datetime) -> datetime:
    """The moment that `words` name, seen from `now` (aware; the answer is in its zone).

    A weekday or a bare time of day is the next one. Raises `MomentError` for words that
    name no moment, for the past, and for more than `FARTHEST` ahead.
    """
    words = " ".join(words.split())
    if span := _SPAN.fullmatch(words):
        minutes = int(span["number"]) * _UNITS[span["unit"].lower()]
        # A span is real time: two hours stay two hours where the clocks change.
        moment = (now.astimezone(UTC) + timedelta(minutes=minutes)).astimezone(now.tzinfo)
    elif clock := _CLOCK.fullmatch(words.replace("T", " ")):
        moment = _at_clock(clock, now, words)
    else:
        raise MomentError(f"“{words}” is no time I know: write {EXAMPLES}.")
    if moment <= now:
        raise MomentError(f"“{words}” is past: it is {day_and_time(now)}, time only goes on.")
    if moment - now > FARTHEST:
        raise MomentError(f"“{words}” is too far: go at most {FARTHEST.days} days at once.")
    return moment


def day_and_time(moment: datetime) -> str:
    """A moment as the terminal names it: "Mon 1 Jun 07:00"."""
    return f"{day(moment.date())} {moment:%H:%M}"


def _at_clock(clock: re.Match[str], now: datetime, words: str) -> datetime:
    try:
        at = time(int(clock["hour"]), int(clock["minute"]), tzinfo=now.tzinfo)
        on = _day(clock["day"], now, at)
    except ValueError as wrong:
        raise MomentError(f"“{words}” is no time I know: write {EXAMPLES}.") from wrong
    return datetime.combine(on, at)


def _day(word: str | None, now: datetime, at: time) -> date:
    """The day that a word means; the next one that is still to come where it may be today."""
    today = now.date()
    still_today = datetime.combine(today, at) > now
    match (word or "").casefold():
        case "":
            return today if still_today else today + timedelta(days=1)
        case "today":
            return today
        case "tomorrow":
            return today + timedelta(days=1)
        case name if len(name) >= 3 and (full := [d for d in _WEEKDAYS if d.startswith(name)]):
            ahead = (_WEEKDAYS.index(full[0]) - today.weekday()) % 7
            return today + timedelta(days=ahead if ahead or still_today else 7)
        case written:
            return date.fromisoformat(written)
