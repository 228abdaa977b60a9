"""The answer to what a line set or lifted: limits, thresholds, the calendar; and to a list."""

from sqlmodel import Session, select

from bot.blocks.alerts import list_parts, settings_said
from bot.blocks.buttons import undo_line
from bot.blocks.calendar import calendar_list, calendar_said, unchanged
from bot.blocks.consent import after_a_no
from bot.blocks.contact import contact_said
from bot.blocks.holds import clearances_said
from bot.blocks.message import Part
from bot.blocks.schedules import schedule_lists, schedules_said
from bot.wording import limits as say
from bot.wording.consent import withdrawn_by_word
from core.ledger.binding import Books
from core.ledger.crew import crew_of
from core.ledger.limits import most_by_book
from core.ledger.settings import listed_here
from core.model import CoachLimit, ConsentEvent, Line, OutingBook, Pitcher, key
from core.rulebooks import RuleBookError


def order_parts(session: Session, line: Line, books: Books) -> list[Part]:
    """What a line set, or that it lifted a limit."""
    calendar = calendar_list(session, line)
    listed = [Part(calendar)] if calendar else _list(session, line) or schedule_lists(session, line)
    if listed:
        return listed
    consent = _consent(session, line)
    if consent:
        return consent
    contact = contact_said(session, line)
    if contact:
        return [Part(contact)]  # no "undo": a wish ends by its own words
    texts = [
        *clearances_said(session, line),
        *settings_said(session, line),
        *_limits(session, line, books),
        *_books(session, line, books),
        *calendar_said(session, line),
        *schedules_said(session, line),
    ]
    if not texts:
        return [Part(unchanged(session, line) or say.LIFTED)]
    return [*(Part(text) for text in texts), Part("", (undo_line(line),))]


def _consent(session: Session, line: Line) -> list[Part]:
    rows = session.exec(select(ConsentEvent).where(ConsentEvent.line_id == key(line))).all()
    return [
        Part(withdrawn_by_word(pitcher.name), after_a_no(pitcher))
        for pitcher in (session.get_one(Pitcher, row.pitcher_id) for row in rows)
    ]


def _list(session: Session, line: Line) -> list[Part]:
    crew = crew_of(session, line)
    found = listed_here(session, line, crew) if crew is not None else []
    return [part for one in found for part in list_parts(session, *one, of_several=len(found) > 1)]


def _books(session: Session, line: Line, books: Books) -> list[str]:
    rows = session.exec(select(OutingBook).where(OutingBook.line_id == key(line))).all()
    return [
        say.book_named(
            session.get_one(Pitcher, row.pitcher_id).name,
            row.on,
            _title(row.rule_book, books),
        )
        for row in rows
        if row.withdrawn_at is None
    ]


def _title(book: str, books: Books) -> str:
    """What the book calls itself; its id where its file can no longer be used."""
    try:
        return books((book,))[0].title
    except RuleBookError:
        return book


def _limits(session: Session, line: Line, books: Books) -> list[str]:
    rows = session.exec(select(CoachLimit).where(CoachLimit.line_id == key(line))).all()
    told = []
    for row in rows:
        if row.withdrawn_at is None:
            pitcher = session.get_one(Pitcher, row.pitcher_id)
            most = most_by_book(session, pitcher, row.starts_on, books)
            less = most if most is not None and most[0] < row.pitches else None
            told.append(say.limit_set(pitcher.name, row.pitches, row.starts_on, row.ends_on, less))
    return told
