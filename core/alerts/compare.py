"""What stands now against what is stored: raised once, taken back, armed again."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from core.alerts.crossings import WINDOWS, Crossing
from core.alerts.thresholds import Key


@dataclass(frozen=True, slots=True)
class Known:
    """A stored alert: its id, threshold, episode, and whether it stands."""

    id: int
    key: Key
    episode: str
    stands: bool


@dataclass(frozen=True, slots=True)
class Changes:
    """What to do: raise new alerts, bring known ones up to date, close those that are gone."""

    raised: tuple[Crossing, ...]
    standing: tuple[tuple[int, Crossing], ...]
    gone: tuple[int, ...]


def compare(known: Iterable[Known], found: Iterable[Crossing]) -> Changes:
    """The changes that lead from the stored alerts of a pitcher to what stands now.

    A threshold over a window has at most one alert at a time, whatever the day its run began;
    one that is gone and comes back on the same outing, day or run is the same alert.
    """
    rows = list(known)
    raised: list[Crossing] = []
    standing: list[tuple[int, Crossing]] = []
    for crossing in found:
        row = _same(rows, crossing)
        if row is None and not crossing.old:
            raised.append(crossing)
        elif row is not None:
            standing.append((row.id, crossing))
    kept = {row_id for row_id, _ in standing}
    gone = tuple(row.id for row in rows if row.stands and row.id not in kept)
    return Changes(tuple(raised), tuple(standing), gone)


def _same(rows: list[Known], crossing: Crossing) -> Known | None:
    of_key = [row for row in rows if row.key is crossing.key]
    if crossing.key in WINDOWS:
        for row in of_key:
            if row.stands:
                return row
    if crossing.key is Key.DAYS_IN_ROW:
        return next((row for row in of_key if _begins_in(row.episode, crossing)), None)
    return next((row for row in of_key if row.episode == crossing.episode), None)


def _begins_in(episode: str, run: Crossing) -> bool:
    """Whether a known run began on a day of this one: a day logged late makes no second alert."""
    began, first = (date.fromisoformat(one.partition("/")[2]) for one in (episode, run.episode))
    return first <= began < first + timedelta(days=int(run.found.value))
