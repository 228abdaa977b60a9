"""A pitcher's books, record and clearance, gathered for the questions about him."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from core.ledger.asked.answers import ArmDay
from core.ledger.binding import Books, books_for, coach_limit
from core.ledger.clearance import arm_status
from core.ledger.history import standing_outings, thrower_of, thrown
from core.model import Outing, Pitcher, key
from core.pain.status import ArmStatus
from core.rest.staff import Arm, staff_sheet
from core.rulebooks import RuleBookError


@dataclass(frozen=True, slots=True)
class Gathered:
    """Everything about one pitcher that the answers need on one day."""

    pitcher: Pitcher
    arm: Arm | None
    outings: tuple[Outing, ...]
    status: ArmStatus
    problem: str = ""


def gather(session: Session, pitcher: Pitcher, on: date, books: Books) -> Gathered:
    """The pitcher with the books that bind him on a day; `problem` where there are none."""
    outings = standing_outings(session, key(pitcher))
    status = arm_status(session, pitcher, on)
    try:
        binding = books_for(session, pitcher, on, books)
    except RuleBookError as problem:
        return Gathered(pitcher, None, tuple(outings), status, str(problem))
    arm = Arm(str(key(pitcher)), binding, thrower_of(pitcher), thrown(outings))
    return Gathered(pitcher, arm, tuple(outings), status)


def on_days(
    session: Session, pitchers: list[Pitcher], days: list[date], books: Books, inning: int
) -> list[tuple[date, tuple[ArmDay, ...]]]:
    """Every pitcher on every day: those who may throw first, most pitches first."""
    return [(day, _on_day(session, pitchers, day, books, inning)) for day in days]


def _on_day(
    session: Session, pitchers: list[Pitcher], day: date, books: Books, inning: int
) -> tuple[ArmDay, ...]:
    gathered = {str(key(p)): gather(session, p, day, books) for p in pitchers}
    arms = [one.arm for one in gathered.values() if one.arm is not None]
    found = [
        ArmDay(
            pitcher=gathered[line.key].pitcher,
            on=day,
            rest=line.answer,
            problem=line.error,
            costs=line.costs,
            status=gathered[line.key].status,
            limit=coach_limit(session, gathered[line.key].pitcher, day),
            has_record=bool(gathered[line.key].outings),
        )
        for line in staff_sheet(arms, [day], inning=inning)
    ]
    found += [
        ArmDay(one.pitcher, day, None, one.problem, status=one.status)
        for one in gathered.values()
        if one.arm is None
    ]
    return tuple(sorted(found, key=lambda one: not one.may_throw))
