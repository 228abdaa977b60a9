"""A typed line as a question: whether it is one here, and its answer as the record stands."""

from datetime import datetime

from sqlmodel import Session

from core.audience import Relation, View, may_see
from core.ledger.answers import Answer
from core.ledger.asked.answers import AnswerTaken, FormAnswer, NotForYou, Reply, WhichQuestion
from core.ledger.asked.in_short import asked_in_short
from core.ledger.asked.last_line import last_line, speaks_of_last
from core.ledger.asked.question import Question
from core.ledger.asked.reply import help_for, reply, without_record
from core.ledger.asked.thrown_words import thrown_without_count
from core.ledger.binding import Books
from core.ledger.command_words import ADD, Does, Word, find_word, may_use, word_alone, words_for
from core.ledger.crew import Crew, crew_of
from core.ledger.question import QuestionCode
from core.ledger.spoken import spoken
from core.ledger.typed_answers import answered_by, typed_answer
from core.ledger.who import find, plain
from core.model import Line, key
from core.reading.adding import pitcher_to_add
from core.reading.asking import Asked, Topic, ask
from core.reading.asking.asked import CHILD, ME
from core.reading.setup_words import setup_word


def asked_here(session: Session, line: Line, crew: Crew) -> Asked | None:
    """The question in a line, where questions are taken: a direct message, the staff channel,
    or a line that mentions the bot. Elsewhere the same words are talk among people.
    """
    text = spoken(session, line)
    posted = crew.local(line.posted_at)
    if not _is_for_the_bot(line, text, crew):
        return _of_own_arm(text, posted, crew)
    short = asked_in_short(text, posted.date(), crew)
    if short is not None and short.topic in _FIRST:
        return short
    return ask(text, posted, roster=crew.roster()) or short


#: What is no question of any other kind.
_FIRST = frozenset({Topic.ARM, Topic.STATS, Topic.DATA, Topic.DELETE, Topic.CONSENT})


def _is_for_the_bot(line: Line, text: str, crew: Crew) -> bool:
    """Whether the line mentions the bot, or stands where the bot is spoken to."""
    return text != line.text or crew.takes_orders(line)


def _of_own_arm(text: str, posted: datetime, crew: Crew) -> Asked | None:
    """A question about an arm in the channel of the log, from whoever may know: answered to
    the asker alone. "Can I throw today" is one, for who must not throw may ask it there.
    """
    short = asked_in_short(text, posted.date(), crew)
    if short is not None:
        return short if short.topic is Topic.ARM and _may_know(short.who, crew) else None
    if not crew.related(Relation.SELF):
        return None
    asked = ask(text, posted, roster=crew.roster())
    return asked if asked is not None and _is_whether_i_throw(asked) else None


def _is_whether_i_throw(asked: Asked) -> bool:
    return asked.who == (ME,) and asked.topic is Topic.ONE and not asked.unclear


def _may_know(who: tuple[str, ...], crew: Crew) -> bool:
    if who == (ME,):
        return bool(crew.related(Relation.SELF))
    if who == (CHILD,):
        return bool(crew.related(Relation.GUARDIAN))
    found = [arm for name in who for arm in find(name, crew.arms)]
    return bool(found) and all(may_see(crew.relations[arm.pitcher_id], View.ARM) for arm in found)


def says_a_word(session: Session, line: Line, crew: Crew) -> Word | None:
    """The word of the table that is all a line says, where it opens a form or the help.

    "Pain" alone is read as what it may be: a report. A word that is for others is taken by its
    own name alone: "game" is what a pitcher may answer.
    """
    text = spoken(session, line)
    if not _is_for_the_bot(line, text, crew):
        return None
    word = ADD if pitcher_to_add(text) is not None else word_alone(text)
    if word is None or word.name == "pain" or word.does not in {Does.FORM, Does.HELP}:
        return None
    by_name = plain(text.strip(" .!:/")) == word.name
    return word if may_use(word, crew) or by_name else None


def asks_in_short(session: Session, line: Line, crew: Crew) -> bool:
    """Whether a line is a question in a word or two, where words are taken.

    Such a word is no log there: "rest" alone asks when, elsewhere it is a day off.
    """
    text = spoken(session, line)
    if not _is_for_the_bot(line, text, crew):
        return _of_own_arm(text, crew.local(line.posted_at), crew) is not None
    return asked_in_short(text, crew.local(line.posted_at).date(), crew) is not None


def tells_of_throws(line: Line, crew: Crew) -> Word | None:
    """The word whose form takes what a direct message tells of without a number."""
    word = thrown_without_count(line.text) if line.direct else None
    return word if word is not None and may_use(word, crew) else None


def _typed(session: Session, line: Line) -> Reply | None:
    """What a line answered to a question of another line, or which questions it may answer."""
    if answered := answered_by(session, line):
        return AnswerTaken(key(answered[0]))
    typed = typed_answer(session, line)
    if typed is None:
        return None
    return WhichQuestion(tuple((key(one.line), one.number) for one in typed.open), typed.unsure)


def asks_to_set_up(session: Session, line: Line, crew: Crew) -> Word | None:
    """The word whose form the staff ask for in their own words: "how do I add players"."""
    text = spoken(session, line)
    if not crew.coaches or not _is_for_the_bot(line, text, crew):
        return None
    found = find_word(setup_word(text) or "")
    if found is None or not may_use(found[0], crew):
        return None
    return ADD if found[0].does is Does.HELP and not crew.is_staff else found[0]


def replies(session: Session, line: Line, books: Books) -> list[Reply]:
    """The answers to the questions of a line, in their order."""
    crew = crew_of(session, line)
    if crew is None:
        return []
    if (typed := _typed(session, line)) is not None:
        return [typed]
    if speaks_of_last(session, line):
        return [last_line(session, line)]
    word = says_a_word(session, line, crew)
    if word is not None and not may_use(word, crew):
        names = tuple(one.name for one in words_for(crew))
        return [NotForYou(word.name, names, bool(crew.related(Relation.GUARDIAN)))]
    if word is not None:
        is_form, text = word.does is Does.FORM, spoken(session, line)
        return [_form(session, line, word, crew) if is_form else help_for(crew, text)]
    found: list[Reply] = []
    asked = asked_here(session, line, crew)
    while asked is not None:
        posted = crew.local(line.posted_at)
        today, now = posted.date(), posted.time()
        question = Question(session, asked, crew, books, today, now, chosen_in(line))
        found += [reply(question), *without_record(question)]
        asked = asked.then
    if not found and (word := tells_of_throws(line, crew)) is not None:
        return [FormAnswer(word.name, word.target, asks_count=True)]
    if not found and (word := asks_to_set_up(session, line, crew)) is not None:
        is_form = word.does is Does.FORM
        return [FormAnswer(word.name, word.target) if is_form else help_for(crew)]
    return found


def chosen_in(line: Line) -> dict[str, int]:
    """Whom the names of a question mean that fit several, as chosen by a button since."""
    given = [Answer.from_json(one) for one in line.answers or ()]
    return {
        one.about: int(one.value)
        for one in given
        if one.code is QuestionCode.TWO_PEOPLE and one.value.isdecimal()
    }


def _form(session: Session, line: Line, word: Word, crew: Crew) -> FormAnswer:
    name = pitcher_to_add(spoken(session, line)) or ""
    known = find(name, crew.related(Relation.STAFF)) if name else []
    return FormAnswer(
        word.name, word.target, name, tuple((arm.pitcher_id, arm.name) for arm in known)
    )
