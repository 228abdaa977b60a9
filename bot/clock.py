"""The one place that reads the time."""

from datetime import UTC, datetime, timedelta
from threading import Lock
from typing import Protocol


class Clock(Protocol):
    """Gives the time to everything that needs it."""

    def now(self) -> datetime:
        """The present moment, UTC."""
        ...


class SystemClock:
    """The machine's clock."""

    def now(self) -> datetime:
        """The present moment, UTC."""
        return datetime.now(UTC)


class SimulatedClock:
    """A clock that is set by hand: the local workspace and the tests go by it."""

    def __init__(self, start: datetime) -> None:
        """Start at an aware moment."""
        self._now = start.astimezone(UTC)
        self._lock = Lock()

    def now(self) -> datetime:
        """The simulated moment, UTC."""
        with self._lock:
            return self._now

    def set(self, moment: datetime) -> None:
        """Go to an aware moment; a moment in the simulated past is refused (`ValueError`)."""
        with self._lock:
            if moment < self._now:
                raise ValueError("simulated time only goes forward")
            self._now = moment.astimezone(UTC)

    def advance(self, span: timedelta) -> datetime:
        """Let `span` go by and give the new moment."""
        with self._lock:
            self._now += span
            return self._now
