"""Where a pitcher's arm stands on a day: pain on record, holds, a clinician's limits."""

from datetime import date

from sqlmodel import Session, col, select

from core.ledger.answers import GONE, Answer, Answers
from core.ledger.holds import as_cleared, as_held, clearances_of, holds_of, stops
from core.ledger.people import guardians_of
from core.ledger.question import Question, QuestionCode
from core.model import Clearance, Feeling, Line, PainReport, Pitcher, key
from core.pain.clearance import Said, not_cleared_since
from core.pain.holds import end_of
from core.pain.status import ArmStatus, ClinicianLimit

#: From this age (years) a pitcher speaks for himself.
ADULT = 18


def arm_status(session: Session, pitcher: Pitcher, on: date) -> ArmStatus:
    """What stands against throwing on a day.

    A report counts whatever became of its line. A hold ends only by a clinician's clearance;
    other pain also where a guardian, or a pitcher who is an adult himself, has confirmed in so
    many words that it is gone: "no pain" beside the counts of a day ends nothing.
    """
    clearances = clearances_of(session, key(pitcher))
    ended = [as_cleared(row) for row in clearances]
    held = [
        hold.on for hold in holds_of(session, key(pitcher)) if end_of(as_held(hold), ended) is None
    ]
    not_cleared = not_cleared_since(_statements(session, pitcher, clearances))
    standing = [*held, *([not_cleared] if not_cleared else [])]
    newest = clearances[-1] if clearances else None
    return ArmStatus(
        since=min(standing, default=None),
        held=bool(held),
        limits=_limits(newest, on),
        clinician=newest.clinician if newest else "",
        cleared_on=newest.on if newest else None,
    )


def _limits(newest: Clearance | None, on: date) -> tuple[ClinicianLimit, ...]:
    """The limits of the newest clearance that are in force on a day."""
    stored = newest.limits if newest is not None else []
    limits = map(ClinicianLimit.from_json, stored)
    return tuple(one for one in limits if one.until is None or one.until >= on)


def _statements(session: Session, pitcher: Pitcher, clearances: list[Clearance]) -> list[Said]:
    """What was said of the arm, in the order in which it was said."""
    rows = session.exec(
        select(PainReport, Line)
        .join(Line, col(PainReport.line_id) == col(Line.id))
        .where(PainReport.pitcher_id == key(pitcher))
        .order_by(col(Line.posted_at), col(PainReport.id))
    ).all()
    said = [(line.posted_at, _said(report, line, pitcher)) for report, line in rows]
    said += [(row.said_at, Said(row.on, pain_free=True)) for row in clearances]
    return [one for _, one in sorted(said, key=lambda pair: pair[0])]


def may_clear(session: Session, pitcher: Pitcher, on: date) -> set[int]:
    """The people (ids) who may say that this arm is free of pain again."""
    people = {key(person) for person in guardians_of(session, {key(pitcher)})}
    if age_on(pitcher.birth_date, on) >= ADULT and pitcher.person_id is not None:
        people.add(pitcher.person_id)
    return people


def _said(report: PainReport, line: Line, pitcher: Pitcher) -> Said:
    answers = Answers(tuple(Answer.from_json(one) for one in line.answers))
    confirmed = answers.value(Question(QuestionCode.PAIN_FREE, pitcher_id=key(pitcher)))
    return Said(
        on=report.on,
        stops=stops(report, pitcher),
        pain_free=report.feeling == Feeling.NO_PAIN
        and report.withdrawn_at is None
        and confirmed == GONE,
    )


def age_on(born: date, on: date) -> int:
    """Age in whole years."""
    return on.year - born.year - ((on.month, on.day) < (born.month, born.day))
