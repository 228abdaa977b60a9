"""The buttons that say which pitcher a name in a question means."""

from bot.presses.press import Carried, Press
from core.audience import View, may_see
from core.ledger import Notice
from core.ledger.answers import Answer
from core.ledger.by_hand import ByHandError, Hand, Refusal, standing_line
from core.ledger.crew import load_crew
from core.ledger.lines import hear_again
from core.ledger.question import QuestionCode
from core.model import LineState, key

WHOM = "whom"


def _whom(hand: Hand, carried: Carried) -> list[Notice]:
    """Answer the question of a line for this pitcher: for its author, or the staff of its team."""
    line, pitcher = standing_line(hand, int(carried["line"])), int(carried["pitcher"])
    if line.state != LineState.QUESTION:
        raise ByHandError(Refusal.GONE)
    crew = load_crew(hand.session, hand.person, None)
    is_theirs = line.author_id == key(hand.person) or line.team_id in crew.coaches
    if not is_theirs or not may_see(crew.relations.get(pitcher, frozenset()), View.RECORD):
        raise ByHandError(Refusal.NOT_ALLOWED)
    chosen = Answer(QuestionCode.TWO_PEOPLE, str(pitcher), about=str(carried["typed"]))
    line.answers = [*line.answers, chosen.as_json()]
    return hear_again(hand.session, line, hand.person, hand.now)


PRESSES = (Press(WHOM, _whom),)
