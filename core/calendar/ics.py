"""Games and practices out of an iCalendar file (RFC 5545); the format is left to a library.

Recurrence rules, exceptions, moved occurrences, time zones, folded lines and broken events
are `icalendar`'s and `recurring_ical_events`' work; what is a game is ours.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from core.model import EntryKind

#: Characters of what a calendar calls an event; more is cut off.
TITLE = 80
#: Of one calendar in the time that is looked at; a team plays a few hundred times at most.
MOST_EVENTS = 2_000
#: So far back and ahead a calendar is read.
BACK, AHEAD = timedelta(days=31), timedelta(days=400)
#: An event of more days than this is no tournament ("spring season").
LONGEST_DAYS = 10
#: Rules that recur within a day would fill any memory.
_TOO_OFTEN = frozenset({"SECONDLY", "MINUTELY", "HOURLY"})
_PRACTICE = re.compile(
    r"\b(practices?|bullpens?|workouts?|training|batting practice|cages?|entreno|"
    r"entrenamiento|pr[aá]ctica)\b",
    re.IGNORECASE,
)
_GAME = re.compile(
    r"\b(games?|scrimmages?|double ?headers?|tournaments?|match|playoffs?|championship|vs?\.?|"
    r"versus|juego|partido|torneo)(?!\w)|(^|\s)@\s?\w|^at [A-Z]",
    re.IGNORECASE,
)
_NEITHER = re.compile(
    r"\b(meeting|meal|dinner|picnic|banquet|party|pictures?|photos?|fundraiser|registration|"
    r"try-?outs?|birthday|bye|no (game|practice))\b",
    re.IGNORECASE,
)


class CalendarError(Exception):
    """A calendar that cannot be used; `problem` is a word for it, never a part of the file."""

    def __init__(self, problem: str) -> None:
        """Name the problem: "no calendar", "no events", "too often", "too many", …"""
        super().__init__(problem)
        self.problem = problem


@dataclass(frozen=True, slots=True)
class Occurrence:
    """One day of one event: its key, its local day and times, and whether it was called off."""

    uid: str
    recurrence: str
    kind: EntryKind
    on: date
    at: time | None
    until: time | None
    title: str
    cancelled: bool = False


@dataclass(frozen=True, slots=True)
class Found:
    """What a calendar holds; `left_out` counts events that are neither game nor practice."""

    occurrences: tuple[Occurrence, ...]
    first: date
    left_out: int


def read_ics(content: bytes, time_zone: str, today: date) -> Found:
    """The games and practices of a calendar, from a month ago to a year ahead of `today`.

    Times without a zone are the team's (RFC 5545, 3.3.5, form 1); others are brought to its
    zone; an event for whole days ends on the day before its DTEND (3.6.1). Raises
    `CalendarError`.
    """
    zone = ZoneInfo(time_zone)
    first, last = today - BACK, today + AHEAD
    known: dict[tuple[str, str], Occurrence] = {}
    left_out: set[str] = set()
    for event in _occurrences(content, first, last):
        kind = kind_of(str(event.get("SUMMARY", "")), event)
        if kind is None:
            left_out.add(str(event.get("UID", event.get("SUMMARY", ""))))
            continue
        for one in _days(event, kind, zone):
            known[_free(known, one)] = one
    if not known and not left_out:
        raise CalendarError("no events")
    placed = [_with(one, uid, recurrence) for (uid, recurrence), one in known.items()]
    return Found(tuple(one for one in placed if one.on >= first), first, len(left_out))


def kind_of(summary: str, event: Any = None) -> EntryKind | None:
    """Whether what a calendar calls an event is a game, a practice, or neither."""
    named = f"{summary} {_categories(event)}"
    if _NEITHER.search(summary):
        return None
    if _PRACTICE.search(named):
        return EntryKind.PRACTICE
    return EntryKind.GAME if _GAME.search(named) else None


def _categories(event: Any) -> str:
    found = event.get("CATEGORIES") if event is not None else None
    rows = found if isinstance(found, list) else [found] if found is not None else []
    return " ".join(str(name) for row in rows for name in getattr(row, "cats", ()))


def _occurrences(content: bytes, first: date, last: date) -> Iterator[Any]:
    # Imported here: a bot whose teams have no calendar needs neither library in memory.
    import recurring_ical_events
    from icalendar import Calendar

    try:
        calendar = Calendar.from_ical(content)
        events = list(calendar.walk("VEVENT"))
    except Exception as wrong:  # whatever the library trips over is the file's fault
        raise CalendarError("no calendar") from wrong
    for event in events:
        rules = event.get("RRULE") or []
        for rule in rules if isinstance(rules, list) else [rules]:
            if _TOO_OFTEN & {str(one).upper() for one in rule.get("FREQ", [])}:
                raise CalendarError("too often")
    _keep_usable(calendar)
    recurring = _recurring(events)
    try:
        query = recurring_ical_events.of(calendar, skip_bad_series=True)
        found = list(_at_most(query.between(first, last + timedelta(days=1))))
    except CalendarError:
        raise
    except Exception as wrong:
        raise CalendarError("no calendar") from wrong
    for event in found:
        if str(event.get("UID", "")) not in recurring:
            event.pop("RECURRENCE-ID", None)  # the library gives one to every event
        yield event


def _keep_usable(calendar: Any) -> None:
    """Leave out events without a beginning: one of them must not cost the others."""
    calendar.subcomponents = [
        one for one in calendar.subcomponents if one.name != "VEVENT" or "DTSTART" in one
    ]


def _recurring(events: list[Any]) -> set[str]:
    """The UIDs of events with more than one occurrence."""
    uids = [str(one.get("UID", "")) for one in events]
    return {
        uid
        for uid, one in zip(uids, events, strict=True)
        if "RRULE" in one or "RDATE" in one or "RECURRENCE-ID" in one or uids.count(uid) > 1
    }


def _at_most(events: Any) -> Iterator[Any]:
    for number, event in enumerate(events):
        if number >= MOST_EVENTS:
            raise CalendarError("too many")
        yield event


def _days(event: Any, kind: EntryKind, zone: ZoneInfo) -> Iterator[Occurrence]:
    """An event as one occurrence for each local day that it takes."""
    start, end = event.start, event.end
    title = " ".join(str(event.get("SUMMARY", "")).split())[:TITLE]
    stamp = event.get("RECURRENCE-ID")
    recurrence = stamp.to_ical().decode() if stamp is not None else ""
    one = Occurrence(
        uid=str(event.get("UID") or f"{title}/{start.isoformat()}"),
        recurrence=recurrence,
        kind=kind,
        on=_local(start, zone).date() if isinstance(start, datetime) else start,
        at=None,
        until=None,
        title=title,
        cancelled=str(event.get("STATUS", "")).upper() == "CANCELLED",
    )
    if isinstance(start, datetime):
        begins, ends = _local(start, zone), _local(end, zone)
        same = ends.date() == begins.date() and ends > begins
        at = begins.time().replace(second=0, microsecond=0)
        yield _with(one, one.uid, recurrence, at=at, until=ends.time() if same else None)
        return
    days = max((end - start).days, 1)
    for number in range(days if days <= LONGEST_DAYS else 1):
        mark = f"#{number}" if days > 1 else ""
        yield _with(one, one.uid, f"{recurrence}{mark}", on=start + timedelta(days=number))


def _local(moment: datetime, zone: ZoneInfo) -> datetime:
    """Wall-clock time of the zone; a moment without a zone is told in it already."""
    return moment.astimezone(zone).replace(tzinfo=None) if moment.tzinfo is not None else moment


def _with(one: Occurrence, uid: str, recurrence: str, **changed: Any) -> Occurrence:
    return replace(one, uid=uid, recurrence=recurrence, **changed)


def _free(known: dict[tuple[str, str], Occurrence], one: Occurrence) -> tuple[str, str]:
    """The key of an occurrence; those that share one are told apart by their day.

    A change of "this and all future" occurrences (RFC 5545, 3.8.4.4) names only the first.
    """
    if (one.uid, one.recurrence) not in known:
        return one.uid, one.recurrence
    return one.uid, f"{one.recurrence}/{one.on.isoformat()}"
