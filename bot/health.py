"""What the health page tells: the database, the install, the oldest wait, the last tick."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy.exc import SQLAlchemyError
from sqlmodel import col, func, select

from bot.access import Access
from bot.clock import Clock
from core.model import MessageState, OutboxMessage


@dataclass(frozen=True, slots=True)
class Report:
    """How the bot is; `outbox_age` is in seconds, 0 when nothing that is due waits."""

    database: bool
    #: Whether the app is installed in a workspace that is served; none without a database.
    installed: bool | None
    outbox_age: float | None
    last_tick: datetime | None

    def as_json(self) -> dict[str, object]:
        """The page; it names no person and no message."""
        return {
            "database": self.database,
            "installed": self.installed,
            "outbox_age_seconds": self.outbox_age,
            "last_tick": None if self.last_tick is None else self.last_tick.isoformat(),
        }


@dataclass(frozen=True, slots=True)
class Health:
    """Looks at one running bot; `last_tick` gives when the schedule ran last (UTC)."""

    access: Access
    clock: Clock
    last_tick: Callable[[], datetime | None]

    def report(self) -> Report:
        """How the bot is now."""
        try:
            installed, first = bool(self.access.open()), self._oldest_due()
        except SQLAlchemyError:
            return Report(False, None, None, self.last_tick())
        age = 0.0 if first is None else (self.clock.now() - first).total_seconds()
        return Report(True, installed, age, self.last_tick())

    def _oldest_due(self) -> datetime | None:
        waiting = [MessageState.QUEUED, MessageState.SENDING]
        oldest = select(func.min(OutboxMessage.not_before)).where(
            col(OutboxMessage.state).in_(waiting),
            col(OutboxMessage.not_before) <= self.clock.now(),
        )
        with self.access.store.reading() as session:
            first: datetime | None = session.exec(oldest).one()
        return first
