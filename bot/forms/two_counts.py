"""The form in which the staff say whether two counts are one outing, opened from Home."""

from typing import Any

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, modal, paragraph
from bot.wording import twice as say
from bot.wording.buttons import CHOICES
from bot.wording.questions import question
from core.audience import Relation
from core.ledger import Notice
from core.ledger.answers import Answer
from core.ledger.by_hand import ByHandError, Hand, Refusal, choose
from core.ledger.crew import load_crew
from core.ledger.question import Question, QuestionCode
from core.ledger.twins import SAME, SECOND
from core.model import Line

NAME = "two_counts"


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    asked = _asked(hand, carried)
    if asked is None:
        return None
    options = [(one, CHOICES[one]) for one in (SAME, SECOND)]
    told = paragraph(question(asked))
    choice = inputs.choice("same", say.FIELD, options, SAME)
    return modal(NAME, carried, [told, choice], title=say.TITLE)


def _asked(hand: Hand, carried: Carried) -> Question | None:
    """The question that the form carries, while it is open and of a pitcher of the staff's."""
    line = hand.session.get(Line, int(carried["line"]))
    place = int(carried["question"])
    if line is None or not 0 <= place < len(line.questions):
        return None
    asked = Question.from_json(line.questions[place])
    relations = load_crew(hand.session, hand.person, None).relations
    is_staff = Relation.STAFF in relations.get(asked.pitcher_id or 0, frozenset())
    return asked if asked.code is QuestionCode.SAME and is_staff else None


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    asked = _asked(hand, filled.carried)
    if asked is None:
        raise ByHandError(Refusal.GONE)
    value = SECOND if inputs.read_choice(filled.values, "same") == SECOND else SAME
    answer = Answer(asked.code, value, asked.about, asked.pitcher_id)
    return choose(hand, int(filled.carried["line"]), answer)


FORM = Form(NAME, _view, _save, {"": "same"})
