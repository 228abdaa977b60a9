"""A rule book named for one outing by a line of the staff's; its deletion takes it back."""

from dataclasses import dataclass

from sqlmodel import Session

from core.audience import Relation
from core.ledger.apply import Change, keep_row
from core.ledger.crew import Crew
from core.ledger.one_meant import one_meant
from core.ledger.question import Question, QuestionCode
from core.ledger.spoken import spoken
from core.ledger.who import Arm
from core.model import Line, OutingBook, Workspace, key
from core.reading.orders import BookOrder, book_order
from core.rulebooks import builtin_ids


@dataclass(frozen=True, slots=True)
class Naming:
    """A book named for one pitcher's outing, or the question that stands in its way."""

    order: BookOrder
    arm: Arm | None
    question: Question | None = None


def naming_here(session: Session, line: Line, crew: Crew) -> Naming | None:
    """The book that a line names for an outing; anybody else's than the staff's is refused."""
    order = book_order(spoken(session, line), crew.local(line.posted_at))
    if order is None:
        return None
    arms = crew.related(Relation.STAFF)
    if not arms:
        return Naming(order, None, Question(QuestionCode.ONLY_STAFF))
    known = _known(session, line)
    if order.unclear or order.book not in known:
        about = order.unclear or order.book
        return Naming(order, None, Question(QuestionCode.BOOK_UNCLEAR, about=about, choices=known))
    one = one_meant(line, order.who, arms)
    return Naming(order, one) if isinstance(one, Arm) else Naming(order, None, one)


def _known(session: Session, line: Line) -> tuple[str, ...]:
    """The built-in books and those of the club's own folder."""
    own = session.get_one(Workspace, line.workspace_id).own_books or ()
    return tuple(sorted({*builtin_ids(), *own}))


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
    keep_row(change, row, {"rule_book": row.rule_book})
