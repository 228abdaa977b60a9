"""Writes what the ledger says must be told as outbox rows, in the ledger's own transaction."""

from collections.abc import Iterable
from typing import Any

from sqlalchemy import case
from sqlalchemy.dialects import postgresql, sqlite
from sqlmodel import Session, col, select

from core.ledger import Notice
from core.model import MessageState, OutboxMessage
from core.store.once import insert_once


def owe(session: Session, workspace_id: str, notices: Iterable[Notice]) -> None:
    """Owe each notice: a new row for a new slot, a higher wanted version for a known one."""
    for notice in notices:
        if not _bump(session, workspace_id, notice) and not notice.only_if_shown:
            _insert(session, workspace_id, notice)


def _bump(session: Session, workspace_id: str, notice: Notice) -> bool:
    row = session.exec(
        select(OutboxMessage)
        .where(OutboxMessage.workspace_id == workspace_id, OutboxMessage.slot == notice.slot)
        .with_for_update()
    ).first()
    if row is None:
        return False
    row.wanted += 1
    if row.state != MessageState.SENDING:  # a sender looks at `wanted` again when it is done
        row.state = MessageState.QUEUED
        if notice.anew and row.ts is not None:
            row.channel = row.ts = row.shown = None
            row.attempts = 0
        if row.ts is not None:
            row.attempts = 0
        if row.attempts == 0:  # else it may stand in Slack: a look-up begins at `not_before`
            row.not_before = max(notice.not_before, row.not_before)
    session.add(row)
    return True


def owe_once(session: Session, workspace_id: str, notices: Iterable[Notice]) -> None:
    """Owe what is not owed yet; a slot that is known stays as it is."""
    for notice in notices:
        values = _values(workspace_id, notice)
        session.execute(insert_once(session, OutboxMessage, values))


def _values(workspace_id: str, notice: Notice) -> dict[str, Any]:
    return {
        "workspace_id": workspace_id,
        "slot": notice.slot,
        "kind": notice.kind,
        "line_id": notice.line_id,
        "team_id": notice.team_id,
        "person_id": notice.person_id,
        "destination": notice.destination,
        "thread_ts": notice.thread_ts,
        "not_before": notice.not_before,
        "wanted": 1,
        "delivered": 0,
        "state": MessageState.QUEUED,
        "attempts": 0,
    }


def _insert(session: Session, workspace_id: str, notice: Notice) -> None:
    values = _values(workspace_id, notice)
    sending = col(OutboxMessage.state) == MessageState.SENDING
    state = case((sending, MessageState.SENDING), else_=MessageState.QUEUED)
    again = {"wanted": col(OutboxMessage.wanted) + 1, "state": state}
    key = ["workspace_id", "slot"]
    # Another process may have claimed the slot since we looked: then its row is brought up.
    if session.get_bind().dialect.name == "postgresql":
        session.execute(
            postgresql.insert(OutboxMessage)
            .values(values)
            .on_conflict_do_update(index_elements=key, set_=again)
        )
    else:
        session.execute(
            sqlite.insert(OutboxMessage)
            .values(values)
            .on_conflict_do_update(index_elements=key, set_=again)
        )
