"""Words beside the counts that call for an adult: "don't tell", and words of danger."""

from dataclasses import replace

from core.ledger.decide import Decision
from core.ledger.question import PAIN_UNPLACED, Question, QuestionCode
from core.model import LineState
from core.reading import UnreadReason
from core.reading.urgent import surely_of_the_body, urgency
from core.reading.wishes import asks_for_secrecy, names_the_staff, sounds_dangerous

#: Who is asked to look at words of danger: never the ones whom the line names.
LOOKED_AT_BY_STAFF, LOOKED_AT_BY_FAMILY = "staff", "family"


def with_care(text: str, decision: Decision) -> Decision:
    """The decision with what the author must be told in answer to such words.

    A wish for secrecy is answered where the line reports an arm; danger is answered always,
    and a line that is otherwise talk is kept from passing unseen.
    """
    told: list[Question] = []
    speaks_of_an_arm = PAIN_UNPLACED in decision.questions or any(
        one.entry.pain or one.entry.tired for one in decision.kept
    )
    if speaks_of_an_arm and asks_for_secrecy(text):
        told.append(Question(QuestionCode.SECRECY))
    state = decision.state
    if _urgent_but_unplaced(text, decision) and not speaks_of_an_arm:
        told.append(PAIN_UNPLACED)
        state = LineState.ASKED if state in _UNSEEN else state
    if sounds_dangerous(text):
        who = LOOKED_AT_BY_FAMILY if names_the_staff(text) else LOOKED_AT_BY_STAFF
        told.append(Question(QuestionCode.DANGER, reason=who))
        state = LineState.ASKED if state == LineState.TALK else state
    return replace(decision, questions=(*told, *decision.questions), state=state)


_UNSEEN = frozenset({LineState.TALK, LineState.READ})


def _urgent_but_unplaced(text: str, decision: Decision) -> bool:
    """Whether words of urgency stand on no record: adults hear of them all the same."""
    if any(one.entry.pain for one in decision.kept) or urgency(text) is None:
        return False
    unclear = any(one.reason == UnreadReason.UNCLEAR_PAIN for one in decision.questions)
    return unclear or surely_of_the_body(text)
