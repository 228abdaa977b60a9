"""Which games and practices a team has on which day."""

from collections.abc import Iterable
from datetime import date

from sqlmodel import Session, col, select

from core.model import CalendarEntry, CalendarSource, CalledOff, EntryKind, TeamEvent


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
    off = select(CalledOff.id).where(
        CalledOff.entry_id == CalendarEntry.id,
        CalledOff.on == CalendarEntry.on,
        col(CalledOff.withdrawn_at).is_(None),
    )
    ended = select(CalendarSource.id).where(
        CalendarSource.id == CalendarEntry.source_id, col(CalendarSource.withdrawn_at).is_not(None)
    )
    rows = select(CalendarEntry).where(
        col(CalendarEntry.team_id).in_(list(team_ids)),
        col(CalendarEntry.on) >= first,
        col(CalendarEntry.on) <= last,
        col(CalendarEntry.withdrawn_at).is_(None),
        ~off.exists(),
        ~ended.exists(),
    )
    if kind is not None:
        rows = rows.where(CalendarEntry.kind == kind)
    found: dict[tuple[object, ...], CalendarEntry] = {}
    for row in sorted(session.exec(rows), key=in_order):
        alike = (row.team_id, row.kind, row.on, row.at if row.at is not None else row.id)
        found.setdefault(alike, row)
    return list(found.values())


def in_order(entry: CalendarEntry) -> tuple[date, bool, str, int]:
    """By day and time; one without a time comes last on its day."""
    at = entry.at.isoformat() if entry.at is not None else ""
    return (entry.on, entry.at is None, at, entry.id or 0)


def is_game_day(session: Session, team_ids: Iterable[int], on: date) -> bool:
    """Whether a game or a team event is known for a day; one on no calendar is not known."""
    teams = list(team_ids)
    events = select(TeamEvent.id).where(
        col(TeamEvent.team_id).in_(teams),
        col(TeamEvent.starts_on) <= on,
        col(TeamEvent.ends_on) >= on,
    )
    if session.exec(events).first() is not None:
        return True
    return bool(entries(session, teams, on, on, EntryKind.GAME))
