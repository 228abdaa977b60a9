"""What the staff say of the team's calendar: "game sat 10am vs Summit", "no practice tue".

A line that is no more than a kind, days, times and an opponent; whatever holds another number
or word is none, so that no log line is taken for a game to come.
"""

import re
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta

from core.reading.asking.items import clock_time
from core.reading.asking.upcoming import upcoming_days

GAME, PRACTICE = "game", "practice"
GAME_WORDS = r"games?|scrimmages?|double ?headers?|twin ?bills?|dh|tournaments?|juegos?|partidos?"
PRACTICE_WORDS = r"practices?|workouts?|pr[aá]cticas?|entrenos?|entrenamientos?"
_WHAT = rf"(?P<what>{GAME_WORDS}|{PRACTICE_WORDS})"
_ADD = re.compile(
    rf"^(?:(?:add|new|we have|we've got|we got|hay) )?(?:an? |the |un |una )?{_WHAT}\b[:,]?"
    r"(?P<rest>.*)$",
    re.IGNORECASE,
)
GONE = r"cancell?ed|called off|rained out|off|postponed|cancelad[oa]|suspendid[oa]"
_OFF = (
    re.compile(rf"^no (?:hay )?{_WHAT}\b(?P<when>.+)$", re.IGNORECASE),
    re.compile(
        rf"^(?:the )?{_WHAT}\b(?P<when>.+?),? (?:is |are |was |es )?(?:{GONE})$", re.IGNORECASE
    ),
    re.compile(rf"^(?:cancel|call off|cancela) (?:the )?{_WHAT}\b(?P<when>.+)$", re.IGNORECASE),
)
_TEAM = re.compile(r"\s+for (?:the )?(?P<team>[^\s,;:]+(?: [^\s,;:]+)?)$", re.IGNORECASE)
#: An opponent or a place: up to four words, no number but an age group ("Summit 14U").
_OPPONENT = re.compile(
    r"[ ,]+(?:vs?\.?|versus|against|contra|@|at(?= \D)(?! noon)) *"
    r"(?P<name>[^\W\d][^\d,;:!?]{0,40}?(?: \d{1,2} ?u)?)$",
    re.IGNORECASE,
)
_CLOCK = r"(?:\d{1,2}:\d{2} ?(?:am|pm|a|p)?|\d{1,2} ?(?:am|pm|a|p)|noon)\b"
_RANGE = re.compile(
    rf"\b(?P<first>{_CLOCK}|\d{{1,2}}) ?(?:-|–|to|till?|until) ?(?P<last>{_CLOCK})", re.IGNORECASE
)
_ONE = re.compile(rf"\b{_CLOCK}", re.IGNORECASE)
_BESIDE = re.compile(r"(?:^| )(?:at|@|from|and|&|then|a las|y)(?= |$)", re.IGNORECASE)
HOUR = re.compile(r"(?<![/\d\w-])\d{1,2}(?![/\d\w-])")
_TODAY = re.compile(r"\b(?:today|tonight|hoy|\d)", re.IGNORECASE)
_EVERY = re.compile(r"\b(?:every|each|cada)\b", re.IGNORECASE)
MOST_WORDS = 4
MOST_ENTRIES = 12
_SOURCE = re.compile(
    r"^(?:team |our |add |the )*calendar\b[:,]?(?: is| at| from)? *"
    r"<?(?P<address>(?:https?|webcal)://[^\s<>|]{4,1000})(?:\|[^>]*)?>?$",
    re.IGNORECASE,
)
_NO_SOURCE = re.compile(
    r"^(?:(?:stop|remove|drop|forget|no) (?:the |our )?calendar|calendar (?:off|stop))$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Planned:
    """One game or practice as typed; times are the team's wall clock."""

    on: date
    at: time | None = None
    until: time | None = None
    #: The opponent, or the place.
    title: str = ""


@dataclass(frozen=True, slots=True)
class CalendarLine:
    """What a line puts on the calendar, or calls off (`off`, on the days of `planned`).

    `team` is a team as typed, empty where none is named. `unclear` quotes what could not be
    read: then nothing is changed. `weekly` asks for the same days of every week to come.
    """

    kind: str
    planned: tuple[Planned, ...] = ()
    off: bool = False
    team: str = ""
    weekly: bool = False
    #: Whether "sat", said on a Saturday, may be the next one.
    may_be_next: bool = False
    unclear: str = ""
    #: A bare number that may be the hour of `planned`: 10 in "game sat 10 vs Ridge".
    hour: int | None = None
    #: Whether the words stand in no order of the trade's: then a log goes before it.
    in_free_words: bool = False
    #: Whether it is to take place at another time than the calendar has it.
    moved: bool = False


_LIST = re.compile(
    r"^(?:show |list |what'?s on )?(?:the |our |my )?(?:team )?calendar$|^calendario$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class CalendarList:
    """Somebody wants to read the calendar."""


def calendar_list(text: str) -> CalendarList | None:
    """Whether a line asks for the calendar."""
    return CalendarList() if _LIST.match(text.strip().rstrip("?.! ")) else None


@dataclass(frozen=True, slots=True)
class SourceLine:
    """An address to read a team's calendar from once a day; empty to read none any more."""

    address: str


def source_line(text: str) -> SourceLine | None:
    """The calendar address in a line, or that none shall be read any more; else none."""
    said = text.strip().rstrip(".! ")
    found = _SOURCE.match(said)
    if found is not None:
        return SourceLine(re.sub(r"^webcal:", "https:", found["address"], flags=re.IGNORECASE))
    return SourceLine("") if _NO_SOURCE.match(said) else None


def calendar_line(text: str, posted: datetime) -> CalendarLine | None:
    """What a line says of the calendar, or none; `posted` is local wall-clock time."""
    said = " ".join(text.split()).rstrip(".! ")
    if "?" in said or len(said) > 120:
        return None
    for pattern in _OFF:
        found = pattern.match(said)
        if found is not None:
            return called_off(found["what"], found["when"], posted.date())
    found = _ADD.match(said)
    return _added(found["what"], found["rest"], posted) if found is not None else None


def called_off(what: str, when: str, today: date) -> CalendarLine | None:
    """The games or practices of some words that are off; none where they name no day."""
    kind = kind_of(what)
    opponent = _OPPONENT.search(when)
    rest = when[: opponent.start()] if opponent is not None else when
    rest, team = _team(rest)
    times, _until, rest = times_in(rest)
    days = upcoming_days(_BESIDE.sub(" ", rest), today)
    if days is None or not rest.strip():
        return None
    title = opponent["name"].strip() if opponent is not None else ""
    if not days or len(days) > MOST_ENTRIES:
        return CalendarLine(kind, off=True, team=team, unclear=rest.strip())
    at = times[0] if len(times) == 1 else None
    planned = tuple(Planned(on, at, title=title) for on in days)
    may_be_next = planned[0].on == today and not _TODAY.search(rest)
    return CalendarLine(kind, planned, off=True, team=team, may_be_next=may_be_next)


def next_week(planned: Planned) -> Planned:
    """The same a week later."""
    return replace(planned, on=planned.on + timedelta(days=7))


def _added(what: str, rest: str, posted: datetime) -> CalendarLine | None:
    kind, today = kind_of(what), posted.date()
    rest, team = _team(rest)
    opponent = _OPPONENT.search(rest)
    title = opponent["name"].strip(" .") if opponent is not None else ""
    if len(title.split()) > MOST_WORDS:
        return None
    rest = rest[: opponent.start()] if opponent is not None else rest
    times, until, rest = times_in(rest)
    weekly = _EVERY.search(rest) is not None
    words = _EVERY.sub(" ", _BESIDE.sub(" ", rest)).strip(" ,")
    if not words:
        return None  # "game vs Summit", "practice was good": no day, no calendar
    days = upcoming_days(words, today)
    hours = HOUR.findall(words)
    if hours and upcoming_days(HOUR.sub(" ", words), today):
        # The 10th, or 10 o'clock?
        ahead = upcoming_days(HOUR.sub(" ", words), today) or ()
        hour = int(hours[0]) if len(hours) == 1 and 1 <= int(hours[0]) <= 12 else None
        if hour is None or times or any(on < today for on in ahead):
            return CalendarLine(kind, team=team, unclear=" ".join(hours))
        day_only = tuple(Planned(on, title=title) for on in ahead)
        return CalendarLine(kind, day_only, team=team, unclear=" ".join(hours), hour=hour)
    if days is None or any(on < today for on in days):
        return None
    twice = re.match(r"double|twin|dh", what, re.IGNORECASE) is not None
    count = len(days) * max(len(times), 2 if twice else 1)
    if not days or count > MOST_ENTRIES:
        return CalendarLine(kind, team=team, unclear=words)
    if until is not None and times and until <= times[0]:
        return CalendarLine(kind, team=team, unclear=f"{until:%H:%M}")
    starts: list[time | None] = [*times]
    starts += [None] * (max(2 if twice else 1, 1) - len(starts))
    planned = tuple(
        Planned(on, at, until if len(starts) == 1 else None, title) for on in days for at in starts
    )
    planned = tuple(later(one, posted, words) for one in planned)
    return CalendarLine(kind, planned, team=team, weekly=weekly)


def later(one: Planned, posted: datetime, words: str) -> Planned:
    """An hour that is past, of a day named "sat", is next week's; of "today" it is not."""
    past = one.at is not None and datetime.combine(one.on, one.at) < posted
    return next_week(one) if past and not _TODAY.search(words) else one


def at_hour(order: CalendarLine, at: time, posted: datetime) -> CalendarLine:
    """The same once it is known what its bare number means: this time of day."""
    planned = tuple(later(replace(one, at=at), posted, "") for one in order.planned)
    return replace(order, planned=planned, unclear="", hour=None)


def kind_of(what: str) -> str:
    """The kind of entry that a word names: a game or a practice."""
    return PRACTICE if re.fullmatch(PRACTICE_WORDS, what, re.IGNORECASE) else GAME


def _team(rest: str) -> tuple[str, str]:
    found = _TEAM.search(rest)
    return (rest[: found.start()], found["team"]) if found is not None else (rest, "")


def times_in(rest: str) -> tuple[list[time], time | None, str]:
    """The clock times, the end of a range of two, and what is left."""
    span = _RANGE.search(rest)
    if span is not None:
        last = clock_time(span["last"].lower())
        first = _first_of(span["first"].lower(), span["last"].lower(), last)
        if first is not None and last is not None:
            return [first], last, f"{rest[: span.start()]} {rest[span.end() :]}"
    found = [clock_time(one[0].lower()) for one in _ONE.finditer(rest)]
    return [one for one in found if one is not None], None, _ONE.sub(" ", rest)


def _first_of(typed: str, last_typed: str, last: time | None) -> time | None:
    """The beginning of "5-7pm" or "11-1pm": by the end's half of the day where that fits."""
    if last is None or re.search("[ap]|noon", typed):
        return clock_time(typed)
    half = "p" if "p" in last_typed or last_typed == "noon" else "a"
    guess = clock_time(f"{typed}{half}")
    return guess if guess is not None and guess < last else clock_time(typed)


def weeks_of(planned: Planned, until: date) -> list[Planned]:
    """The same weekday and time of every week up to a day, that day included."""
    found = []
    on = planned.on
    while on <= until:
        found.append(replace(planned, on=on))
        on += timedelta(days=7)
    return found
