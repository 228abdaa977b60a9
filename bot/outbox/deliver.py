"""Delivers what is owed: claim a row, render it, send it, store the outcome.

A row is claimed by a conditional update, so any number of processes may deliver at once.
Nothing is sent that was not committed; a send whose outcome is unknown is looked up before
it is repeated.
"""

import logging
import random
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from threading import Lock
from typing import Any, cast

from slack_sdk import WebClient
from sqlalchemy import ColumnElement, CursorResult, Select, update
from sqlalchemy import select as sa_select
from sqlalchemy.orm import aliased
from sqlmodel import Session, col, func, select

from bot.outbox import slack
from bot.outbox.rendered import Reaction, Rendered, Words
from bot.outbox.slack import Failure, SendError, Shown
from core.ledger import NoticeKind
from core.model import MessageState, OutboxMessage, key
from core.store import Store

log = logging.getLogger(__name__)

#: How long a claimed row belongs to its process; longer than a send can take (30 s).
LEASE = timedelta(seconds=60)
#: Slack takes about one message a second in a channel.
PACE = timedelta(seconds=1)
LONGEST_WAIT = timedelta(minutes=10)
MOST_ATTEMPTS = 12

Render = Callable[[Session, OutboxMessage], Rendered | None]


@dataclass(frozen=True, slots=True)
class _Outcome:
    """What to store of one attempt."""

    state: MessageState
    version: int
    shown: Shown | None = None
    digest: str | None = None
    retry_at: datetime | None = None
    error: str | None = None


class Outbox:
    """Delivers the messages that are due, in the order in which they were owed."""

    def __init__(self, store: Store, client: WebClient, render: Render) -> None:
        """Use `client` for every call; give it no retry handlers, for it must not post twice."""
        self._store, self._client, self._render = store, client, render
        self._busy = Lock()
        self._blocked: dict[str, datetime] = {}
        self._posted: dict[str, datetime] = {}

    def deliver(self, now: datetime) -> int:
        """Send everything that is due at `now` (UTC) and give the number of rows handled."""
        handled = 0
        with self._busy:
            while (row := self._claim(now)) is not None:
                self._store_outcome(row, self._attempt(row, now), now)
                handled += 1
        return handled

    def next_due(self) -> datetime | None:
        """When the next row that waits is due, or none when nothing waits."""
        with self._store.reading() as session:
            waiting = select(func.min(OutboxMessage.not_before)).where(
                OutboxMessage.state == MessageState.QUEUED
            )
            return session.exec(waiting).one()

    def _claim(self, now: datetime) -> OutboxMessage | None:
        with self._store.writing() as session:
            for row_id in session.scalars(_due(now)).all():
                claimed = session.execute(
                    update(OutboxMessage)
                    .where(col(OutboxMessage.id) == row_id, _free(now))
                    .values(
                        state=MessageState.SENDING,
                        lease_until=now + LEASE,
                        attempts=col(OutboxMessage.attempts) + 1,
                    )
                )
                if cast(CursorResult[Any], claimed).rowcount == 1:
                    return session.get_one(OutboxMessage, row_id, populate_existing=True)
        return None

    def _attempt(self, row: OutboxMessage, now: datetime) -> _Outcome:
        with self._store.reading() as session:
            rendered = self._render(session, row)
        if rendered is None or rendered.digest == (row.shown or ""):
            state = MessageState.SENT if row.shown is not None else MessageState.DROPPED
            return _Outcome(state, row.wanted)
        wait = self._must_wait(row, rendered, now)
        if wait is not None:
            return _Outcome(MessageState.QUEUED, row.delivered, retry_at=wait)
        try:
            shown = self._send(row, rendered, now)
        except SendError as problem:
            return self._failed(row, problem, now)
        return _Outcome(MessageState.SENT, row.wanted, shown, rendered.digest)

    def _must_wait(self, row: OutboxMessage, rendered: Rendered, now: datetime) -> datetime | None:
        method = _method(row, rendered)
        until = self._blocked.get(method)
        if until is not None and until > now:
            return until
        last = self._posted.get(row.destination)
        if method == "chat.postMessage" and last is not None and now - last < PACE:
            return last + PACE
        return None

    def _send(self, row: OutboxMessage, rendered: Rendered, now: datetime) -> Shown | None:
        if isinstance(rendered, Reaction):
            slack.react(self._client, row.destination, rendered, row.shown)
            return None
        shown = _stands(row)
        if shown is None and row.attempts > 1:
            shown = slack.look_up(self._client, row)
        if shown is None:
            self._posted[row.destination] = now
            return slack.post(self._client, row, rendered)
        slack.update(self._client, shown, rendered)
        return shown

    def _failed(self, row: OutboxMessage, problem: SendError, now: datetime) -> _Outcome:
        log.warning("message %s: %s", row.id, problem)
        if problem.failure is Failure.PERMANENT or row.attempts >= MOST_ATTEMPTS:
            return _Outcome(MessageState.FAILED, row.delivered, error=problem.error)
        if problem.failure is Failure.RATE_LIMITED:
            until = now + timedelta(seconds=problem.after)
            self._blocked[problem.method] = until
        else:
            until = now + _backoff(row.attempts)
        return _Outcome(MessageState.QUEUED, row.delivered, retry_at=until, error=problem.error)

    def _store_outcome(self, claimed: OutboxMessage, outcome: _Outcome, now: datetime) -> None:
        with self._store.writing() as session:
            row = session.get_one(OutboxMessage, key(claimed), with_for_update=True)
            if row.lease_until != claimed.lease_until or row.attempts != claimed.attempts:
                return  # the lease ran out and somebody else has it now
            row.state, row.delivered = outcome.state, outcome.version
            row.lease_until, row.error = None, outcome.error
            if outcome.shown is not None:
                row.channel, row.ts = outcome.shown.channel, outcome.shown.ts
            if outcome.digest is not None:
                row.shown = outcome.digest
            if outcome.retry_at is not None:
                row.not_before = outcome.retry_at
                if outcome.error is None:
                    row.attempts -= 1  # only held back: nothing was tried
            elif row.wanted > outcome.version:
                row.state, row.not_before, row.attempts = MessageState.QUEUED, now, 0
            session.add(row)


def _due(now: datetime) -> Select[int | None]:
    """The rows that may be sent now, oldest first; a conversation keeps its order."""
    earlier = aliased(OutboxMessage)
    blocked = (
        select(earlier.id)
        .where(
            col(earlier.destination) == col(OutboxMessage.destination),
            col(earlier.id) < col(OutboxMessage.id),
            col(earlier.kind) != NoticeKind.REACTION,
            (col(earlier.state) == MessageState.SENDING)
            | ((col(earlier.state) == MessageState.QUEUED) & (col(earlier.attempts) > 0)),
        )
        .exists()
    )
    return (
        sa_select(col(OutboxMessage.id))
        .where(_free(now), (col(OutboxMessage.kind) == NoticeKind.REACTION) | ~blocked)
        .order_by(col(OutboxMessage.id))
    )


def _free(now: datetime) -> ColumnElement[bool]:
    queued = (col(OutboxMessage.state) == MessageState.QUEUED) & (
        col(OutboxMessage.not_before) <= now
    )
    abandoned = (col(OutboxMessage.state) == MessageState.SENDING) & (
        col(OutboxMessage.lease_until) < now
    )
    return queued | abandoned


def _stands(row: OutboxMessage) -> Shown | None:
    return Shown(row.channel, row.ts) if row.channel and row.ts else None


def _method(row: OutboxMessage, rendered: Rendered) -> str:
    if isinstance(rendered, Words):
        return "chat.update" if row.ts else "chat.postMessage"
    return "reactions.add" if rendered.name else "reactions.remove"


def _backoff(attempts: int) -> timedelta:
    """Doubling from 2 s to ten minutes, with jitter so that processes do not march in step."""
    seconds = min(2.0**attempts, LONGEST_WAIT.total_seconds())
    return timedelta(seconds=seconds * random.uniform(0.75, 1.25))
