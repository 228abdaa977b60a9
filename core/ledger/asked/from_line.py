"""A typed line as a question: whether it is one here, and its answer as the record stands."""

from sqlmodel import Session

from core.ledger.asked.answers import Reply
from core.ledger.asked.question import Question
from core.ledger.asked.reply import reply
from core.ledger.binding import Books
from core.ledger.crew import Crew, load_crew
from core.ledger.spoken import spoken
from core.model import Line, Person, Team
from core.reading.asking import Asked, ask


def asked_here(session: Session, line: Line, crew: Crew) -> Asked | None:
    """The question in a line, where questions are taken: a direct message, the staff channel,
    or a line that mentions the bot. Elsewhere the same words are talk among people.
    """
    text = spoken(session, line)
    mentioned = text != line.text
    if not (mentioned or crew.takes_orders(line)):
        return None
    return ask(text, crew.local(line.posted_at), roster=crew.roster())


def replies(session: Session, line: Line, books: Books) -> list[Reply]:
    """The answers to the questions of a line, in their order."""
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    if author is None:
        return []
    here = session.get(Team, line.team_id) if line.team_id is not None else None
    crew = load_crew(session, author, here)
    found: list[Reply] = []
    asked = asked_here(session, line, crew)
    while asked is not None:
        posted = crew.local(line.posted_at)
        found.append(reply(Question(session, asked, crew, books, posted.date(), posted.time())))
        asked = asked.then
    return found
