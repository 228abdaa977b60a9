"""The staff sheet: who may throw how much on a day, why not, and what using him costs."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from core.rest.answering import answer
from core.rest.breakpoints import break_points, planned, room_in_pitches
from core.rest.judging import judge, next_date
from core.rest.values import Ask, Phase, Reason, RestAnswer, RestError, Thrower, Thrown
from core.rest.views import View, views
from core.rulebooks import RuleBook, RuleBookError


@dataclass(frozen=True, slots=True)
class Arm:
    """One pitcher of the staff, with the books that bind him and his record."""

    key: str
    books: Sequence[RuleBook]
    thrower: Thrower
    outings: Sequence[Thrown]


@dataclass(frozen=True, slots=True)
class Cost:
    """Up to so many pitches, he is next eligible on that date (None: not within a year)."""

    pitches: int
    next_eligible: date | None


@dataclass(frozen=True, slots=True)
class StaffLine:
    """One pitcher on one day; `answer` is None, and `error` says why, where no book answers."""

    key: str
    on: date
    answer: RestAnswer | None
    costs: tuple[Cost, ...] = ()
    error: str = ""

    @property
    def why_not(self) -> tuple[Reason, ...]:
        """The rules that bar him, none where he may throw."""
        barred = self.answer is not None and not self.answer.eligible
        return tuple(r for r in self.answer.why if r.binds) if self.answer and barred else ()


def staff_sheet(
    staff: Sequence[Arm], days: Sequence[date], *, inning: int, phase: Phase = "regular"
) -> tuple[StaffLine, ...]:
    """Every pitcher on every day: day by day, most pitches first, then who is eligible soonest.

    `inning` is the expected pitches of an inning (see `per_inning`). Pitchers that tie keep the
    order given. A pitcher whom a book does not cover gets a line with the error.
    """
    lines = [_line(arm, day, inning, phase) for day in days for arm in staff]
    return tuple(sorted(lines, key=_order))


def _order(line: StaffLine) -> tuple[date, bool, int, date]:
    found = line.answer
    if found is None:
        return line.on, True, 0, date.max
    return line.on, False, -found.pitches_allowed, found.next_eligible or date.max


def _line(arm: Arm, day: date, inning: int, phase: Phase) -> StaffLine:
    try:
        found = answer(arm.books, arm.thrower, arm.outings, day, phase=phase)
        looks = views(arm.books, arm.thrower, arm.outings, phase)
        return StaffLine(arm.key, day, found, tuple(_costs(looks, day, inning)))
    except (RestError, RuleBookError) as error:
        return StaffLine(arm.key, day, None, error=str(error))


def _costs(looks: Sequence[View], day: date, inning: int) -> Iterator[Cost]:
    """The costs at the break points; of counts that cost the same only the largest."""
    ask = Ask(day)
    most = room_in_pitches(judge(looks, ask), inning)
    last: Cost | None = None
    for pitches in break_points(looks, ask, most, inning):
        cost = Cost(pitches, _free_after(looks, planned(day, pitches, inning=inning)))
        if last is not None and last.next_eligible != cost.next_eligible:
            yield last
        last = cost
    if last is not None:
        yield last


def _free_after(looks: Sequence[View], outing: Thrown) -> date | None:
    more = [view.plus(outing) for view in looks]
    ask = Ask(outing.on + timedelta(1))
    try:
        return next_date(more, ask, judge(more, ask))
    except (RestError, RuleBookError):
        return None
