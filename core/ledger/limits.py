"""The coach's own limits, set and lifted by a line; the line's deletion takes them back."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session, col, select

from core.audience import Relation
from core.ledger.apply import Change, keep_row, withdraw_row
from core.ledger.binding import Books, books_for
from core.ledger.crew import Crew
from core.ledger.history import thrower_of
from core.ledger.one_meant import one_meant
from core.ledger.question import Question, QuestionCode
from core.ledger.spoken import spoken
from core.ledger.who import Arm, find
from core.model import CoachLimit, Line, Pitcher, key
from core.reading.free_limits import free_limit_order
from core.reading.orders import LimitOrder, limit_order
from core.rest import RestError, answer
from core.rest.coach import OWN
from core.rulebooks import RuleBookError


@dataclass(frozen=True, slots=True)
class Order:
    """An order with the one pitcher it is about, or the question that stands in its way."""

    order: LimitOrder
    arm: Arm | None
    question: Question | None = None


def order_here(session: Session, line: Line, crew: Crew) -> Order | None:
    """The order in what a line says; anybody else's than the staff's is refused.

    A limit is never read as a count, wherever it was typed.
    """
    said = spoken(session, line)
    order = limit_order(said, crew.local(line.posted_at))
    if order is None:
        return _in_free_words(said, line, crew)
    arms = crew.related(Relation.STAFF)
    if not arms:
        return Order(order, None, Question(QuestionCode.ONLY_STAFF))
    if order.unclear:
        return Order(order, None, Question(QuestionCode.LIMIT_UNCLEAR, about=order.unclear))
    one = one_meant(line, order.who, arms)
    return Order(order, one) if isinstance(one, Arm) else Order(order, None, one)


def _in_free_words(said: str, line: Line, crew: Crew) -> Order | None:
    """The limit in "max 45 for Leo today", where the staff speak to the bot; else none.

    Words that could be a report too are left to the reader: a pitcher must be meant, and where
    somebody is called Max, "Leo max 45" may be two of them.
    """
    if not crew.takes_orders(line):
        return None
    order = free_limit_order(said, crew.local(line.posted_at))
    arms = crew.related(Relation.STAFF)
    if order is None or not arms or ("max" in said.casefold() and find("Max", crew.arms)):
        return None
    one = one_meant(line, order.who, arms)
    if isinstance(one, Question):
        return Order(order, None, one) if one.code == QuestionCode.TWO_PEOPLE else None
    if order.unclear:
        return Order(order, None, Question(QuestionCode.LIMIT_UNCLEAR, about=order.unclear))
    return Order(order, one)


def obey(change: Change, order: Order, by_person: int) -> None:
    """Set or lift the limit that a line speaks of."""
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
    keep_row(change, row, {"pitches": row.pitches})


def _lift(change: Change, pitcher_id: int) -> None:
    of_pitcher = select(CoachLimit).where(CoachLimit.pitcher_id == pitcher_id)
    for row in change.session.exec(of_pitcher.where(col(CoachLimit.withdrawn_at).is_(None))):
        withdraw_row(change, row)


def most_by_book(
    session: Session, pitcher: Pitcher, on: date, books: Books
) -> tuple[int, str] | None:
    """The most pitches that the rule books allow a rested arm on a day, and which book says so.

    The coach's own limits are left out; none where no book limits or answers.
    """
    try:
        binding = [one for one in books_for(session, pitcher, on, books) if one.id != OWN]
        found = answer(binding, thrower_of(pitcher), (), on)
    except (RestError, RuleBookError):
        return None
    named = [reason.title for reason in found.why if reason.binds]
    if not found.pitches_limited or not named:
        return None
    return found.pitches_allowed, named[0]
