"""What a line sets beside the log: a limit of the coach's, or a clinician's clearance."""

from sqlmodel import Session

from core.ledger import clearing, limits
from core.ledger.apply import Change
from core.ledger.crew import Crew
from core.ledger.spoken import spoken
from core.model import Line

Order = limits.Order | clearing.Clearing


def order_here(session: Session, line: Line, crew: Crew) -> Order | None:
    """The order in a line; a clearance is taken in a direct message or the staff channel."""
    cleared = clearing.clearing_here(session, line, crew)
    return cleared or limits.order_here(spoken(session, line), line, crew)


def obey(change: Change, order: Order, by_person: int) -> None:
    """Bring what a line set to what it says now."""
    take_back(change)
    match order:
        case limits.Order():
            limits.obey(change, order, by_person)
        case clearing.Clearing():
            clearing.record_clearance(change, order, by_person)


def take_back(change: Change) -> None:
    """Withdraw whatever a line set."""
    limits.take_back(change)
    clearing.take_back_clearance(change)
