"""Writes a reading into the record: only what changed since the last reading of the line."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, TypeVar

from sqlmodel import Session, select

from core.ledger.audit import put_on_audit
from core.ledger.crew import Crew
from core.ledger.fields import as_columns
from core.ledger.schedule_rows import bring_up
from core.model import (
    AuditAction,
    CalendarEntry,
    CalendarSource,
    CalledOff,
    Clearance,
    CoachLimit,
    LastDayWish,
    Line,
    Outing,
    OutingBook,
    PainReport,
    RestDayWord,
    ScheduleKind,
    ScheduleSetting,
    SpinPlan,
    ThresholdSetting,
    key,
)

#: What is read from a line, and what a line sets beside the log.
Row = Outing | PainReport
Setting = (
    CoachLimit
    | OutingBook
    | Clearance
    | ThresholdSetting
    | CalendarSource
    | CalendarEntry
    | CalledOff
    | ScheduleSetting
    | SpinPlan
    | LastDayWish
    | RestDayWord
)
READINGS: tuple[type[Row], ...] = (Outing, PainReport)
SETTINGS: tuple[type[Setting], ...] = (
    CoachLimit,
    OutingBook,
    Clearance,
    ThresholdSetting,
    CalendarSource,
    CalendarEntry,
    CalledOff,
    ScheduleSetting,
    SpinPlan,
    LastDayWish,
    RestDayWord,
)
_Any = TypeVar("_Any", bound=Row | Setting)
#: Column values by row slot, as JSON holds them.
Readings = dict[str, dict[str, Any]]


@dataclass(frozen=True, slots=True)
class Change:
    """Who changes a line's record, and when (UTC)."""

    session: Session
    line: Line
    by_slack_id: str
    at: datetime
    #: The line was stored in this transaction: nothing of it is on file yet.
    is_new: bool = False
    #: The rows that this change put on file, in their order.
    added: list[Row] = field(default_factory=list)


def apply_reading(
    change: Change, before: Iterable[dict[str, Any]], after: Iterable[dict[str, Any]], crew: Crew
) -> None:
    """Bring the rows of a line from the reading `before` to the reading `after`.

    A field whose reading did not change keeps its stored value, so that what was put right
    by hand stays right. A row whose entry is gone is withdrawn, never deleted.
    """
    old, new = list(before), list(after)
    rows: list[tuple[type[Row], Readings, Readings]] = [
        (Outing, _outings(old), _outings(new)),
        (PainReport, _reports(old), _reports(new)),
    ]
    for table, was, is_now in rows:
        stored = {} if change.is_new else {row.slot: row for row in _rows(change, table)}
        for slot, fields in is_now.items():
            if slot in stored:
                _correct(change, stored[slot], was.get(slot, {}), fields)
            else:
                _insert(change, table, slot, fields, crew)
        for slot in stored.keys() - is_now.keys():
            withdraw_row(change, stored[slot])


def keep_overtaken(change: Change, reading: Iterable[dict[str, Any]], crew: Crew) -> bool:
    """Put reports of the arm from an older version of a line on file, as withdrawn.

    Gives whether there was one that the record did not hold in any form.
    """
    known = {row.slot for row in _rows(change, PainReport)}
    new = {slot: fields for slot, fields in _reports(reading).items() if slot not in known}
    for slot, fields in new.items():
        withdraw_row(change, _insert(change, PainReport, slot, fields, crew))
    return bool(new)


def note_text(change: Change, text: str) -> None:
    """Give a line its newest text; the audit keeps the one before."""
    audit(change, change.line, AuditAction.CORRECTED, {"text": change.line.text}, {"text": text})
    change.line.text = text


def correct_row(change: Change, row: Row, fields: Mapping[str, Any]) -> None:
    """Set columns of a row by hand; what is so already is neither set nor audited."""
    is_now = {name: _as_json(value) for name, value in fields.items()}
    was = {name: _as_json(getattr(row, name)) for name in fields}
    _correct(change, row, was, is_now)


def withdraw_rows(change: Change) -> None:
    """Take everything that was read from a line out of the record; the rows stay."""
    _withdraw_all(change, READINGS)


def withdraw_settings(change: Change) -> None:
    """Take back whatever a line set; what held before holds again."""
    _withdraw_all(change, SETTINGS)


def keep_row(change: Change, row: Row | Setting, said: Mapping[str, Any]) -> None:
    """Put a new row of a line on file; `said` are the columns that the audit keeps."""
    change.session.add(row)
    change.session.flush()
    audit(change, row, AuditAction.RECORDED, {}, said)


def _outings(readings: Iterable[dict[str, Any]]) -> Readings:
    return {one["slot"]: one["outing"] for one in readings if one["outing"] is not None}


def _reports(readings: Iterable[dict[str, Any]]) -> Readings:
    return {
        f"{one['slot']}/{name}": {"on": one["on"], **felt}
        for one in readings
        for name, felt in one["felt"].items()
    }


def _withdraw_all(change: Change, tables: Iterable[type[Row | Setting]]) -> None:
    for table in tables:
        for row in _rows(change, table):
            withdraw_row(change, row)


def _rows(change: Change, table: type[_Any]) -> list[_Any]:
    of_line = select(table).where(table.line_id == key(change.line))
    return list(change.session.scalars(of_line))


def _insert(
    change: Change, table: type[Row], slot: str, fields: Mapping[str, Any], crew: Crew
) -> Row:
    pitcher_id = int(slot.split("/", 1)[0])
    line = change.line
    columns: dict[str, Any] = {
        "workspace_id": line.workspace_id,
        "line_id": key(line),
        "slot": slot,
        "pitcher_id": pitcher_id,
        **as_columns(fields),
    }
    if table is Outing:
        columns["team_id"] = crew.team_for(pitcher_id)
    row = table(**columns)
    keep_row(change, row, fields)
    change.added.append(row)
    return row


def _correct(change: Change, row: Row, was: Mapping[str, Any], is_now: Mapping[str, Any]) -> None:
    back = row.withdrawn_at is not None
    changed = {name: value for name, value in is_now.items() if back or was.get(name) != value}
    if not changed:
        return
    before = {name: _as_json(getattr(row, name)) for name in changed}
    if back:
        before, changed = before | _withdrawal(row), changed | {"withdrawn_at": None}
    for name, value in as_columns(changed).items():
        setattr(row, name, value)
    change.session.add(row)
    audit(change, row, AuditAction.CORRECTED, before, changed)


def withdraw_row(change: Change, row: Row | Setting) -> None:
    """Take a row out of the record; it stays on file, and a second time changes nothing."""
    if row.withdrawn_at is not None:
        return
    before, row.withdrawn_at = _withdrawal(row), change.at
    change.session.add(row)
    audit(change, row, AuditAction.WITHDRAWN, before, _withdrawal(row))
    if isinstance(row, ScheduleSetting):
        bring_up(change.session, row.team_id, ScheduleKind(row.kind), change.at)
    elif isinstance(row, CalledOff):
        touch(change, change.session.get_one(CalendarEntry, row.entry_id))
    elif isinstance(row, CalendarEntry):
        touch(change, row)


def touch(change: Change, entry: CalendarEntry) -> None:
    """Count a change of a calendar entry (RFC 5545, 3.8.7.4), for whoever reads it elsewhere."""
    entry.sequence, entry.changed_at = entry.sequence + 1, change.at
    change.session.add(entry)


def _withdrawal(row: Row | Setting) -> dict[str, Any]:
    return {"withdrawn_at": _as_json(row.withdrawn_at)}


def audit(
    change: Change,
    row: Any,
    action: AuditAction,
    before: Mapping[str, Any],
    after: Mapping[str, Any],
) -> None:
    """Keep who changed a row of the line, when, from what to what."""
    put_on_audit(
        change.session, row, action, change.by_slack_id, change.at,
        before=before, after=after, line_id=key(change.line),
    )  # fmt: skip


def _as_json(value: Any) -> Any:
    return value.isoformat() if hasattr(value, "isoformat") else value
