"""What a line sets beside the log: limits, thresholds, a clearance, the calendar, wishes."""

from sqlmodel import Session

from core.consent.events import withdraw_by_line
from core.consent.word import ConsentWord, consent_word
from core.contact.wish import Contact, contact_here, obey_contact
from core.ledger import (
    calendar_lines,
    clearing,
    last_day,
    limits,
    outing_books,
    schedules,
    settings,
)
from core.ledger.apply import Change, withdraw_settings
from core.ledger.crew import Crew
from core.ledger.spoken import spoken
from core.model import Line, Person

Order = (
    limits.Order
    | outing_books.Naming
    | clearing.Clearing
    | settings.Setting
    | calendar_lines.Calendaring
    | schedules.Scheduling
    | last_day.LastDay
    | ConsentWord
    | Contact
)


def order_here(session: Session, line: Line, crew: Crew) -> Order | None:
    """The order in a line; most are taken only in a direct message or the staff channel."""
    return (
        consent_word(session, line, spoken(session, line), crew)
        or contact_here(session, line, crew)
        or clearing.clearing_here(session, line, crew)
        or limits.order_here(session, line, crew)
        or outing_books.naming_here(session, line, crew)
        or settings.setting_here(session, line, crew)
        or calendar_lines.calendar_here(session, line, crew)
        or schedules.scheduling_here(session, line, crew)
        or last_day.last_day_here(session, line, crew)
        or calendar_lines.free_calendar_here(session, line, crew)
    )


def obey(change: Change, order: Order, by_person: int) -> None:
    """Bring what a line set to what it says now."""
    withdraw_settings(change)
    match order:
        case limits.Order():
            limits.obey(change, order, by_person)
        case outing_books.Naming():
            outing_books.name_book(change, order, by_person)
        case clearing.Clearing():
            clearing.record_clearance(change, order, by_person)
        case settings.Setting():
            settings.set_thresholds(change, order, by_person)
        case calendar_lines.Calendaring():
            calendar_lines.keep_calendar(change, order)
        case schedules.Scheduling():
            schedules.set_schedules(change, order, by_person)
        case last_day.LastDay():
            last_day.keep_wish(change, order, by_person)
        case Contact():
            obey_contact(change, order, by_person)
        case ConsentWord():
            if order.arm is not None:
                author = change.session.get_one(Person, by_person)
                withdraw_by_line(change.session, change.line, order.arm.pitcher_id, author)
