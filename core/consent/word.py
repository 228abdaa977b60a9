"""The words that end consent, typed to the bot by a guardian or an adult pitcher."""

import re
from dataclasses import dataclass

from sqlmodel import Session

from core.consent.asking import local_day
from core.consent.standing import may_consent
from core.ledger.crew import Crew
from core.ledger.question import Question, QuestionCode
from core.ledger.who import Arm, find
from core.model import Line, Pitcher, key

_WORD = re.compile(
    r"^\W*(?:i\s+)?(?:withdraw|revoke|take\s+back)\s+(?:(?:my|our|the)\s+)?consent"
    r"(?:\s+(?:for|of)\s+(?P<who>.+?))?\W*$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class ConsentWord:
    """Consent that a line withdraws for one pitcher, or the question that stands in its way."""

    arm: Arm | None
    question: Question | None = None


def consent_word(session: Session, line: Line, text: str, crew: Crew) -> ConsentWord | None:
    """Whether a line withdraws consent; taken in a direct message or the staff channel only.

    Whoever may not withdraw it is answered in the same words, whatever name was typed.
    """
    found = _WORD.match(text)
    if found is None or not crew.takes_orders(line):
        return None
    mine = [arm for arm in crew.arms if _may(session, line, crew, arm)]
    named = found["who"]
    meant = [arm for arm in find(named, crew.arms) if arm in mine] if named else mine
    if len(meant) == 1:
        return ConsentWord(meant[0])
    if len(meant) > 1:
        names = tuple(arm.name for arm in meant)
        return ConsentWord(None, Question(QuestionCode.WHO, choices=names))
    return ConsentWord(None, Question(QuestionCode.ONLY_FAMILY))


def _may(session: Session, line: Line, crew: Crew, arm: Arm) -> bool:
    pitcher = session.get_one(Pitcher, arm.pitcher_id)
    team = crew.teams[0] if crew.teams else None
    people = may_consent(session, pitcher, local_day(team, line.posted_at))
    return key(crew.person) in {key(person) for person in people}
