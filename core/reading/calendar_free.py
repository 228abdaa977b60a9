"""The same as staff type it in a hurry: "game saturday 2pm Ridge", "sat 10am vs Summit".

The words may come in any order and "vs" may be missing: one day, at most one time, and one name.
Whatever else stands beside them makes it another line.
"""

import re
from dataclasses import replace
from datetime import date, datetime

from core.reading.asking.upcoming import upcoming_days
from core.reading.calendar_lines import (
    GAME_WORDS,
    GONE,
    HOUR,
    PRACTICE_WORDS,
    CalendarLine,
    Planned,
    called_off,
    kind_of,
    later,
    times_in,
)

_WHAT = re.compile(rf"\b(?:{GAME_WORDS}|{PRACTICE_WORDS})\b[:,]?", re.IGNORECASE)
_PLAY = re.compile(
    r"^(?:we(?:'re| are| will|'ll)? )?(?:play(?:ing)?|fac(?:e|ing)|host(?:ing)?|visit(?:ing)?)\b",
    re.IGNORECASE,
)
_OPENING = re.compile(
    r"^(?:(?:add|new|we have|we've got|we got|hay|next|our|an?|the|un|una) )+", re.IGNORECASE
)
_PLACE = re.compile(r"\b(?:home|away|league|local|de visita)\b", re.IGNORECASE)
_VERSUS = re.compile(r"(?:^| )(?:vs?\.?|versus|against|contra|@|at|with) ", re.IGNORECASE)
_GONE = re.compile(rf"(?:\b(?:is|are|was|has been|got) )?\b(?:{GONE})\b", re.IGNORECASE)
_MOVED = re.compile(
    r"\b(?:(?:is|has been|got|was) )?(?:moved|pushed(?: back)?|rescheduled|changed)(?: up)?"
    r"(?: to| until| from)?\b",
    re.IGNORECASE,
)
#: As a clock time it cannot be: a count, as in "62p".
_NO_TIME = re.compile(r"\b(?:1[3-9]|[2-9]\d|\d{3,}) ?(?:a|p)\b", re.IGNORECASE)
#: No opponent's or place's name holds one of these: then it is talk.
_TALK_WORDS = (
    "a an and are arm be bring but by can cancelled canceled called changed day did each for "
    "from good great had has he him his how i if in is it just last late later looking maybe "
    "me moved my need needs nice no not of off on only or our out over pitch pitches plan "
    "please postponed pushed rained ready see she so starts than that the their them then "
    "there they this time to today tomorrow tonight tough up was we were what when where who "
    "will win won with you your"
)
_TALK = frozenset(_TALK_WORDS.split())
_NAME = re.compile(r"[^\W\d_][^\d,;:!?/%]*?(?: \d{1,2} ?u)?", re.IGNORECASE)
MOST_WORDS = 4


def free_calendar_line(text: str, posted: datetime) -> CalendarLine | None:
    """A game or practice to come, read from words in any order; `posted` is local time."""
    said = " ".join(text.split()).rstrip(".! ")
    if "?" in said or len(said) > 120:
        return None
    what, rest = _what(said)
    if what is None:
        return None
    if _MOVED.search(rest):
        return _moved(what, rest, posted)
    gone = _GONE.search(rest)
    if gone is not None:
        when = f" {rest[: gone.start()]} {rest[gone.end() :]}".rstrip()
        off = called_off(what, when, posted.date()) if what else None
        return replace(off, in_free_words=True) if off is not None else None
    rest = _PLACE.sub(" ", _OPENING.sub("", rest))
    versus = _VERSUS.search(f" {rest} ") is not None
    if _NO_TIME.search(rest):
        return None
    times, until, rest = times_in(rest)
    days, name, hours = _day_and_name(_VERSUS.sub(" ", f" {rest} "), posted.date())
    if not days or len(times) > 1 or (hours and times):
        return None
    if not _is_name(name, is_sure=versus, has_time=bool(times or hours)):
        return None
    if what == "" and not (name and (times or hours) and days):
        return None
    kind = kind_of(what or "game")
    if hours:
        planned = tuple(Planned(on, title=name) for on in days)
        return CalendarLine(kind, planned, unclear=str(hours[0]), hour=hours[0])
    at = times[0] if times else None
    planned = tuple(later(Planned(on, at, until, name), posted, rest) for on in days)
    return CalendarLine(kind, planned, in_free_words=True)


def _moved(what: str, rest: str, posted: datetime) -> CalendarLine | None:
    """A game or practice that is said to be moved: both its times cannot be told apart here."""
    words = _MOVED.sub(" ", rest)
    days = _day_and_name(times_in(words)[2], posted.date())[0]
    if not (what and days):
        return None
    return CalendarLine(kind_of(what), unclear=rest.strip(), moved=True, in_free_words=True)


def _what(said: str) -> tuple[str | None, str]:
    """What is to come ("" for "we play …" or "sat 10am vs …"), and the words beside it."""
    named = _WHAT.search(said)
    if named is not None:
        return named[0].strip(":,"), f"{said[: named.start()]} {said[named.end() :]}".strip()
    playing = _PLAY.match(said)
    if playing is not None:
        return "", said[playing.end() :].strip()
    return ("", said) if re.search(r" (?:vs?\.?|versus|@) ", said, re.IGNORECASE) else (None, said)


def _day_and_name(rest: str, today: date) -> tuple[tuple[date, ...], str, list[int]]:
    """The days, the name, and a bare number that may be an hour."""
    words = rest.replace(",", " ").split()
    for size in range(min(4, len(words)), 0, -1):
        for first in range(len(words) - size + 1):
            span = words[first : first + size]
            found = upcoming_days(" ".join(span), today)
            if not found or any(on < today for on in found):
                continue
            bare = [word for word in span if not HOUR.fullmatch(word)]
            if len(bare) < size and upcoming_days(" ".join(bare), today):
                continue  # "sat 10": the number is no part of the day
            others = [*words[:first], *words[first + size :]]
            hours = [int(word) for word in others if HOUR.fullmatch(word)]
            name = " ".join(word for word in others if not HOUR.fullmatch(word))
            is_hour = not hours or (len(hours) == 1 and 1 <= hours[0] <= 12)
            return (tuple(found), name, hours) if is_hour else ((), "", [])
    return (), "", []


def _is_name(name: str, *, is_sure: bool, has_time: bool) -> bool:
    words = name.split()
    if not words:
        return has_time
    if len(words) > MOST_WORDS or not _NAME.fullmatch(name):
        return False
    if {word.casefold().strip(".'’") for word in words} & _TALK:
        return False
    return is_sure or name[:1].isupper() or (has_time and len(words) <= 2)
