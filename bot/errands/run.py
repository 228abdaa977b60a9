"""Runs what is due: claim an errand, do it, store what follows and that it is done at once."""

import logging
from collections.abc import Callable, Iterable, Mapping
from concurrent.futures import Future, ThreadPoolExecutor
from datetime import datetime, timedelta
from typing import Any, Final, cast

from sqlalchemy import CursorResult, update
from sqlmodel import col, func, select

from bot.access import Open
from bot.errands import first_steps, roster
from bot.errands.deletion import do_delete
from bot.errands.errand import ErrandError, Finish, Tools, Work
from bot.errands.kept import hear_kept, hear_of_newcomers
from bot.errands.names import learn_names
from bot.outbox.owe import owe
from bot.presses.consent import DELETE_RECORD
from bot.roster_file import APPLY, FORGET, LOOK
from core.consent.events import HEAR_KEPT
from core.leaving import is_served
from core.model import Errand, key
from core.roster.first_steps import WHO_OPENED
from core.roster.newcomers import HEAR_NEWCOMERS
from core.roster.people import LEARN_NAMES
from core.roster.teams import LOOK_AT_CHANNELS
from core.store import Store

log = logging.getLogger(__name__)

#: How long a claimed errand belongs to its process, and the wait between two tries.
LEASE = timedelta(seconds=60)
#: Tries before one is given up: half an hour.
MOST_ATTEMPTS = 30
#: Errands of one run; the rest waits for the next one.
AT_ONCE = 20

WORKS: Final[Mapping[str, Work]] = {
    HEAR_KEPT: hear_kept,
    HEAR_NEWCOMERS: hear_of_newcomers,
    DELETE_RECORD: do_delete,
    LEARN_NAMES: learn_names,
    LOOK: roster.look,
    APPLY: roster.apply,
    FORGET: roster.forget,
    WHO_OPENED: first_steps.who_opened,
    LOOK_AT_CHANNELS: first_steps.look_at_channels,
}


class Errands:
    """Does errands in the order in which they were written; any number of processes may.

    It works in a thread of its own: while Slack is slow, messages must go out all the same.
    """

    def __init__(self, store: Store, opened: Open, known_books: tuple[str, ...]) -> None:
        """Work for the workspaces that `opened` gives, by the client that it gives for each.

        `known_books` are the ids of the rule books that a team may name.
        """
        self._store, self._opened, self._known_books = store, opened, known_books
        self._thread = ThreadPoolExecutor(1, thread_name_prefix="errands")
        self._running: Future[None] | None = None
        #: Called when an errand is done: it may have owed messages.
        self.done: Callable[[], None] = _no_bell

    def run(self, now: datetime) -> None:
        """Begin what is due at `now` (UTC), unless earlier ones still run."""
        due = self.next_due()
        if (self._running is None or self._running.done()) and due is not None and due <= now:
            self._running = self._thread.submit(self._run_all, now)

    def finish(self) -> None:
        """Wait for what runs."""
        if self._running is not None:
            self._running.result()

    def stop(self) -> None:
        """Begin nothing any more; what runs comes again after its lease."""
        self._thread.shutdown(wait=False, cancel_futures=True)

    def _run_all(self, now: datetime) -> None:
        for _ in range(AT_ONCE):
            opened = self._opened()
            errand = self._claim(now, opened)
            if errand is None:
                return
            client = opened[errand.workspace_id].client
            self._do(errand, Tools(self._store, client, self._known_books), now)
            self.done()

    def next_due(self) -> datetime | None:
        """When the next one is due; none when none waits."""
        with self._store.reading() as session:
            waiting = select(func.min(Errand.not_before)).where(
                col(Errand.done_at).is_(None), is_served(col(Errand.workspace_id))
            )
            first: datetime | None = session.exec(waiting).one()
        return first

    def _claim(self, now: datetime, opened: Iterable[str]) -> Errand | None:
        due = (
            col(Errand.done_at).is_(None),
            col(Errand.not_before) <= now,
            col(Errand.workspace_id).in_(opened),
            is_served(col(Errand.workspace_id)),
        )
        with self._store.reading() as session:  # most looks find nothing
            waiting = session.exec(select(Errand.id).where(*due).order_by(col(Errand.id))).first()
        if waiting is None:
            return None
        with self._store.writing() as session:
            claimed = session.execute(
                update(Errand)
                .where(col(Errand.id) == waiting, *due)
                .values(not_before=now + LEASE, attempts=col(Errand.attempts) + 1)
            )
            if cast(CursorResult[Any], claimed).rowcount == 1:
                return session.get_one(Errand, waiting, populate_existing=True)
        return None

    def _do(self, errand: Errand, tools: Tools, now: datetime) -> None:
        try:
            self._finish(errand, WORKS[errand.kind](tools, errand, now), None, now)
        except ErrandError as wrong:
            log.warning("errand %s: %s", errand.id, wrong)
            self._finish(errand, wrong.finish, str(wrong), now)
        except Exception as fault:
            # One that fails must not keep the others back; it comes again after its lease.
            log.warning("errand %s: %s", errand.id, type(fault).__name__)
            if errand.attempts >= MOST_ATTEMPTS:
                self._finish(errand, _nothing, type(fault).__name__, now)

    def _finish(self, errand: Errand, finish: Finish, error: str | None, now: datetime) -> None:
        with self._store.writing() as session:
            row = session.get_one(Errand, key(errand), with_for_update=True)
            if row.done_at is not None:
                return
            owe(session, row.workspace_id, finish(session))
            row.done_at, row.error = now, error
            session.add(row)


def _no_bell() -> None:
    """Nobody waits."""


def _nothing(_session: object) -> list[Any]:
    return []
