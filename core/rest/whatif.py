"""What an outing would cost, asked before it is thrown."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from core.rest.answering import answer
from core.rest.judging import judge
from core.rest.values import Ask, Phase, RestAnswer, RestError, Thrower, Thrown
from core.rest.views import View, views
from core.rulebooks import RuleBook


@dataclass(frozen=True, slots=True)
class WhatIf:
    """What follows if he throws so many on a date.

    `allowed` says whether every book allows that many, `next_eligible` is the first date after
    that day, `after` the whole answer for the day after.
    """

    on: date
    pitches: int
    allowed: bool
    days: int
    next_eligible: date | None
    after: RestAnswer


def what_if(
    books: Sequence[RuleBook],
    thrower: Thrower,
    outings: Sequence[Thrown],
    outing: Thrown,
    *,
    phase: Phase = "regular",
) -> WhatIf:
    """What recording this outing would lead to. Raises as `answer` does, and for no count."""
    if outing.pitches is None:
        raise RestError("a what-if needs a number of pitches: give one")
    looks = views(books, thrower, outings, phase)
    ask = Ask(outing.on, outing.game, outing.tournament, outing.series, outing.kind)
    room = judge(looks, ask).pitches
    after = answer(books, thrower, [*outings, outing], outing.on + timedelta(1), phase=phase)
    days = next((owed.days for owed in after.rest if owed.on == outing.on), 0)
    return WhatIf(
        outing.on, outing.pitches, outing.pitches <= room, days, after.next_eligible, after
    )


def most_leaving(
    books: Sequence[RuleBook],
    thrower: Thrower,
    outings: Sequence[Thrown],
    on: date,
    free_on: date,
    *,
    phase: Phase = "regular",
    game: int | None = None,
) -> int | None:
    """The most pitches on a date that leave him eligible on a later one.

    0 when he may not throw on the first date but may on the second; None when he may not on the
    second even without throwing. Raises RestError unless the second date is the later one.
    """
    if free_on <= on:
        raise RestError(f"{free_on} is not after {on}: give a later date to be eligible on")
    looks = views(books, thrower, outings, phase)
    if judge(looks, Ask(free_on)).barred:
        return None
    low, high = 0, judge(looks, Ask(on, game)).pitches
    while low < high:
        middle = (low + high + 1) // 2
        if _leaves(looks, Thrown(on, pitches=middle, game=game), free_on):
            low = middle
        else:
            high = middle - 1
    return low


def _leaves(looks: Sequence[View], outing: Thrown, free_on: date) -> bool:
    return not judge([view.plus(outing) for view in looks], Ask(free_on)).barred
