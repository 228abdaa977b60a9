"""The counts at which one more pitch costs more, and outings that are only planned."""

from collections.abc import Iterator, Sequence
from datetime import date

from core.rest.judging import Verdict
from core.rest.values import NO_PITCH_LIMIT, Ask, Thrown
from core.rest.views import View
from core.rest.windows import tally
from core.rulebooks import Measure

PER_INNING_TO_14 = 19
PER_INNING_ABOVE = 16
"""Pitches that an inning is expected to take, at 14 and under and above: rounded from the 19.5
(ages 9-12), 19.2 (13-14) and 14.9-16.5 (high school and up) of Axe 2001, Sports Med Arthrosc
Rev 9:24-34."""


def per_inning(age: int) -> int:
    """The pitches that an inning is expected to take in a team of that oldest age."""
    return PER_INNING_TO_14 if age <= 14 else PER_INNING_ABOVE


def planned(on: date, pitches: int, *, inning: int, game: int | None = None) -> Thrown:
    """An outing that is only planned; its outs are what so many pitches are expected to bring.

    `inning` is the expected pitches of an inning; outs are rounded up.
    """
    return Thrown(on, pitches=pitches, outs=-(-3 * pitches // inning), game=game)


def room_in_pitches(verdict: Verdict, inning: int) -> int:
    """The most pitches allowed, with a limit on outs turned into expected pitches."""
    outs = verdict.outs
    by_outs = NO_PITCH_LIMIT if outs is None else outs * inning // 3
    if verdict.barred:
        return 0
    return min(verdict.pitches, max(by_outs, 1))


def break_points(looks: Sequence[View], ask: Ask, most: int, inning: int) -> list[int]:
    """The counts from 1 to `most` above which an outing would owe more or shut something else.

    They end with `most`. Sums that began earlier are taken into account.
    """
    found = {most}
    for view in looks:
        found.update(int(count) for count in _steps(view, ask, inning))
    return sorted(count for count in found if 0 < count <= most)


def _steps(view: View, ask: Ask, inning: int) -> Iterator[float]:
    rules = view.rules(ask.on)
    for table in rules.tables:
        ends = [row.to for row in table.rule.rows if row.to is not None]
        yield from _left(view, ask, table.rule, ends, inning)
    for cap in rules.caps:
        for condition in cap.when:
            yield from _left(view, ask, condition, [condition.at_least - 1], inning)
        if not cap.when and cap.window.days:
            yield from _left(view, ask, cap, [cap.max], inning)


def _left(
    view: View, ask: Ask, measure: Measure, ends: Sequence[int], inning: int
) -> Iterator[float]:
    """How many more pitches reach each end, from where the measure stands; and a fresh one."""
    each = {"pitches": 1.0, "outs": inning / 3, "innings-begun": float(inning)}.get(measure.unit)
    if each is None:
        return
    found = tally(view, measure, ask)
    used = found.value if found is not None else 0
    yield from ((end - used) * each for end in ends)
    yield from (end * each for end in ends if used)
