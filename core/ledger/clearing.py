"""A clinician's clearance, recorded by an adult's line; the line's deletion takes it back."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from core.audience import Relation
from core.ledger.apply import Change, keep_row
from core.ledger.clearance import ADULT, age_on, arm_status
from core.ledger.crew import Crew
from core.ledger.question import Question, QuestionCode
from core.ledger.spoken import spoken
from core.ledger.who import Arm, find, near
from core.model import Clearance, Line, Pitcher, key
from core.reading.clearing import ClearanceOrder, clearance_order


@dataclass(frozen=True, slots=True)
class Clearing:
    """A clearance with the one pitcher it is about, or the question that stands in its way."""

    order: ClearanceOrder
    arm: Arm | None
    question: Question | None = None


def clearing_here(session: Session, line: Line, crew: Crew) -> Clearing | None:
    """The clearance in a line, in a direct message or the staff channel; else none.

    Only the staff, a guardian, or an adult pitcher of himself may record one; everybody else
    is answered in the same words, whatever name was typed.
    """
    today = crew.local(line.posted_at).date()
    order = clearance_order(spoken(session, line), crew.local(line.posted_at))
    if order is None or not crew.takes_orders(line):
        return None
    arms = find(order.who, crew.arms) if order.who else []
    if not order.is_sure and not arms:
        return None
    allowed = may_record(session, crew, today)
    meant = [arm for arm in arms if arm in allowed] if order.who else allowed
    if len(meant) != 1:
        if len(meant) > 1:
            names = tuple(arm.name for arm in meant)
            code = QuestionCode.TWO_PEOPLE if order.who else QuestionCode.WHO
            return Clearing(order, None, Question(code, about=order.who, choices=names))
        if crew.is_staff and allowed and order.who:
            near_names = tuple(arm.name for arm in near(order.who, allowed))
            unknown = QuestionCode.UNKNOWN_NAME
            return Clearing(order, None, Question(unknown, about=order.who, choices=near_names))
        return Clearing(order, None, Question(QuestionCode.ONLY_ADULTS))
    problem, about = problem_of(session, order, meant[0].pitcher_id, today)
    if problem:
        code = QuestionCode.CLEARANCE_UNCLEAR
        return Clearing(order, None, Question(code, about=about, reason=problem))
    return Clearing(order, meant[0])


def problem_of(
    session: Session, order: ClearanceOrder, pitcher_id: int, today: date
) -> tuple[str, str]:
    """What stands against a clearance, and the words that it is about; two empty texts if nothing.

    A clearance that is older than the report which stands on `today` ends nothing.
    """
    if not order.problem and order.on is not None:
        since = arm_status(session, session.get_one(Pitcher, pitcher_id), today).since
        if since is not None and order.on < since:
            return "older", order.on.isoformat()
    return order.problem, order.about


def may_record(session: Session, crew: Crew, today: date) -> list[Arm]:
    """The arms whose clearance this person may record; a minor may record none."""
    own = crew.related(Relation.SELF)
    if any(_age(session, arm, today) < ADULT for arm in own):
        return []
    adults = frozenset({Relation.STAFF, Relation.GUARDIAN, Relation.SELF})
    return [arm for arm in crew.arms if crew.relations[arm.pitcher_id] & adults]


def _age(session: Session, arm: Arm, today: date) -> int:
    return age_on(session.get_one(Pitcher, arm.pitcher_id).birth_date, today)


def record_clearance(change: Change, clearing: Clearing, by_person: int) -> None:
    """Put the clearance of a line on file."""
    order, line = clearing.order, change.line
    if clearing.arm is None or order.on is None:
        return
    row = Clearance(
        workspace_id=line.workspace_id,
        pitcher_id=clearing.arm.pitcher_id,
        line_id=key(line),
        clinician=order.clinician,
        on=order.on,
        limits=[limit.as_json() for limit in order.limits],
        recorded_by=by_person,
        said_at=line.posted_at,
    )
    said = {"clinician": row.clinician, "on": row.on.isoformat(), "limits": row.limits}
    keep_row(change, row, said)
