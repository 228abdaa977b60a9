"""From a question to its answer: may the asker know, who is meant, then the figures."""

from core.ledger.asked import about_one, about_staff, kept
from core.ledger.asked.answers import HelpAnswer, NoRecord, NotUnderstood, Refused, Reply
from core.ledger.asked.meaning import has_empty_roster, meant, refused
from core.ledger.asked.question import Question
from core.ledger.command_words import asks_for_all, first_words, words_for
from core.ledger.crew import Crew
from core.reading.asking import Topic

STAFF_TOPICS = frozenset({Topic.STAFF, Topic.LEFT, Topic.PLAN})


def help_for(crew: Crew, text: str = "") -> HelpAnswer:
    """The words that somebody may use; the first of them, unless `text` asks for all."""
    words = tuple(word.name for word in words_for(crew))
    first = () if asks_for_all(text) else tuple(first_words(crew))
    return HelpAnswer(words, crew.is_staff, first)


def without_record(question: Question) -> list[Reply]:
    """Said beside an answer of each further child of whom nothing is kept."""
    people = [] if question.asked.topic in _OF_NOBODY else meant(question)
    if isinstance(people, Refused | NotUnderstood) or not any(arm.consented for arm in people):
        return []
    return [NoRecord(arm.name) for arm in people if not arm.consented]


#: Answers that are not about a pitcher, or that hold for one without a record too.
_OF_NOBODY = frozenset({Topic.HELP, Topic.DELETE, Topic.CONSENT, *STAFF_TOPICS})


def reply(question: Question) -> Reply:
    """The answer to a question, a polite refusal, or what must be asked back."""
    asked = question.asked
    if asked.topic is Topic.HELP:
        return help_for(question.crew)
    of_staff = asked.topic in STAFF_TOPICS
    if of_staff and (not question.crew.is_staff or has_empty_roster(question.crew)):
        return refused(question, staff_only=True)
    if asked.unclear:
        return NotUnderstood(asked, unclear=asked.unclear)
    if asked.topic in STAFF_TOPICS:
        return about_staff.answer(question)
    if asked.topic is Topic.DELETE:
        return kept.how_to_delete(question)
    if asked.topic is Topic.CONSENT:
        return kept.consent(question)
    people = meant(question)
    if isinstance(people, Refused | NotUnderstood):
        return people
    known = [arm for arm in people if arm.consented]
    if not known:
        return NoRecord(people[0].name)
    people = known  # of the others `without_record` tells
    if asked.topic in {Topic.STATS, Topic.DATA}:
        return kept.answer(question, people)
    return about_one.answer(question, people)
