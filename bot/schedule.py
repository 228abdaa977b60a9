"""APScheduler: one interval job that calls tick(now)."""

import logging
from collections.abc import Callable
from datetime import datetime, timedelta

from apscheduler.schedulers.background import BackgroundScheduler

from bot.clock import Clock, SystemClock

#: How often the outbox and whatever else is due are looked at, seconds.
EVERY = 1.0
#: A tick waits so long for the lines that come right behind the one that woke it: it takes
#: the same processor and the same write lock as they do.
SOON = timedelta(milliseconds=50)
#: From one tick to the next that is woken: while lines come one upon another, several are one.
APART = timedelta(milliseconds=250)

Tick = Callable[[datetime], object]


class Schedule:
    """Calls tick(now) every second, and soon after something was committed."""

    def __init__(self, clock: Clock, tick: Tick) -> None:
        """Use the clock's time; runs that were missed are made up by one."""
        self._clock, self._tick = clock, tick
        self._last_run: datetime | None = None
        self._woken = False
        self._next = _now()
        # That a tick takes longer than a second is no news: what it left is done by the next.
        logging.getLogger("apscheduler.scheduler").setLevel(logging.ERROR)
        self._scheduler = BackgroundScheduler(timezone="UTC")
        self._job = self._scheduler.add_job(
            self._run,
            "interval",
            seconds=EVERY,
            coalesce=True,
            max_instances=1,
            misfire_grace_time=None,
            id="tick",
        )

    def start(self) -> None:
        """Begin to tick."""
        self._scheduler.start()

    def wake(self) -> None:
        """Tick soon: a message was owed. A tick that is to come already will see it."""
        if self._scheduler.running and not self._woken:
            self._woken = True
            self._job.modify(next_run_time=max(_now() + SOON, self._next))

    def last_run(self) -> datetime | None:
        """When the last tick was finished (UTC by the bot's clock); none before the first."""
        return self._last_run

    def stop(self) -> None:
        """Finish the tick that runs and start no other."""
        if self._scheduler.running:
            self._scheduler.shutdown(wait=True)

    def _run(self) -> None:
        self._woken = False  # first: what is owed from here on may be too late for this tick
        now = self._clock.now()
        try:
            self._tick(now)
        finally:
            self._next = _now() + APART
        self._last_run = now


def _now() -> datetime:
    """The machine's time: the scheduler goes by it even where the bot's time is simulated."""
    return SystemClock().now()
