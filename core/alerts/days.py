"""Thresholds of single days and runs of days: each gives every crossing with its episode."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date, timedelta

from core.alerts.found import Found
from core.alerts.record import Pitched, Record
from core.alerts.thresholds import Key, Limits

#: From the mound; of unknown kind counts until it is known.
MOUND = frozenset({"game", "bullpen", "live", None})
DAY = timedelta(days=1)
#: The day that a crossing belongs to, its episode and what it was measured at.
OfDay = tuple[date, str, Found]


def days_in_row(record: Record, limits: Limits, on: date) -> Iterator[OfDay]:
    """Every run of days in a row with pitches that is long enough; one crossing for each run."""
    limit = limits.get(Key.DAYS_IN_ROW)
    by_day = _by_day(record, on)
    if limit is None:
        return
    for first in sorted(day for day in by_day if day - DAY not in by_day):
        last = first
        while last + DAY in by_day:
            last += DAY
        length = (last - first).days + 1
        if length >= limit:
            run = [one.id for n in range(length) for one in by_day[first + n * DAY]]
            yield last, f"run/{first}", Found(length, limit, tuple(run))


def _by_day(record: Record, on: date) -> dict[date, list[Pitched]]:
    """The outings with pitches up to a day; a day on which he only caught is none."""
    found: dict[date, list[Pitched]] = defaultdict(list)
    for one in record.outings:
        if one.kind in MOUND and one.on <= on and not _only_caught(one):
            found[one.on].append(one)
    return found


def _only_caught(one: Pitched) -> bool:
    counts = (one.pitches, one.outs, one.breaking)
    return one.caught_outs is not None and all(count is None for count in counts)


def games_a_day(record: Record, limits: Limits, on: date) -> Iterator[OfDay]:
    """Several games as pitcher on one day."""
    limit = limits.get(Key.GAMES_A_DAY)
    for day, outings in _by_day(record, on).items():
        games = [one.id for one in outings if one.kind == "game"]
        if limit is not None and len(games) >= limit:
            yield day, f"day/{day}", Found(len(games), limit, tuple(games))


def catching(record: Record, limits: Limits, on: date) -> Iterator[OfDay]:
    """Outs caught on a day with a game as pitcher."""
    limit = limits.get(Key.CATCHING)
    for day, pitched in _by_day(record, on).items():
        of_day = [one for one in record.outings if one.on == day]
        caught = sum(one.caught_outs or 0 for one in of_day)
        games = any(one.kind == "game" for one in pitched)
        if limit is not None and games and caught >= limit:
            yield day, f"day/{day}", Found(caught, limit, tuple(one.id for one in of_day))


def two_teams(record: Record, limits: Limits, on: date) -> Iterator[OfDay]:
    """Games for two teams whose days clash; a game of no known team clashes with none."""
    limit = limits.get(Key.TWO_TEAMS)
    games = [one for one in record.games(on) if one.team is not None and not _only_caught(one)]
    if limit is None:
        return
    for day in dict.fromkeys(one.on for one in games):
        here = [one for one in games if one.on == day]
        near = [one for one in games if timedelta(0) <= day - one.on < timedelta(days=limit)]
        clashing = [one for one in near if any(one.team != other.team for other in here)]
        if clashing:
            apart = max((day - one.on).days for one in clashing) + 1
            ids = tuple(dict.fromkeys(one.id for one in [*clashing, *here]))
            yield day, f"day/{day}", Found(apart, limit, ids)
