"""The database engine and the two kinds of session that the rest of the code opens."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Lock
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, make_url
from sqlalchemy.exc import ArgumentError, NoSuchModuleError, OperationalError
from sqlalchemy.pool import ConnectionPoolEntry
from sqlmodel import Session

#: Slack waits 3 s for an acknowledgement: a writer that cannot have the lock by then must
#: fail, so that Slack sends the event again.
BUSY_TIMEOUT_MS = 1_100
#: SQLite lets one writer in at a time, and lets the others poll for it. Writers of one process
#: wait for each other here instead, in turn, for so long (s).
TURN_TIMEOUT = 1.7


class StoreError(Exception):
    """The database cannot be used; the message says what to change."""


class Store:
    """A database: `with store.writing() as session` is one transaction."""

    def __init__(self, url: str) -> None:
        """Open the database at an SQLAlchemy URL.

        Raises `StoreError` when the URL names no database that this program can use.
        """
        #: What every session carries (SQLAlchemy's `Session.info`).
        self.info: dict[str, Any] = {}
        try:
            parsed = make_url(url)
            self.engine = _engine(parsed.render_as_string(hide_password=False))
        except (ArgumentError, NoSuchModuleError, ModuleNotFoundError) as wrong:
            raise StoreError(
                "SPINKEEPER_DATABASE_URL is no address of a database. Use "
                "sqlite:////full/path/file.sqlite3 or postgresql+psycopg://user@host/name."
            ) from wrong
        self._writer = Lock() if parsed.get_backend_name() == "sqlite" else None

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A transaction that may write: committed at the end, rolled back on an exception."""
        engine = self.engine.execution_options(spinkeeper_writing=True)
        with (
            self._turn(),
            Session(engine, expire_on_commit=False, info=self.info) as session,
            session.begin(),
        ):
            yield session

    @contextmanager
    def _turn(self) -> Iterator[None]:
        if self._writer is None:
            yield
            return
        if not self._writer.acquire(timeout=TURN_TIMEOUT):
            locked = sqlite3.OperationalError("database is locked")
            raise OperationalError("BEGIN IMMEDIATE", None, locked)
        try:
            yield
        finally:
            self._writer.release()

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A session that only reads: it takes no write lock and never commits."""
        with Session(self.engine, info=self.info) as session:
            yield session

    def close(self) -> None:
        """Give back every connection."""
        self.engine.dispose()


def _engine(url: str) -> Engine:
    # An error must not carry a typed line, a name or a pain report into the logs.
    if make_url(url).get_backend_name() != "sqlite":
        return create_engine(url, pool_pre_ping=True, hide_parameters=True)
    engine = create_engine(url, hide_parameters=True)
    event.listen(engine, "connect", _prepare_sqlite)
    event.listen(engine, "begin", _begin_sqlite)
    return engine


def _prepare_sqlite(connection: sqlite3.Connection, _entry: ConnectionPoolEntry) -> None:
    # The driver's own BEGIN comes too late to take the write lock; ours is in _begin_sqlite.
    connection.isolation_level = None
    for pragma in (
        f"busy_timeout = {BUSY_TIMEOUT_MS}",
        "journal_mode = WAL",
        "synchronous = FULL",  # an acknowledged line survives a power cut
        "foreign_keys = ON",
    ):
        connection.execute(f"PRAGMA {pragma}")


def _begin_sqlite(connection: Connection) -> None:
    # A writer takes the lock at once: a read that turns into a write can fail half-way.
    writing = connection.get_execution_options().get("spinkeeper_writing", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writing else "BEGIN")
