"""Brings a team's calendar to what one source of it says now: new, changed, moved, gone."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlmodel import Session, col, select

from core.calendar.ics import Found, Occurrence
from core.ledger.audit import put_on_audit
from core.model import (
    AuditAction,
    CalendarEntry,
    CalendarSource,
    EntryKind,
    Team,
    key,
)

#: Who changed an entry, in the audit, where no person did.
BY_CALENDAR = "calendar"


@dataclass(frozen=True, slots=True)
class Changes:
    """How many entries were new, changed and gone; and what the calendar holds now."""

    new: int
    changed: int
    gone: int
    games: int
    practices: int
    left_out: int


def bring_up(
    session: Session, source: CalendarSource, found: Found, today: date, now: datetime
) -> Changes:
    """Store what a source holds; a second time nothing changes. `now` is UTC.

    An entry is known by UID and RECURRENCE-ID. What is still to come and is no longer in the
    source was called off; the past stays as it was, for calendars forget it.
    """
    rows = select(CalendarEntry).where(CalendarEntry.team_id == source.team_id)
    stored = {(row.uid, row.recurrence): row for row in session.exec(rows)}
    new = changed = 0
    standing = [one for one in found.occurrences if not one.cancelled]
    for one in standing:
        row = stored.get((one.uid, one.recurrence))
        if row is None:
            _insert(session, source, one, now)
            new += 1
        elif _change(session, row, source, one, now):
            changed += 1
    here = {(one.uid, one.recurrence) for one in standing}
    gone = [
        row
        for known, row in stored.items()
        if row.source_id == key(source)
        and known not in here
        and row.withdrawn_at is None
        and row.on >= today
    ]
    for row in gone:
        _withdraw(session, row, now)
    games = sum(one.kind == EntryKind.GAME for one in standing)
    source.games, source.practices = games, len(standing) - games
    source.left_out, source.read_at, source.problem = found.left_out, now, None
    session.add(source)
    return Changes(new, changed, len(gone), games, len(standing) - games, found.left_out)


def source_for(session: Session, team: Team, address: str) -> CalendarSource:
    """The source of a team with this address, made where there is none."""
    rows = select(CalendarSource).where(
        CalendarSource.team_id == key(team),
        CalendarSource.address == address,
        col(CalendarSource.withdrawn_at).is_(None),
    )
    known = session.exec(rows).first()
    if known is not None:
        return known
    made = CalendarSource(workspace_id=team.workspace_id, team_id=key(team), address=address)
    session.add(made)
    session.flush()
    return made


def _insert(session: Session, source: CalendarSource, one: Occurrence, now: datetime) -> None:
    row = CalendarEntry(
        workspace_id=source.workspace_id,
        team_id=source.team_id,
        uid=one.uid,
        recurrence=one.recurrence,
        source_id=key(source),
        changed_at=now,
        **_told(one),
    )
    session.add(row)
    session.flush()
    _audit(session, row, AuditAction.RECORDED, now, {}, _told(one))


def _change(
    session: Session, row: CalendarEntry, source: CalendarSource, one: Occurrence, now: datetime
) -> bool:
    """Bring one entry to what the source says; whether that changed anything.

    One that stands under another source, or came by a line, is taken over by the newest.
    """
    told = _told(one)
    before = {name: getattr(row, name) for name in told}
    row.source_id = key(source)
    if before == told and row.withdrawn_at is None:
        return False
    for name, value in told.items():
        setattr(row, name, value)
    row.withdrawn_at = None
    row.sequence, row.changed_at = row.sequence + 1, now
    session.add(row)
    _audit(session, row, AuditAction.CORRECTED, now, before, told)
    return True


def _withdraw(session: Session, row: CalendarEntry, now: datetime) -> None:
    row.withdrawn_at = row.changed_at = now
    row.sequence += 1
    session.add(row)
    _audit(session, row, AuditAction.WITHDRAWN, now, {}, {"on": row.on})


def _told(one: Occurrence) -> dict[str, Any]:
    return {
        "kind": str(one.kind),
        "on": one.on,
        "at": one.at,
        "until": one.until,
        "title": one.title,
    }


def _audit(
    session: Session,
    row: CalendarEntry,
    action: AuditAction,
    now: datetime,
    before: dict[str, Any],
    after: dict[str, Any],
) -> None:
    """Kind and time are kept; the title, which a stranger's calendar wrote, is not."""
    kept = ("kind", "on", "at", "until")
    was, is_now = (
        {name: str(value) for name, value in side.items() if name in kept and value is not None}
        for side in (before, after)
    )
    put_on_audit(session, row, action, BY_CALENDAR, now, before=was, after=is_now)
