"""The audit: who changed which row, when, from what to what."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from sqlmodel import Session, select

from core.model import AuditAction, AuditEntry, key


def put_on_audit(
    session: Session,
    row: Any,
    action: AuditAction,
    by_slack_id: str,
    at: datetime,
    *,
    before: Mapping[str, Any] | None = None,
    after: Mapping[str, Any] | None = None,
    line_id: int | None = None,
) -> None:
    """Keep a change of a row that has been flushed; `line_id` names the line that made it.

    Raises `ValueError` for a row without an id.
    """
    session.add(
        AuditEntry(
            workspace_id=row.workspace_id,
            at=at,
            by_slack_id=by_slack_id,
            line_id=line_id,
            subject=subject_of(type(row)),
            subject_id=key(row),
            action=action,
            before=dict(before or {}),
            after=dict(after or {}),
        )
    )


def subject_of(table: type[Any]) -> str:
    """How the audit names the rows of a table."""
    return table.__name__.lower()


def recorded(session: Session, row: Any) -> AuditEntry:
    """The entry of a row's first recording; it names what stood before."""
    entries = select(AuditEntry).where(
        AuditEntry.subject == subject_of(type(row)),
        AuditEntry.subject_id == key(row),
        AuditEntry.action == AuditAction.RECORDED,
    )
    return session.exec(entries).one()
