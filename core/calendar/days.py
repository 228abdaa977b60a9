"""Which games and practices a team has on which day."""

from collections.abc import Iterable
from datetime import date
from typing import Any

from sqlalchemy import BindParameter, bindparam, union_all
from sqlmodel import Session, col, select

from core.model import CalendarEntry, CalendarSource, CalledOff, EntryKind, TeamEvent

_TEAMS: BindParameter[Any] = bindparam("teams", expanding=True)
_OFF = select(CalledOff.id).where(
    CalledOff.entry_id == CalendarEntry.id,
    CalledOff.on == CalendarEntry.on,
    col(CalledOff.withdrawn_at).is_(None),
)
_ENDED = select(CalendarSource.id).where(
    CalendarSource.id == CalendarEntry.source_id, col(CalendarSource.withdrawn_at).is_not(None)
)
_ENTRIES = select(CalendarEntry).where(
    col(CalendarEntry.team_id).in_(_TEAMS),
    col(CalendarEntry.on) >= bindparam("first"),
    col(CalendarEntry.on) <= bindparam("last"),
    col(CalendarEntry.withdrawn_at).is_(None),
    ~_OFF.exists(),
    ~_ENDED.exists(),
)
_OF_KIND = _ENTRIES.where(col(CalendarEntry.kind) == bindparam("kind"))
_EVENTS = select(TeamEvent.id).where(
    col(TeamEvent.team_id).in_(_TEAMS),
    col(TeamEvent.starts_on) <= bindparam("on"),
    col(TeamEvent.ends_on) >= bindparam("on"),
)

_GAMES = _OF_KIND.with_only_columns(col(CalendarEntry.id))
_GAME_DAY: Any = union_all(_EVENTS, _GAMES).limit(1)


def entries(
    session: Session,
    team_ids: Iterable[int],
    first: date,
    last: date,
    kind: EntryKind | None = None,
) -> list[CalendarEntry]:
    """What stands on the calendars of these teams, both days included, in order of time.

    The same kind at the same time is one entry, however many calendars tell of it.
    """
    asked = _ENTRIES if kind is None else _OF_KIND
    wanted = {"teams": list(team_ids), "first": first, "last": last, "kind": kind}
    found: dict[tuple[object, ...], CalendarEntry] = {}
    for row in sorted(session.exec(asked, params=wanted), key=in_order):
        alike = (row.team_id, row.kind, row.on, row.at if row.at is not None else row.id)
        found.setdefault(alike, row)
    return list(found.values())


def in_order(entry: CalendarEntry) -> tuple[date, bool, str, int]:
    """By day and time; one without a time comes last on its day."""
    at = entry.at.isoformat() if entry.at is not None else ""
    return (entry.on, entry.at is None, at, entry.id or 0)


def is_game_day(session: Session, team_ids: Iterable[int], on: date) -> bool:
    """Whether a game or a team event is known for a day; one on no calendar is not known."""
    asked = {"teams": list(team_ids), "first": on, "last": on, "kind": EntryKind.GAME, "on": on}
    return session.exec(_GAME_DAY, params=asked).first() is not None
