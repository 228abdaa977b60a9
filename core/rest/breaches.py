"""What in the record went over a rule: facts about what was thrown, not about what is planned."""

from collections.abc import Iterator, Sequence
from datetime import date

from core.rest.bounds import Bound
from core.rest.judging import Verdict, judge
from core.rest.reasons import cap_reason, rest_reason
from core.rest.record import Record
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
        looks = [v for v in views(books, thrower, before, phase) if _pitched(v, outing)]
        ask = Ask(on, outing.game, outing.tournament, outing.series, outing.kind)
        found.extend(_broken(judge(looks, ask), outing))
        before.append(outing)
    return tuple(dict.fromkeys(found))


def _pitched(view: View, outing: Thrown) -> bool:
    """Whether the book counts this outing as pitching at all."""
    mine = (Record(view.book, [outing], kinds) for kinds in view.records)
    return any(counted.pitched for record in mine for counted in record.outings)


def _broken(verdict: Verdict, outing: Thrown) -> Iterator[Reason]:
    yield from (rest_reason(owed, binds=True) for owed in verdict.owed)
    yield from (cap_reason(b, binds=True) for b in verdict.bounds if _over(b, outing))


def _over(bound: Bound, outing: Thrown) -> bool:
    if bound.of == "mound":
        return bound.room < 1
    if bound.of == "plate":
        return False
    if bound.of == "outs":
        return (outing.outs or 0) > bound.room or bound.bars
    pitches = outing.pitches or 0
    begun = outing.last_batter_from
    finished = bound.cap.finish_batter and begun is not None and begun < bound.room
    return bound.bars or (pitches > bound.room and not finished)
