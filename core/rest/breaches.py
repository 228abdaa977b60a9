"""What in the record went over a rule: facts about what was thrown, not about what is planned."""

from collections.abc import Iterator, Sequence
from datetime import date

from core.rest.bounds import Bound
from core.rest.judging import judge
from core.rest.reasons import cap_reason, rest_reason
from core.rest.record import Counted, counted
from core.rest.values import Ask, Phase, Reason, Thrower, Thrown
from core.rest.views import View, views
from core.rulebooks import RuleBook


def breaches(
    books: Sequence[RuleBook],
    thrower: Thrower,
    outings: Sequence[Thrown],
    on: date,
    *,
    phase: Phase = "regular",
) -> tuple[Reason, ...]:
    """The rules that the outings of a day went over, in order; none where all was allowed.

    Outings of a day are taken by game number, else in the order given. A batter begun below a
    maximum may be finished where the book says so; where nobody noted when he came up, a count
    over the maximum is named. Raises as `answer` does.
    """
    before = [outing for outing in outings if outing.on < on]
    today = sorted((o for o in outings if o.on == on), key=lambda outing: outing.game or 0)
    found: list[Reason] = []
    for outing in today:
        for view in views(books, thrower, before, phase):
            found.extend(_broken(view, outing))
        before.append(outing)
    return tuple(dict.fromkeys(found))


def _broken(view: View, outing: Thrown) -> Iterator[Reason]:
    """The rules of one book that an outing went over, on the day and as the book counts it."""
    its = counted(view.book.counting, outing)
    if not its.pitched or not view.counts_at_all(outing.kind):
        return
    ask = Ask(its.day, its.game, its.tournament, its.series, outing.kind)
    verdict = judge([view], ask)
    yield from (rest_reason(owed, binds=True) for owed in verdict.owed)
    walks = (its.pitches or 0) - (outing.pitches or 0)
    begun = None if outing.last_batter_from is None else outing.last_batter_from + walks
    yield from (cap_reason(b, binds=True) for b in verdict.bounds if _over(b, its, begun))


def _over(bound: Bound, its: Counted, begun: int | None) -> bool:
    """Whether the outing passed a cap; `begun` is the count when its last batter came up."""
    if bound.of == "mound":
        return bound.room < 1
    if bound.of == "plate":
        return False
    if bound.of == "outs":
        innings = bound.cap.unit == "innings-begun"
        outs = (its.innings_begun or 0) * 3 if innings else its.outs or 0
        return outs > bound.room or bound.bars
    finished = bound.cap.finish_batter and begun is not None and begun < bound.room
    return bound.bars or ((its.pitches or 0) > bound.room and not finished)
