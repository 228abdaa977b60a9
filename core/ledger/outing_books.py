"""A rule book named for one outing by a line of the staff's; its deletion takes it back."""

from dataclasses import dataclass

from sqlmodel import col, select

from core.audience import Relation
from core.ledger.apply import Change, audit
from core.ledger.crew import Crew
from core.ledger.question import Question, QuestionCode
from core.ledger.who import Arm, find, near
from core.model import AuditAction, Line, OutingBook, key
from core.reading.orders import BookOrder, book_order
from core.rulebooks import builtin_ids


@dataclass(frozen=True, slots=True)
class Naming:
    """A book named for one pitcher's outing, or the question that stands in its way."""

    order: BookOrder
    arm: Arm | None
    question: Question | None = None


def naming_here(text: str, line: Line, crew: Crew) -> Naming | None:
    """The book that a line names for an outing; anybody else's than the staff's is refused."""
    order = book_order(text, crew.local(line.posted_at))
    if order is None:
        return None
    arms = crew.related(Relation.STAFF)
    if not arms:
        return Naming(order, None, Question(QuestionCode.ONLY_STAFF))
    known = tuple(sorted(builtin_ids()))
    if order.unclear or order.book not in known:
        about = order.unclear or order.book
        return Naming(order, None, Question(QuestionCode.BOOK_UNCLEAR, about=about, choices=known))
    found = find(order.who, arms)
    if len(found) == 1:
        return Naming(order, found[0])
    code = QuestionCode.TWO_PEOPLE if found else QuestionCode.UNKNOWN_NAME
    names = tuple(arm.name for arm in found or near(order.who, arms))
    return Naming(order, None, Question(code, about=order.who, choices=names))


def name_book(change: Change, naming: Naming, by_person: int) -> None:
    """Keep the book that a line names; it binds beside the others, the stricter wins."""
    if naming.arm is None:
        return
    row = OutingBook(
        workspace_id=change.line.workspace_id,
        pitcher_id=naming.arm.pitcher_id,
        on=naming.order.on,
        rule_book=naming.order.book,
        line_id=key(change.line),
        set_by=by_person,
    )
    change.session.add(row)
    change.session.flush()
    audit(change, row, AuditAction.RECORDED, {}, {"rule_book": row.rule_book})


def take_back_books(change: Change) -> None:
    """Withdraw the books that a line named."""
    of_line = select(OutingBook).where(OutingBook.line_id == key(change.line))
    for row in change.session.exec(of_line.where(col(OutingBook.withdrawn_at).is_(None))):
        row.withdrawn_at = change.at
        change.session.add(row)
        withdrawn = {"withdrawn_at": change.at.isoformat()}
        audit(change, row, AuditAction.WITHDRAWN, {"withdrawn_at": None}, withdrawn)
