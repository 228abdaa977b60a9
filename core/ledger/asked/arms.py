"""A pitcher's books, record and clearance, gathered for the questions about him."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session, col, select

from core.ledger.asked.answers import ArmDay
from core.ledger.binding import Books, books_for, coach_limit
from core.ledger.history import standing_outings, thrower_of, thrown
from core.ledger.people import guardians_of
from core.model import Feeling, Line, Outing, PainReport, Pitcher, key
from core.pain import Report, stops_throwing
from core.pain.clearance import Said, not_cleared_since
from core.rest.staff import Arm, staff_sheet
from core.rulebooks import RuleBookError

ADULT = 18


@dataclass(frozen=True, slots=True)
class Gathered:
    """Everything about one pitcher that the answers need on one day."""

    pitcher: Pitcher
    arm: Arm | None
    outings: tuple[Outing, ...]
    not_cleared_since: date | None
    problem: str = ""


def gather(session: Session, pitcher: Pitcher, on: date, books: Books) -> Gathered:
    """The pitcher with the books that bind him on a day; `problem` where there are none."""
    outings = standing_outings(session, key(pitcher))
    since = pain_stands_since(session, pitcher, on)
    try:
        binding = books_for(session, pitcher, on, books)
    except RuleBookError as problem:
        return Gathered(pitcher, None, tuple(outings), since, str(problem))
    arm = Arm(str(key(pitcher)), binding, thrower_of(pitcher), thrown(outings))
    return Gathered(pitcher, arm, tuple(outings), since)


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
            not_cleared_since=gathered[line.key].not_cleared_since,
            limit=coach_limit(session, gathered[line.key].pitcher, day),
        )
        for line in staff_sheet(arms, [day], inning=inning)
    ]
    found += [
        ArmDay(one.pitcher, day, None, one.problem, not_cleared_since=one.not_cleared_since)
        for one in gathered.values()
        if one.arm is None
    ]
    return tuple(sorted(found, key=lambda one: not one.may_throw))


def pain_stands_since(session: Session, pitcher: Pitcher, on: date) -> date | None:
    """The day of a report of pain that stopped this arm and that nobody has cleared since.

    A report counts whatever became of its line; "no pain" counts only from a guardian, or
    from a pitcher who is an adult himself.
    """
    may_clear = {key(person) for person in guardians_of(session, {key(pitcher)})}
    if _age(pitcher.birth_date, on) >= ADULT and pitcher.person_id is not None:
        may_clear.add(pitcher.person_id)
    rows = session.exec(
        select(PainReport, Line)
        .join(Line, col(PainReport.line_id) == col(Line.id))
        .where(PainReport.pitcher_id == key(pitcher))
        .order_by(col(Line.posted_at), col(PainReport.id))
    ).all()
    return not_cleared_since(_said(report, line, pitcher, may_clear) for report, line in rows)


def _said(report: PainReport, line: Line, pitcher: Pitcher, may_clear: set[int]) -> Said:
    sore = report.feeling == Feeling.SORE
    hurts = report.feeling in {Feeling.PAIN, Feeling.SORE}
    told = Report(report.site, report.severity, report.side, sore)
    return Said(
        on=report.on,
        stops=hurts and stops_throwing(told, pitcher.throws),
        pain_free=report.feeling == Feeling.NO_PAIN
        and report.withdrawn_at is None
        and line.author_id in may_clear,
    )


def _age(born: date, on: date) -> int:
    return on.year - born.year - ((on.month, on.day) < (born.month, born.day))
