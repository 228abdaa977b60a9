"""A coach writes down that the family says soreness is gone: of soreness alone, never of pain."""

from sqlmodel import Session, col, select

from core.audience import Relation
from core.ledger.answers import GONE, Answer
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.clearance import arm_status, may_clear
from core.ledger.crew import load_crew
from core.ledger.lines import hear_again
from core.ledger.notices import Notice
from core.ledger.question import QuestionCode
from core.model import Line, Person, Pitcher, key


def sore_pitcher(hand: Hand, pitcher_id: int) -> tuple[Pitcher, list[Person]]:
    """The pitcher whose soreness stands, and who may say that it is gone: his guardians, or he
    himself from 18 on. Raises `ByHandError` for others than his staff, and where it stands no
    more or pain does.
    """
    crew = load_crew(hand.session, hand.person, None)
    if Relation.STAFF not in crew.relations.get(pitcher_id, frozenset()):
        raise ByHandError(Refusal.NOT_ALLOWED)
    pitcher = hand.session.get_one(Pitcher, pitcher_id)
    today = crew.local(hand.now).date()
    if not arm_status(hand.session, pitcher, today).sore:
        raise ByHandError(Refusal.NO_LONGER)
    return pitcher, _people(hand.session, may_clear(hand.session, pitcher, today))


def say_gone(hand: Hand, line: Line, pitcher: Pitcher, said_by: Person) -> list[Notice]:
    """Answer "is it gone?" in a line "no pain" of the staff's, with whose word it is."""
    answer = Answer(QuestionCode.PAIN_FREE, GONE, pitcher.name, key(pitcher), said_by.name)
    line.answers = [*line.answers, answer.as_json()]
    return hear_again(hand.session, line, hand.person, hand.now)


def _people(session: Session, ids: set[int]) -> list[Person]:
    rows = select(Person).where(col(Person.id).in_(list(ids))).order_by(col(Person.id))
    return list(session.exec(rows))
