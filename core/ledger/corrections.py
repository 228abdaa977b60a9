"""What others than its author put right in a line's record: by whom, from what to what."""

from dataclasses import dataclass
from typing import Any

from sqlmodel import Session, col, select

from core.ledger.audit import subject_of
from core.ledger.crew import find_person
from core.ledger.fields import COUNTS
from core.model import AuditAction, AuditEntry, Line, Outing, key

#: Columns whose change is told; the others are the ledger's own.
TOLD = (*COUNTS, "on", "kind")


@dataclass(frozen=True, slots=True)
class Correction:
    """One change of one field."""

    by: str
    field: str
    before: Any
    after: Any


def corrections(session: Session, line: Line, pitcher_id: int) -> tuple[Correction, ...]:
    """The changes by others to a pitcher's outings of a line, oldest first."""
    of_pitcher = select(Outing.id).where(
        Outing.line_id == key(line), Outing.pitcher_id == pitcher_id
    )
    entries = session.exec(
        select(AuditEntry)
        .where(
            AuditEntry.line_id == key(line),
            AuditEntry.subject == subject_of(Outing),
            AuditEntry.action == AuditAction.CORRECTED,
            AuditEntry.by_slack_id != line.author_slack_id,
            col(AuditEntry.subject_id).in_(of_pitcher),
        )
        .order_by(col(AuditEntry.id))
    )
    return tuple(
        Correction(_name(session, entry), field, entry.before.get(field), entry.after[field])
        for entry in entries
        for field in TOLD
        if field in entry.after and entry.before.get(field) != entry.after[field]
    )


def undone_by(session: Session, line: Line) -> str:
    """Who else than its author took a line out of the record; empty where nobody did."""
    last = session.exec(
        select(AuditEntry)
        .where(AuditEntry.line_id == key(line), AuditEntry.action == AuditAction.WITHDRAWN)
        .order_by(col(AuditEntry.id).desc())
    ).first()
    if last is None or last.by_slack_id == line.author_slack_id:
        return ""
    return _name(session, last)


def _name(session: Session, entry: AuditEntry) -> str:
    person = find_person(session, entry.workspace_id, entry.by_slack_id)
    return person.name if person is not None else "somebody"
