"""Delivers what is owed: claim a row, render it, send it, store the outcome.

A row is claimed by a conditional update, so any number of processes may deliver at once.
Nothing is sent that was not committed; a send whose outcome is unknown is looked up before
it is repeated.
"""

import logging
import random
import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from threading import Lock
from typing import Any, cast

from sqlalchemy import CursorResult, update
from sqlmodel import Session, col

from bot.access import Open, Opened
from bot.outbox import slack
from bot.outbox.homes import refresh_home
from bot.outbox.owe import owe, owe_once
from bot.outbox.pace import LONG_AGO, POST, Pace
from bot.outbox.rendered import Published, Reaction, Rendered
from bot.outbox.shared import full_until
from bot.outbox.slack import Calls, Failure, SendError, Shown
from bot.outbox.turn import due, free, in_turn, waiting
from core.due.pages import following
from core.due.quiet import held_until
from core.home.sent import NO_MESSAGES
from core.leaving import stop
from core.ledger import NoticeKind
from core.ledger.channel_trouble import channel_trouble
from core.ledger.person_trouble import SHUT, person_trouble
from core.ledger.unreached import unreached
from core.model import MessageState, OutboxMessage, key
from core.store import Store

log = logging.getLogger(__name__)

#: How long a claimed row belongs to its process; longer than its calls can take.
LEASE = timedelta(seconds=60)
#: Stop and come back with a fresh `now` after this (s): a lease counts from `now`.
LONGEST_RUN = 10.0
LONGEST_WAIT = timedelta(minutes=10)
#: Tries before a message is given up: two days while Slack is away, half an hour while it
#: refuses for a reason that we do not know.
MOST_ATTEMPTS = {Failure.UNKNOWN: 300, Failure.REFUSED: 12}

#: A report of pain: repeated where a look-up fails for good or so many times (about a quarter
#: of a minute), and at most so often.
PAIN_NEWS = frozenset(
    {NoticeKind.PAIN, NoticeKind.UNREACHED, NoticeKind.PAIN_UNPLACED, NoticeKind.DANGER}
)
LOOK_UPS, REPEATS = 3, 3

#: What a message says at a moment (UTC); none when there is nothing to say.
Render = Callable[[Session, OutboxMessage, datetime], Rendered | None]


@dataclass(frozen=True, slots=True)
class _Outcome:
    """What to store of one attempt."""

    state: MessageState
    version: int
    digest: str | None = None
    retry_at: datetime | None = None
    error: str | None = None
    #: Nothing was done in Slack, so nothing has to be looked up before the next try.
    untried: bool = False
    #: Held for the morning; unlike one that is tried again, it keeps no other message back.
    held_until: datetime | None = None


class Outbox:
    """Delivers the messages that are due, in the order in which they were owed."""

    def __init__(
        self,
        store: Store,
        opened: Open,
        render: Render,
        give_way: Callable[[], object] = bool,
        seconds: Callable[[], float] = time.monotonic,
    ) -> None:
        """Send to the workspaces that `opened` gives, by the client that it gives for each.

        Clients have no retry handlers, for they must not post twice. `give_way` is called before
        each piece of work that others may go before; `seconds` measures how long a run takes.
        """
        self._store, self._opened, self._render = store, opened, render
        self._give_way, self._seconds = give_way, seconds
        self._busy = Lock()
        self._stopped = False
        #: Tokens that Slack no longer accepts, each with its opening: a new install may bring
        #: the same one to life.
        self._dead: set[tuple[str | None, datetime | None]] = set()
        self._began: datetime | None = None
        self._pace = Pace()

    def deliver(self, now: datetime) -> int:
        """Send what is due at `now` (UTC) and give the number of rows handled.

        A run that takes long leaves the rest to the next call.
        """
        handled = 0
        with self._busy:
            self._began = self._began or now
            began = self._seconds()
            while (
                not self._stopped
                and self._seconds() - began < LONGEST_RUN
                and (opened := self._living())
                and (row := self._claim(now, opened)) is not None
            ):
                outcome = self._attempt(row, opened[row.workspace_id], now)
                self._store_outcome(row, outcome, now)
                handled += 1
        return handled

    def stop(self) -> None:
        """Claim nothing any more; what is being sent is finished."""
        self._stopped = True

    def next_due(self) -> datetime | None:
        """When the next row that waits is due and the pace allows it; none when none waits."""
        with self._store.reading() as session:
            rows, full = session.execute(waiting()).all(), full_until(session)
        times = [
            max(
                first,
                self._pace.free_at(workspace, method, destination),
                full.get(workspace, LONG_AGO) if method == POST else LONG_AGO,
            )
            for workspace, method, destination, first in rows
        ]
        return min(times, default=None)

    def _living(self) -> Mapping[str, Opened]:
        opened = self._opened().items()
        return {one: by for one, by in opened if (by.client.token, by.at) not in self._dead}

    def _claim(self, now: datetime, opened: Iterable[str]) -> OutboxMessage | None:
        self._give_way()
        with self._store.reading() as session:  # mostly there is none: that needs no lock
            full = [one for one, until in full_until(session).items() if until > now]
            ids = session.scalars(due(now, self._pace, full, opened)).all()
        if not ids:
            return None
        with self._store.writing() as session:
            for row_id in ids:
                claimed = session.execute(
                    update(OutboxMessage)
                    # In turn still: another process may have claimed the row before it.
                    .where(col(OutboxMessage.id) == row_id, free(now), in_turn())
                    .values(
                        state=MessageState.SENDING,
                        lease_until=now + LEASE,
                        attempts=col(OutboxMessage.attempts) + 1,
                    )
                )
                if cast(CursorResult[Any], claimed).rowcount == 1:
                    return session.get_one(OutboxMessage, row_id, populate_existing=True)
        return None

    def _attempt(self, row: OutboxMessage, opened: Opened, now: datetime) -> _Outcome:
        try:
            calls = Calls(opened.client, self._pace, row.workspace_id, now)
            _find_sent(row, calls)
            until = self._held_until(row, now)
            if until is not None:
                return _Outcome(MessageState.QUEUED, row.delivered, held_until=until, untried=True)
            rendered = self._rendered(row, now)
            if rendered is None or _is_there(row, rendered):
                seen = row.shown is not None or row.ts is not None
                return _Outcome(MessageState.SENT if seen else MessageState.DROPPED, row.wanted)
            _send(row, rendered, calls)
        except SendError as problem:
            return self._failed(row, opened, problem, now)
        return _Outcome(MessageState.SENT, row.wanted, rendered.digest)

    def _held_until(self, row: OutboxMessage, now: datetime) -> datetime | None:
        # One that was tried already may stand in Slack, and is looked up by its `not_before`.
        if row.attempts > 1:
            return None
        with self._store.reading() as session:
            return held_until(session, row, now)

    def _rendered(self, row: OutboxMessage, now: datetime) -> Rendered | None:
        self._give_way()
        try:
            with self._store.reading() as session:
                return self._render(session, row, now)
        except Exception as fault:
            # One message that cannot be rendered must not keep the others back.
            raise SendError(Failure.REFUSED, type(fault).__name__, "rendering") from fault

    def _failed(
        self, row: OutboxMessage, opened: Opened, problem: SendError, now: datetime
    ) -> _Outcome:
        if problem.failure is Failure.TOO_SOON:
            return _put_off(row, problem, now)
        log.warning("message %s: %s", row.id, problem)
        if problem.failure is Failure.CLOSED:
            self._close(row, opened, problem, now)
            return _Outcome(MessageState.QUEUED, row.delivered, error=problem.error, untried=True)
        if problem.failure is Failure.RATE_LIMITED:
            return _put_off(row, problem, now)
        if row.attempts >= MOST_ATTEMPTS.get(problem.failure, 0):
            return _Outcome(MessageState.FAILED, row.delivered, error=problem.error)
        until = now + _backoff(row.attempts)
        return _Outcome(MessageState.QUEUED, row.delivered, retry_at=until, error=problem.error)

    def _close(self, row: OutboxMessage, opened: Opened, problem: SendError, now: datetime) -> None:
        """Send nothing more by this token: it is dead."""
        self._dead.add((opened.client.token, opened.at))
        log.error(
            "workspace %s: Slack no longer accepts the bot token (%s); nothing is sent until the "
            "app is installed again, or the bot started with a token that works",
            row.workspace_id,
            problem.error,
        )
        with self._store.writing() as session:
            stop(session, row.workspace_id, opened.at or self._began or now, now)

    def _store_outcome(self, claimed: OutboxMessage, outcome: _Outcome, now: datetime) -> None:
        self._give_way()
        with self._store.writing() as session:
            row = session.get_one(OutboxMessage, key(claimed), with_for_update=True)
            if row.lease_until != claimed.lease_until or row.attempts != claimed.attempts:
                return  # the lease ran out and somebody else has it now
            row.state, row.delivered = outcome.state, outcome.version
            # `not_before` stays: a look-up begins there, however often a send is put off.
            row.lease_until, row.error = outcome.retry_at, outcome.error
            row.channel, row.ts = claimed.channel, claimed.ts
            if outcome.digest is not None:
                row.shown = outcome.digest
            if outcome.untried:
                row.attempts -= 1
            elif outcome.state in {MessageState.SENT, MessageState.DROPPED}:
                row.attempts = 0
            if outcome.held_until is not None:
                row.not_before = outcome.held_until
            if outcome.state is MessageState.FAILED:
                owe(session, row.workspace_id, unreached(session, row, now))
                owe_once(session, row.workspace_id, channel_trouble(session, row, now))
                owe_once(session, row.workspace_id, person_trouble(session, row, now))
                if row.error in SHUT and row.kind not in NO_MESSAGES:
                    refresh_home(session, row.workspace_id, row.destination, now)
            if outcome.state is MessageState.DROPPED and row.kind == NoticeKind.FAMILY:
                owe(session, row.workspace_id, unreached(session, row, now))
            if outcome.state is MessageState.SENT:
                owe_once(session, row.workspace_id, following(session, row))
            if outcome.retry_at is None and row.wanted > claimed.wanted:
                row.state = MessageState.QUEUED
            session.add(row)


def _find_sent(row: OutboxMessage, calls: Calls) -> None:
    """Look for a message whose first sending has an unknown outcome.

    This comes before rendering: what people may see already must be brought up to date
    even when there would be nothing to begin any more.
    """
    if row.attempts == 1 or row.ts is not None or row.kind in NO_MESSAGES:
        return
    try:
        _note(row, slack.look_up(calls, row))
    except SendError as problem:
        if not _is_repeated_unseen(row, problem):
            raise


def _is_repeated_unseen(row: OutboxMessage, problem: SendError) -> bool:
    """Whether a message goes out again although nobody knows whether it stands already.

    A report of pain does, a few times, since one that is read twice harms less than one that
    is not read; anything else waits for the look-up, or is given up with it.
    """
    if row.kind not in PAIN_NEWS or row.attempts > LOOK_UPS + REPEATS:
        return False
    unanswered = problem.failure is Failure.UNKNOWN and row.attempts > LOOK_UPS
    return unanswered or problem.failure in {Failure.PERMANENT, Failure.REFUSED}


def _send(row: OutboxMessage, rendered: Rendered, calls: Calls) -> None:
    shown = _stands(row)
    if isinstance(rendered, Reaction):
        standing = [row.shown] if row.shown is not None or row.attempts == 1 else rendered.ours
        slack.react(calls, row.destination, rendered, standing)
    elif isinstance(rendered, Published):
        slack.publish(calls, row.destination, rendered)
    elif shown is not None:
        slack.update(calls, shown, rendered)
    else:
        _note(row, slack.post(calls, row, rendered))


def _put_off(row: OutboxMessage, problem: SendError, now: datetime) -> _Outcome:
    """Try again when Slack, or the pace, allows it; nothing was done."""
    until = now + timedelta(seconds=problem.after)
    error = None if problem.failure is Failure.TOO_SOON else problem.error
    return _Outcome(MessageState.QUEUED, row.delivered, retry_at=until, error=error, untried=True)


def _stands(row: OutboxMessage) -> Shown | None:
    return Shown(row.channel, row.ts) if row.channel and row.ts else None


def _is_there(row: OutboxMessage, rendered: Rendered) -> bool:
    # A reaction, or a Home tab, cannot be looked up: after an unknown outcome it is set right
    # blindly.
    blind = isinstance(rendered, Published) or (
        isinstance(rendered, Reaction) and row.shown is None
    )
    unknown = blind and row.attempts > 1
    return rendered.digest == (row.shown or "") and not unknown


def _note(row: OutboxMessage, shown: Shown | None) -> None:
    if shown is not None:
        row.channel, row.ts = shown.channel, shown.ts


def _backoff(attempts: int) -> timedelta:
    """Doubling from 2 s to ten minutes, with jitter so that processes do not march in step."""
    seconds = min(2.0**attempts, LONGEST_WAIT.total_seconds())
    return timedelta(seconds=seconds * random.uniform(0.75, 1.25))
