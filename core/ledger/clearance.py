"""Whether pain on a pitcher's record still stands against throwing."""

from datetime import date

from sqlmodel import Session, col, select

from core.ledger.answers import GONE, Answer, Answers
from core.ledger.people import guardians_of
from core.ledger.question import Question, QuestionCode
from core.model import Feeling, Line, PainReport, Pitcher, key
from core.pain import Report, stops_throwing
from core.pain.clearance import Said, not_cleared_since

#: From this age (years) a pitcher speaks for himself.
ADULT = 18


def pain_stands_since(session: Session, pitcher: Pitcher) -> date | None:
    """The day of a report of pain that stopped this arm and that nobody has cleared since.

    A report counts whatever became of its line. It ends only where a guardian, or a pitcher
    who is an adult himself, has confirmed in so many words that the pain is gone: "no pain"
    beside the counts of a day ends nothing.
    """
    rows = session.exec(
        select(PainReport, Line)
        .join(Line, col(PainReport.line_id) == col(Line.id))
        .where(PainReport.pitcher_id == key(pitcher))
        .order_by(col(Line.posted_at), col(PainReport.id))
    ).all()
    return not_cleared_since(_said(report, line, pitcher) for report, line in rows)


def may_clear(session: Session, pitcher: Pitcher, on: date) -> set[int]:
    """The people (ids) who may say that this arm is free of pain again."""
    people = {key(person) for person in guardians_of(session, {key(pitcher)})}
    if _age(pitcher.birth_date, on) >= ADULT and pitcher.person_id is not None:
        people.add(pitcher.person_id)
    return people


def _said(report: PainReport, line: Line, pitcher: Pitcher) -> Said:
    answers = Answers(tuple(Answer.from_json(one) for one in line.answers))
    confirmed = answers.value(Question(QuestionCode.PAIN_FREE, pitcher_id=key(pitcher)))
    sore = report.feeling == Feeling.SORE
    hurts = report.feeling in {Feeling.PAIN, Feeling.SORE}
    told = Report(report.site, report.severity, report.side, sore)
    return Said(
        on=report.on,
        stops=hurts and stops_throwing(told, pitcher.throws),
        pain_free=report.feeling == Feeling.NO_PAIN
        and report.withdrawn_at is None
        and confirmed == GONE,
    )


def _age(born: date, on: date) -> int:
    return on.year - born.year - ((on.month, on.day) < (born.month, born.day))
