"""Words beside the counts that call for an adult: "don't tell", and words of danger."""

from dataclasses import replace

from core.ledger.decide import Decision
from core.ledger.question import Question, QuestionCode
from core.model import LineState
from core.reading.wishes import asks_for_secrecy, names_the_staff, sounds_dangerous

#: Who is asked to look at words of danger: never the ones whom the line names.
LOOKED_AT_BY_STAFF, LOOKED_AT_BY_FAMILY = "staff", "family"


def with_care(text: str, decision: Decision) -> Decision:
    """The decision with what the author must be told in answer to such words.

    A wish for secrecy is answered where the line reports an arm; danger is answered always,
    and a line that is otherwise talk is kept from passing unseen.
    """
    told: list[Question] = []
    unplaced = any(one.code is QuestionCode.PAIN_UNPLACED for one in decision.questions)
    speaks_of_an_arm = unplaced or any(one.entry.pain or one.entry.tired for one in decision.kept)
    if speaks_of_an_arm and asks_for_secrecy(text):
        told.append(Question(QuestionCode.SECRECY))
    state = decision.state
    if sounds_dangerous(text):
        who = LOOKED_AT_BY_FAMILY if names_the_staff(text) else LOOKED_AT_BY_STAFF
        told.append(Question(QuestionCode.DANGER, reason=who))
        state = LineState.ASKED if state == LineState.TALK else state
    return replace(decision, questions=(*told, *decision.questions), state=state)
