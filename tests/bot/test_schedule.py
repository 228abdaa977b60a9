from datetime import UTC, datetime
from threading import Event

from bot.clock import SimulatedClock, SystemClock
from bot.schedule import Schedule


def test_waking_ticks_at_once_with_the_clocks_time() -> None:
    ticked, clock = Event(), SimulatedClock(datetime(2026, 5, 2, 17, 0, tzinfo=UTC))
    seen: list[datetime] = []

    def tick(now: datetime) -> None:
        seen.append(now)
        ticked.set()

    schedule = Schedule(clock, tick)
    schedule.start()

    schedule.wake()

    assert ticked.wait(0.9)  # sooner than the next second's tick
    schedule.stop()
    assert seen[0] == clock.now()


def test_a_tick_that_fails_does_not_end_the_ticking() -> None:
    ticked, failed = Event(), Event()

    def tick(_now: datetime) -> None:
        if not failed.is_set():
            failed.set()
            raise ZeroDivisionError
        ticked.set()

    schedule = Schedule(SystemClock(), tick)
    schedule.start()
    schedule.wake()
    assert failed.wait(5)
    schedule.wake()

    assert ticked.wait(5)
    schedule.stop()


def test_waking_a_schedule_that_does_not_run_is_harmless() -> None:
    Schedule(SystemClock(), lambda now: now).wake()
