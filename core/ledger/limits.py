"""The coach's own limits, set and lifted by a line; the line's deletion takes them back."""

from dataclasses import dataclass

from sqlmodel import col, select

from core.audience import Relation
from core.ledger.apply import Change, audit
from core.ledger.crew import Crew
from core.ledger.question import Question, QuestionCode
from core.ledger.who import Arm, find, near
from core.model import AuditAction, CoachLimit, Line, key
from core.reading.orders import LimitOrder, limit_order


@dataclass(frozen=True, slots=True)
class Order:
    """An order with the one pitcher it is about, or the question that stands in its way."""

    order: LimitOrder
    arm: Arm | None
    question: Question | None = None


def order_here(text: str, line: Line, crew: Crew) -> Order | None:
    """The order in what a line says; anybody else's than the staff's is refused.

    A limit is never read as a count, wherever it was typed.
    """
    order = limit_order(text, crew.local(line.posted_at))
    if order is None:
        return None
    arms = crew.related(Relation.STAFF)
    if not arms:
        return Order(order, None, Question(QuestionCode.ONLY_STAFF))
    if order.unclear:
        return Order(order, None, Question(QuestionCode.LIMIT_UNCLEAR, about=order.unclear))
    found = find(order.who, arms)
    if len(found) == 1:
        return Order(order, found[0])
    code = QuestionCode.TWO_PEOPLE if found else QuestionCode.UNKNOWN_NAME
    names = tuple(arm.name for arm in found or near(order.who, arms))
    return Order(order, None, Question(code, about=order.who, choices=names))


def obey(change: Change, order: Order, by_person: int) -> None:
    """Bring the limits that a line set to what it says now."""
    take_back(change)
    if order.arm is None:
        return
    pitcher_id = order.arm.pitcher_id
    if order.order.pitches is None:
        _lift(change, pitcher_id)
        return
    row = CoachLimit(
        workspace_id=change.line.workspace_id,
        pitcher_id=pitcher_id,
        pitches=order.order.pitches,
        starts_on=order.order.first,
        ends_on=order.order.last,
        line_id=key(change.line),
        set_by=by_person,
    )
    change.session.add(row)
    change.session.flush()
    audit(change, row, AuditAction.RECORDED, {}, {"pitches": row.pitches})


def take_back(change: Change) -> None:
    """Withdraw the limits that a line set."""
    of_line = select(CoachLimit).where(CoachLimit.line_id == key(change.line))
    for row in change.session.exec(of_line.where(col(CoachLimit.withdrawn_at).is_(None))):
        _withdraw(change, row)


def _lift(change: Change, pitcher_id: int) -> None:
    of_pitcher = select(CoachLimit).where(CoachLimit.pitcher_id == pitcher_id)
    for row in change.session.exec(of_pitcher.where(col(CoachLimit.withdrawn_at).is_(None))):
        _withdraw(change, row)


def _withdraw(change: Change, row: CoachLimit) -> None:
    row.withdrawn_at = change.at
    change.session.add(row)
    audit(
        change,
        row,
        AuditAction.WITHDRAWN,
        {"withdrawn_at": None},
        {"withdrawn_at": change.at.isoformat()},
    )
