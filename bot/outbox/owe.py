"""Writes what the ledger says must be told as outbox rows, in the ledger's own transaction."""

from collections.abc import Iterable
from functools import cache
from typing import Any

from sqlalchemy import BindParameter, bindparam, case
from sqlalchemy.dialects import postgresql, sqlite
from sqlmodel import Session, col, select

from core.ledger import Notice
from core.model import MessageState, OutboxMessage, Stored
from core.store.once import insert_once


def owe(session: Session, workspace_id: str, notices: Iterable[Notice]) -> None:
    """Owe each notice: a new row for a new slot, a higher wanted version for a known one.

    One look for all of them, and one insert: a line owes a dozen, most of them only if shown.
    """
    owed = list(notices)
    if not owed:
        return
    known = _known(session, workspace_id, {notice.slot for notice in owed})
    new: dict[str, dict[str, Any]] = {}
    for notice in owed:
        if notice.slot in known:
            _bump(known[notice.slot], notice)
        elif notice.slot in new:
            values = new[notice.slot]
            values["wanted"] += 1
            values["not_before"] = max(notice.not_before, values["not_before"])
        elif not notice.only_if_shown:
            new[notice.slot] = _values(workspace_id, notice)
    session.add_all(known.values())
    if new:
        session.flush()
        _insert(session, list(new.values()))


_SLOTS: BindParameter[Any] = bindparam("slots", expanding=True)
_IN_SLOTS = (
    select(OutboxMessage)
    .where(
        col(OutboxMessage.workspace_id) == bindparam("workspace"),
        col(OutboxMessage.slot).in_(_SLOTS),
    )
    .order_by(col(OutboxMessage.id))  # two processes lock them in the same order
    .with_for_update()
)


def _known(session: Session, workspace_id: str, slots: set[str]) -> dict[str, OutboxMessage]:
    rows = session.exec(_IN_SLOTS, params={"workspace": workspace_id, "slots": list(slots)})
    return {row.slot: row for row in rows}


def _bump(row: OutboxMessage, notice: Notice) -> None:
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


def owe_once(session: Session, workspace_id: str, notices: Iterable[Notice]) -> None:
    """Owe what is not owed yet; a slot that is known stays as it is."""
    for notice in notices:
        values = _values(workspace_id, notice)
        insert_once(session, OutboxMessage, values)


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


def _insert(session: Session, rows: list[dict[str, Any]]) -> None:
    session.execute(_insert_or_bump(session.get_bind().dialect.name), rows)


@cache
def _insert_or_bump(dialect: str) -> postgresql.Insert | sqlite.Insert:
    """Another process may have claimed a slot since we looked: then its row is brought up."""
    sending = col(OutboxMessage.state) == MessageState.SENDING
    state = case((sending, MessageState.SENDING), else_=MessageState.QUEUED)
    again = {"wanted": col(OutboxMessage.wanted) + 1, "state": state}
    key = ["workspace_id", "slot"]
    table = Stored.metadata.tables["outboxmessage"]  # rows of one shape: one statement
    insert = (postgresql.insert if dialect == "postgresql" else sqlite.insert)(table)
    return insert.on_conflict_do_update(index_elements=key, set_=again)
