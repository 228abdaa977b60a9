"""What stands on a day: a pure function of the thresholds, the record and the day."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import partial

from core.alerts import single, windows
from core.alerts.found import Found
from core.alerts.record import Record
from core.alerts.thresholds import Key, Limits

#: How far back a run of days is followed, and how old a game may be that still stands.
LONGEST_RUN, RECENT = 60, 30

#: What moves with the calendar or with every outing: one alert at a time.
WINDOWS: Mapping[Key, Callable[[Record, Limits, date], Found | None]] = {
    Key.MIX: windows.mix,
    Key.LOW_MIX: windows.low_mix,
    Key.CHANGEUP: windows.changeup,
    Key.PAIN_REPORTS: windows.pain_reports,
    Key.TIRED_REPORTS: windows.tired_reports,
    Key.WEEK_PITCHES: windows.week_pitches,
    Key.MORE_THROWS: windows.more_throws,
    Key.SILENT_DAYS: windows.silent_days,
    Key.MONTHS: windows.months,
}
#: What one outing crosses: an alert for each outing.
SINGLE = {
    Key.GAME_BREAKING: single.game_breaking,
    Key.SPIN_REPS: single.spin_reps,
    Key.SPIN_EFFORT: single.spin_effort,
}


@dataclass(frozen=True, slots=True)
class Crossing:
    """One threshold that is crossed, with the figures and the outings behind it.

    `episode` tells this crossing from an earlier one of the same threshold: the outing, or
    the day since which it has stood without a break.
    """

    key: Key
    episode: str
    found: Found


def crossings(record: Record, limits: Limits, on: date) -> tuple[Crossing, ...]:
    """Everything that stands on a day, in the order of the thresholds; no clock, no memory."""
    found: list[Crossing] = []
    for key, of_outing in SINGLE.items():
        for outing in record.within(on, RECENT):
            crossed = of_outing(outing, limits)
            if crossed is not None:
                found.append(Crossing(key, f"outing/{outing.id}", crossed))
    for key, of_day in WINDOWS.items():
        crossed = of_day(record, limits, on)
        if crossed is not None:
            since = _since(partial(of_day, record, limits), on)
            found.append(Crossing(key, since.isoformat(), crossed))
    return tuple(found)


def _since(of_day: Callable[[date], Found | None], on: date) -> date:
    """The first day of the run of days that ends on `on`."""
    since = on
    for _ in range(LONGEST_RUN):
        if of_day(since - timedelta(days=1)) is None:
            break
        since -= timedelta(days=1)
    return since
