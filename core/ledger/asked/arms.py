"""The pitchers' books, records and clearances, read at once for the questions about them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from sqlmodel import Session

from core.ledger.asked.answers import ArmDay
from core.ledger.binding import Bindings, Books, bindings
from core.ledger.clearance import ArmRecord, arm_records
from core.ledger.history import counted_outings, thrower_of, thrown
from core.ledger.logged import Logged
from core.model import Pitcher, key
from core.pain.status import ArmStatus
from core.rest import Thrown
from core.rest.staff import Arm, staff_sheet
from core.rulebooks import RuleBookError


@dataclass(frozen=True, slots=True)
class Gathered:
    """Everything about one pitcher that the answers need on one day."""

    pitcher: Pitcher
    arm: Arm | None
    outings: tuple[Logged, ...]
    status: ArmStatus
    problem: str = ""


@dataclass(frozen=True, slots=True)
class Staff:
    """Some pitchers over some days: what the database says of them, by pitcher."""

    bindings: Bindings
    outings: Mapping[int, Sequence[Logged]]
    thrown: Mapping[int, Sequence[Thrown]]
    pain: Mapping[int, ArmRecord]

    def on(self, pitcher: Pitcher, day: date, books: Books) -> Gathered:
        """The pitcher with the books that bind him on a day; `problem` where there are none."""
        one = key(pitcher)
        outings, status = tuple(self.outings[one]), self.pain[one].status(day)
        try:
            binding = self.bindings.books_for(pitcher, day, books)
        except RuleBookError as problem:
            return Gathered(pitcher, None, outings, status, str(problem))
        arm = Arm(str(one), binding, thrower_of(pitcher), self.thrown[one])
        return Gathered(pitcher, arm, outings, status)


def staff_of(session: Session, pitchers: Sequence[Pitcher], first: date, last: date) -> Staff:
    """These pitchers on the days from `first` to `last`, in a few questions to the database."""
    outings = counted_outings(session, [key(one) for one in pitchers])
    return Staff(
        bindings(session, pitchers, first, last),
        outings,
        {one: thrown(record) for one, record in outings.items()},
        arm_records(session, pitchers),
    )


def gather(session: Session, pitcher: Pitcher, on: date, books: Books) -> Gathered:
    """One pitcher with the books that bind him on one day."""
    return staff_of(session, [pitcher], on, on).on(pitcher, on, books)


def on_days(
    session: Session, pitchers: list[Pitcher], days: list[date], books: Books, inning: int
) -> list[tuple[date, tuple[ArmDay, ...]]]:
    """Every pitcher on every day: those who may throw first, most pitches first."""
    staff = staff_of(session, pitchers, min(days), max(days))
    return [(day, _on_day(staff, pitchers, day, books, inning)) for day in days]


def _on_day(
    staff: Staff, pitchers: list[Pitcher], day: date, books: Books, inning: int
) -> tuple[ArmDay, ...]:
    gathered = {str(key(one)): staff.on(one, day, books) for one in pitchers}
    arms = [one.arm for one in gathered.values() if one.arm is not None]
    found = [
        ArmDay(
            pitcher=gathered[line.key].pitcher,
            on=day,
            rest=line.answer,
            problem=line.error,
            costs=line.costs,
            status=gathered[line.key].status,
            limit=staff.bindings.limit(gathered[line.key].pitcher, day),
            has_record=bool(gathered[line.key].outings),
            two_counts_on=two_counts_on(gathered[line.key].outings, day),
        )
        for line in staff_sheet(arms, [day], inning=inning)
    ]
    found += [
        ArmDay(one.pitcher, day, None, one.problem, status=one.status)
        for one in gathered.values()
        if one.arm is None
    ]
    return tuple(sorted(found, key=lambda one: not one.may_throw))


def two_counts_on(outings: Sequence[Logged], day: date) -> tuple[date, ...]:
    """The days of the last week before `day` whose two counts may be of one outing."""
    week = timedelta(days=7)
    return tuple(
        sorted({one.on for one in outings if one.open_logs and day - week <= one.on <= day})
    )
