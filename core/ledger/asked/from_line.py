"""A typed line as a question: whether it is one here, and its answer as the record stands."""

from sqlmodel import Session

from core.audience import Relation
from core.ledger.asked.answers import FormAnswer, Reply
from core.ledger.asked.in_short import asked_in_short
from core.ledger.asked.last_line import last_line, speaks_of_last
from core.ledger.asked.question import Question
from core.ledger.asked.reply import help_for, reply
from core.ledger.binding import Books
from core.ledger.command_words import ADD, Does, Word, may_use, word_alone
from core.ledger.crew import Crew, crew_of
from core.ledger.spoken import spoken
from core.ledger.who import find
from core.model import Line
from core.reading.adding import pitcher_to_add
from core.reading.asking import Asked, Topic, ask


def asked_here(session: Session, line: Line, crew: Crew) -> Asked | None:
    """The question in a line, where questions are taken: a direct message, the staff channel,
    or a line that mentions the bot. Elsewhere the same words are talk among people.
    """
    text = spoken(session, line)
    mentioned = text != line.text
    if not (mentioned or crew.takes_orders(line)):
        return None
    posted = crew.local(line.posted_at)
    short = asked_in_short(text, posted.date(), crew)
    if short is not None and short.topic is Topic.ARM:
        return short
    return ask(text, posted, roster=crew.roster()) or short


def says_a_word(session: Session, line: Line, crew: Crew) -> Word | None:
    """The word of the table that is all a line says, where it opens a form or the help.

    "Pain" alone is read as what it may be: a report.
    """
    text = spoken(session, line)
    if text == line.text and not crew.takes_orders(line):
        return None
    word = ADD if pitcher_to_add(text) is not None else word_alone(text)
    if word is None or word.name == "pain" or word.does not in {Does.FORM, Does.HELP}:
        return None
    return word if may_use(word, crew) else None


def asks_in_short(session: Session, line: Line, crew: Crew) -> bool:
    """Whether a line is a question in a word or two, where words are taken.

    Such a word is no log there: "rest" alone asks when, elsewhere it is a day off.
    """
    text = spoken(session, line)
    if text == line.text and not crew.takes_orders(line):
        return False
    return asked_in_short(text, crew.local(line.posted_at).date(), crew) is not None


def replies(session: Session, line: Line, books: Books) -> list[Reply]:
    """The answers to the questions of a line, in their order."""
    crew = crew_of(session, line)
    if crew is None:
        return []
    if speaks_of_last(line):
        return [last_line(session, line)]
    word = says_a_word(session, line, crew)
    if word is not None:
        return [_form(session, line, word, crew) if word.does is Does.FORM else help_for(crew)]
    found: list[Reply] = []
    asked = asked_here(session, line, crew)
    while asked is not None:
        posted = crew.local(line.posted_at)
        found.append(reply(Question(session, asked, crew, books, posted.date(), posted.time())))
        asked = asked.then
    return found


def _form(session: Session, line: Line, word: Word, crew: Crew) -> FormAnswer:
    name = pitcher_to_add(spoken(session, line)) or ""
    known = find(name, crew.related(Relation.STAFF)) if name else []
    return FormAnswer(
        word.name, word.target, name, tuple((arm.pitcher_id, arm.name) for arm in known)
    )
