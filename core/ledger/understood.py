"""Whether a text typed after the command says anything to the log, before it is kept."""

from sqlmodel import Session

from core.ledger.asked import asked_here, speaks_of_last
from core.ledger.crew import Crew
from core.ledger.orders import order_here
from core.model import Line
from core.reading import read


def says_something(session: Session, line: Line, crew: Crew) -> bool:
    """Whether a line, not stored yet, logs, asks or sets something; or cannot be sure of it."""
    posted = crew.local(line.posted_at)
    reading = read(line.text, posted, crew.voice, roster=crew.roster())
    return bool(
        reading.entries
        or reading.unread
        or order_here(session, line, crew)
        or asked_here(session, line, crew)
        or speaks_of_last(session, line)
    )
