"""The answer: what every book together allows on a date, from when on, and why."""

from collections.abc import Iterator, Sequence
from datetime import date

from dateutil.relativedelta import relativedelta

from core.rest.bounds import Bound, bound_by
from core.rest.judging import Verdict, judge, next_date, touches_outs
from core.rest.owed import Owed, owed_by
from core.rest.reasons import cap_reason, note, pitches_on, rest_reason
from core.rest.values import (
    Ask,
    Phase,
    Reason,
    RestAnswer,
    RestError,
    RestOwed,
    Thrower,
    Thrown,
)
from core.rest.views import View, check_kind, views
from core.rulebooks import RuleBook


def answer(
    books: Sequence[RuleBook],
    thrower: Thrower,
    outings: Sequence[Thrown],
    on: date,
    *,
    phase: Phase = "regular",
    kind: str = "game",
    game: int | None = None,
    tournament: str | None = None,
    series: str | None = None,
) -> RestAnswer:
    """What every book together allows on a date, given the outings recorded.

    Outings after that date count only for the dates that follow them. `kind`, `game`,
    `tournament` and `series` say what is planned, for books with limits on these. Raises
    RuleBookError when a book does not cover the pitcher or the date, RestError when the
    question makes no sense.
    """
    looks = views(books, thrower, outings, phase)
    check_kind(kind)
    return answer_from(looks, Ask(on, game, tournament, series, kind))


def answer_from(looks: Sequence[View], ask: Ask, *, brief: bool = False) -> RestAnswer:
    """The answer of views that are made already; a `brief` one lists no rest of past outings.

    Raises as `answer` does.
    """
    verdict = judge(looks, ask)
    following = next_date(looks, ask, verdict)
    return RestAnswer(
        eligible=verdict.pitches > 0,
        pitches_allowed=verdict.pitches,
        outs_allowed=verdict.outs,
        next_eligible=following,
        rest=() if brief else tuple(_all_rest(looks, ask)),
        why=tuple(_why(looks, ask, verdict, following)),
        pitches_limited=verdict.limited,
        may_catch=verdict.may_catch,
    )


def _all_rest(looks: Sequence[View], ask: Ask) -> Iterator[RestOwed]:
    """Each day's rest by the strictest book, in order of days, with the reason while it runs."""
    days = sorted({day for view in looks for day in view.days_between(date.min, date.max)})
    for day in days:
        owed = _strictest(looks, day, ask.on, ask.kind) or _strictest(looks, day, ask.on)
        if owed is not None:
            told = owed.until > ask.on or day == days[-1]
            reason = rest_reason(owed, binds=False) if told else None
            yield RestOwed(day, pitches_on(owed), owed.row.days, reason)


def _strictest(looks: Sequence[View], day: date, on: date, kind: str | None = None) -> Owed | None:
    found = [owed for view in looks if (owed := owed_by(view, day, on, kind)) is not None]
    return max(found, key=lambda owed: owed.row.days, default=None)


def _why(
    looks: Sequence[View], ask: Ask, verdict: Verdict, following: date | None
) -> Iterator[Reason]:
    """First what binds, then what was noted on the way."""
    yield from (rest_reason(owed, binds=True) for owed in verdict.owed)
    yield from (cap_reason(b, binds=True) for b in verdict.bounds if _decides(b, verdict))
    for view in looks:
        yield from _notes(view, ask, verdict)
    if following is None:
        days = f"from {ask.on} to {ask.on + relativedelta(years=1)}"
        yield note(looks[0], "no-date", f"no date {days} on which a pitch is allowed is known")


def _decides(bound: Bound, verdict: Verdict) -> bool:
    """Whether a cap bars the outing, or leaves the least room of those that limit it."""
    if bound.of == "plate" or (bound.of == "outs" and not touches_outs(bound)):
        return False
    if verdict.barred:
        return bound.bars
    return bound.room == {"pitches": verdict.pitches, "outs": verdict.outs}.get(bound.of)


def _notes(view: View, ask: Ask, verdict: Verdict) -> Iterator[Reason]:
    """The last outing's rest when it is over, guesses that were made, and an old edition."""
    past = view.days_between(date.min, ask.on)
    owing = {owed.day for owed in verdict.owed if owed.view is view}
    for day in past[-1:]:
        owed = owed_by(view, day, ask.on, ask.kind) or owed_by(view, day, ask.on)
        if day not in owing and owed is not None:
            yield rest_reason(owed, binds=False)
    for bound in verdict.bounds:
        guessed = bound.tally.uncounted and bound.cap.uncounted == "most"
        if bound.view is not view or _decides(bound, verdict):
            continue
        if guessed or (bound.of == "plate" and not bound.room):
            yield cap_reason(bound, binds=False)
    yield from _advice(view, ask)
    newer = view.book.superseded
    if newer is not None and ask.on >= newer.on:
        yield note(view, "edition", f"{view.book.edition}: superseded on {newer.on} by {newer.by}")
    if not view.counts_at_all(ask.kind):
        says = f"{ask.kind} is not among the outings that this rule book counts"
        yield note(view, "not-counted", says)
    elif all(bound.of != "pitches" for bound in verdict.bounds if bound.view is view):
        yield note(view, "no-pitch-limit", "this rule book limits no pitches: see the outs")


def _advice(view: View, ask: Ask) -> Iterator[Reason]:
    """What the outing would go against, without being forbidden."""
    rules = view.rules(ask.on)
    for cap in rules.caps:
        bound = bound_by(view, rules, cap, ask) if cap.advice else None
        if bound is not None and not bound.room:
            yield cap_reason(bound, binds=False)


def required(
    books: Sequence[RuleBook],
    thrower: Thrower,
    outings: Sequence[Thrown],
    on: date | None = None,
    *,
    phase: Phase = "regular",
) -> RestOwed:
    """The rest that one day's outings owe by the strictest book, with its reason.

    `on` is the day, by default that of the last outing; earlier outings are given where a book
    sums over several days. A day on which nothing counts owes 0, with no reason.
    Raises as `answer` does, and RestError without any outing.
    """
    if not outings:
        raise RestError("no outing is given: give at least the day's own")
    day = on or max(outing.on for outing in outings)
    looks = views(books, thrower, outings, phase)
    for view in looks:
        view.rules(day)
    owed = _strictest(looks, day, day)
    if owed is None:
        return RestOwed(day, None, 0)
    return RestOwed(day, pitches_on(owed), owed.row.days, rest_reason(owed, binds=True))
