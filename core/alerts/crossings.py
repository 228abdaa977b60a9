"""What stands on a day: a pure function of the thresholds, the record and the day."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import partial

from core.alerts import days, single, windows
from core.alerts.found import Found
from core.alerts.record import Record
from core.alerts.thresholds import Key, Limits

#: How far back a run of days is followed, and how old a day may be that is told still (days).
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
    Key.SPIN_WEEK: windows.spin_week,
    Key.INNINGS: windows.innings,
    Key.ALL_INNINGS: windows.all_innings,
}
#: What one outing crosses: an alert for each outing.
SINGLE = {
    Key.GAME_BREAKING: single.game_breaking,
    Key.SPIN_REPS: single.spin_reps,
    Key.SPIN_EFFORT: single.spin_effort,
}
#: What a day or a run of days crosses: an alert for each.
OF_DAYS: Mapping[Key, Callable[[Record, Limits, date], Iterator[days.OfDay]]] = {
    Key.DAYS_IN_ROW: days.days_in_row,
    Key.GAMES_A_DAY: days.games_a_day,
    Key.CATCHING: days.catching,
    Key.TWO_TEAMS: days.two_teams,
}


@dataclass(frozen=True, slots=True)
class Crossing:
    """One threshold that is crossed, with the figures and the outings behind it.

    `episode` tells this crossing from an earlier one of the same threshold: the outing, the
    day, or the day since which it has stood without a break. What happened on one day stays
    what it was; one that is `old` is kept where it is known, and not raised any more.
    """

    key: Key
    episode: str
    found: Found
    old: bool = False


def crossings(record: Record, limits: Limits, on: date) -> tuple[Crossing, ...]:
    """Everything that stands on a day, in the order of the thresholds; no clock, no memory."""
    found = [*_of_outings(record, limits, on), *_of_days(record, limits, on)]
    for key, of_day in WINDOWS.items():
        crossed = of_day(record, limits, on)
        if crossed is not None:
            since = _since(partial(of_day, record, limits), on)
            found.append(Crossing(key, since.isoformat(), crossed))
    return tuple(found)


def _of_outings(record: Record, limits: Limits, on: date) -> Iterator[Crossing]:
    for key, of_outing in SINGLE.items():
        for outing in record.outings:
            crossed = of_outing(outing, limits) if outing.on <= on else None
            if crossed is not None:
                yield Crossing(key, f"outing/{outing.id}", crossed, _is_old(outing.on, on))


def _of_days(record: Record, limits: Limits, on: date) -> Iterator[Crossing]:
    for key, of_days in OF_DAYS.items():
        for day, episode, crossed in of_days(record, limits, on):
            yield Crossing(key, episode, crossed, _is_old(day, on))


def _is_old(day: date, on: date) -> bool:
    return on - day >= timedelta(days=RECENT)


def _since(of_day: Callable[[date], Found | None], on: date) -> date:
    """The first day of the run of days that ends on `on`."""
    since = on
    for _ in range(LONGEST_RUN):
        if of_day(since - timedelta(days=1)) is None:
            break
        since -= timedelta(days=1)
    return since
