"""Reads the teams' calendar addresses once a day; any number of processes may try at once."""

import logging
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from datetime import datetime, timedelta
from typing import Any, cast
from zoneinfo import ZoneInfo

from sqlalchemy import CursorResult, update
from sqlmodel import Session, col, select

from bot.outbox.owe import owe
from core.calendar.bring import bring_up
from core.calendar.ics import CalendarError, Found, read_ics
from core.leaving import is_served
from core.ledger.notices import Notice, NoticeKind
from core.model import CalendarSource, Team, key
from core.store import Store

log = logging.getLogger(__name__)

EVERY = timedelta(days=1)
#: After a failure it is tried again.
AGAIN = timedelta(hours=2)
#: A process that reads a calendar has it for so long; longer than a fetch can take.
LEASE = timedelta(minutes=5)
#: From an address to the file; raises `CalendarError`.
Fetch = Callable[[str], bytes]


class Calendars:
    """The job; it works in a thread of its own, for a slow host must hold up no message."""

    def __init__(self, store: Store, fetch: Fetch) -> None:
        """Read into this database by `fetch`."""
        self._store, self._fetch = store, fetch
        self._thread = ThreadPoolExecutor(1, thread_name_prefix="calendars")
        self._running: Future[None] | None = None

    def run(self, now: datetime) -> None:
        """Begin to read what is due at `now` (UTC), unless a reading still runs."""
        if (self._running is None or self._running.done()) and self._is_due(now):
            self._running = self._thread.submit(self._read_all, now)

    def finish(self) -> None:
        """Wait for the reading that runs."""
        if self._running is not None:
            self._running.result()

    def stop(self) -> None:
        """Begin nothing any more; what runs is left to its time limit."""
        self._thread.shutdown(wait=False, cancel_futures=True)

    def _is_due(self, now: datetime) -> bool:
        with self._store.reading() as session:
            return session.exec(_due(now).limit(1)).first() is not None

    def _read_all(self, now: datetime) -> None:
        with self._store.reading() as session:
            due = [key(source) for source in session.exec(_due(now))]
        for source_id in due:
            if self._claim(source_id, now):
                self._read(source_id, now)

    def _claim(self, source_id: int, now: datetime) -> bool:
        with self._store.writing() as session:
            claimed = session.execute(
                update(CalendarSource)
                .where(col(CalendarSource.id) == source_id, *_is_free(now))
                .values(lease_until=now + LEASE)
            )
        return cast(CursorResult[Any], claimed).rowcount == 1

    def _read(self, source_id: int, now: datetime) -> None:
        with self._store.reading() as session:
            source = session.get_one(CalendarSource, source_id)
            team = session.get_one(Team, source.team_id)
            address, zone = source.address, ZoneInfo(team.time_zone)
        today = now.astimezone(zone).date()
        try:
            found = read_ics(self._fetch(address), zone.key, today)
        except CalendarError as wrong:
            # The address may be a secret: the log has the row and a word.
            log.warning("calendar %s: %s", source_id, wrong.problem)
            self._failed(source_id, wrong.problem, now)
            return
        self._store_found(source_id, found, now)

    def _store_found(self, source_id: int, found: Found, now: datetime) -> None:
        with self._store.writing() as session:
            source = session.get_one(CalendarSource, source_id, with_for_update=True)
            if source.withdrawn_at is not None:
                return
            first = source.read_at is None or source.problem is not None
            team = session.get_one(Team, source.team_id)
            today = now.astimezone(ZoneInfo(team.time_zone)).date()
            bring_up(session, source, found, today, now)
            source.next_at, source.lease_until = now + EVERY, None
            session.add(source)
            if first:
                _tell(session, source, team, now, "read")

    def _failed(self, source_id: int, problem: str, now: datetime) -> None:
        with self._store.writing() as session:
            source = session.get_one(CalendarSource, source_id, with_for_update=True)
            is_news = source.problem is None and source.withdrawn_at is None
            source.problem, source.next_at, source.lease_until = problem, now + AGAIN, None
            session.add(source)
            if is_news:
                _tell(session, source, session.get_one(Team, source.team_id), now, "failed")


def _is_free(now: datetime) -> tuple[Any, ...]:
    return (
        is_served(col(CalendarSource.workspace_id)),
        col(CalendarSource.withdrawn_at).is_(None),
        col(CalendarSource.next_at).is_not(None),
        col(CalendarSource.next_at) <= now,
        col(CalendarSource.lease_until).is_(None) | (col(CalendarSource.lease_until) <= now),
    )


def _due(now: datetime) -> Any:
    return select(CalendarSource).where(*_is_free(now)).order_by(col(CalendarSource.id))


def _tell(session: Session, source: CalendarSource, team: Team, now: datetime, what: str) -> None:
    """Say once in the staff channel that a calendar is read, or no longer can be."""
    notice = Notice(
        slot=f"{NoticeKind.CALENDAR}/{key(source)}/{what}/{now:%Y-%m-%dT%H:%M}",
        kind=NoticeKind.CALENDAR,
        destination=team.staff_channel,
        not_before=now,
        team_id=key(team),
    )
    owe(session, source.workspace_id, [notice])
