"""Every book's word on one planned outing, and the first date on which there may be one."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from dateutil.relativedelta import relativedelta

from core.rest.bounds import Bound, bounds, resting
from core.rest.owed import Owed
from core.rest.values import NO_PITCH_LIMIT, Ask, RestError
from core.rest.views import View
from core.rulebooks import RuleBookError

NINE_INNINGS = 27
"""Outs: what one outing can need of a season's total."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """Everything that limits one planned outing, over all books."""

    owed: tuple[Owed, ...]
    bounds: tuple[Bound, ...]

    @property
    def barred(self) -> bool:
        """Whether not one pitch is allowed."""
        return bool(self.owed) or any(bound.bars for bound in self.bounds)

    @property
    def pitches(self) -> int:
        """The most pitches allowed; NO_PITCH_LIMIT where no cap counts pitches."""
        rooms = [bound.room for bound in self.bounds if bound.of == "pitches"]
        return 0 if self.barred else min(rooms, default=NO_PITCH_LIMIT)

    @property
    def outs(self) -> int | None:
        """The most outs allowed; None where no cap on outs or innings can touch one outing."""
        rooms = [bound.room for bound in self.bounds if touches_outs(bound)]
        return (0 if self.barred else min(rooms)) if rooms else None

    @property
    def limited(self) -> bool:
        """Whether any cap counts pitches."""
        return self.barred or any(bound.of == "pitches" for bound in self.bounds)

    @property
    def may_catch(self) -> bool:
        """Whether no cap bars the plate."""
        return all(bound.room > 0 for bound in self.bounds if bound.of == "plate")


def touches_outs(bound: Bound) -> bool:
    """Whether a cap on outs can end one outing: a season's or a year's total only near its end."""
    long = bound.cap.window.months is not None or bound.cap.window.span == "season"
    return bound.of == "outs" and (not long or bound.room < NINE_INNINGS)


def judge(looks: Sequence[View], ask: Ask) -> Verdict:
    """What limits a planned outing. Raises RuleBookError when a book does not cover the date."""
    return Verdict(
        tuple(owed for view in looks for owed in resting(view, ask)),
        tuple(bound for view in looks for bound in bounds(view, ask)),
    )


def is_barred(looks: Sequence[View], ask: Ask) -> bool:
    """Whether not one pitch is allowed, found with as little work as it takes.

    Raises as `judge` does.
    """
    for view in looks:
        view.rules(ask.on)
    return any(
        any(bound.bars for bound in bounds(view, ask)) or any(True for _ in resting(view, ask))
        for view in looks
    )


def next_date(looks: Sequence[View], ask: Ask, verdict: Verdict) -> date | None:
    """The first date from the one asked about with at least one pitch, within a year."""
    end = ask.on + relativedelta(years=1)
    day = ask.on
    while verdict.barred:
        if any(bound.bars and bound.cap.window.span == "season" for bound in verdict.bounds):
            return None
        day = max((owed.until for owed in verdict.owed), default=day + timedelta(days=1))
        if day > end:
            return None
        try:
            verdict = judge(looks, replace(ask, on=day, game=None))
        except (RuleBookError, RestError):
            return None
    return day
