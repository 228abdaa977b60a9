"""Words beside the counts that call for an adult: "no pain" while pain stands, "don't tell",
and words of danger.
"""

from dataclasses import replace

from sqlmodel import Session

from core.ledger.answers import GONE, NOT_YET, Answers
from core.ledger.clearance import arm_status, may_clear
from core.ledger.decide import Decision, Kept
from core.ledger.question import PAIN_UNPLACED, Question, QuestionCode
from core.model import Line, LineState, Pitcher
from core.reading import UnreadReason
from core.reading.urgent import surely_of_the_body, urgency
from core.reading.wishes import asks_for_secrecy, names_the_staff, sounds_dangerous

#: Who is asked to look at words of danger: never the ones whom the line names.
#: What stands where it is no pain that anybody of the family may end.
HELD, SORE = "held", "sore"
LOOKED_AT_BY_STAFF, LOOKED_AT_BY_FAMILY = "staff", "family"


def with_care(text: str, decision: Decision, *, direct: bool = False) -> Decision:
    """The decision with what the author must be told in answer to such words.

    A wish for secrecy is answered where the line reports an arm, and in a `direct` message, where
    it follows on one; danger is answered always,
    and a line that is otherwise talk is kept from passing unseen.
    """
    told: list[Question] = []
    unplaced = any(one.code is QuestionCode.PAIN_UNPLACED for one in decision.questions)
    speaks_of_an_arm = unplaced or any(one.entry.pain or one.entry.tired for one in decision.kept)
    state = decision.state
    if (speaks_of_an_arm or direct) and asks_for_secrecy(text):
        told.append(Question(QuestionCode.SECRECY))
        state = LineState.NOT_ALLOWED if state == LineState.TALK else state
    if _urgent_but_unplaced(text, decision) and not speaks_of_an_arm:
        told.append(PAIN_UNPLACED)
        state = LineState.ASKED if state in _UNSEEN else state
    if sounds_dangerous(text):
        who = LOOKED_AT_BY_FAMILY if names_the_staff(text) else LOOKED_AT_BY_STAFF
        told.append(Question(QuestionCode.DANGER, reason=who))
        state = LineState.ASKED if state == LineState.TALK else state
    return replace(decision, questions=(*told, *decision.questions), state=state)


def with_open_pain(session: Session, line: Line, decision: Decision, answers: Answers) -> Decision:
    """The decision with the question that "no pain" calls for while a report of pain stands."""
    asked = [
        question
        for one in decision.kept
        if one.entry.pain == () and (question := _open_pain(session, line, one, answers))
    ]
    if not asked:
        return decision
    asks = any(question.code is QuestionCode.PAIN_FREE for question in asked)
    state = LineState.ASKED if asks and decision.state == LineState.READ else decision.state
    return replace(decision, questions=(*decision.questions, *asked), state=state)


def _open_pain(session: Session, line: Line, one: Kept, answers: Answers) -> Question | None:
    pitcher = session.get_one(Pitcher, one.arm.pitcher_id)
    status = arm_status(session, pitcher, one.on)
    if status.since is None:
        return None
    # A hold ends by a clinician's clearance alone, so that nobody is asked about it.
    may_say = not status.held and line.author_id in may_clear(session, pitcher, one.on)
    question = Question(
        QuestionCode.PAIN_FREE if may_say else QuestionCode.PAIN_OPEN,
        about=pitcher.name,
        reason=HELD if status.held else SORE if status.sore else "",
        values=(GONE, NOT_YET) if may_say else (),
        pitcher_id=one.arm.pitcher_id,
    )
    return None if may_say and answers.value(question) is not None else question


_UNSEEN = frozenset({LineState.TALK, LineState.READ})


def _urgent_but_unplaced(text: str, decision: Decision) -> bool:
    """Whether words of urgency stand on no record: adults hear of them all the same."""
    if any(one.entry.pain for one in decision.kept) or urgency(text) is None:
        return False
    unclear = any(one.reason == UnreadReason.UNCLEAR_PAIN for one in decision.questions)
    return unclear or surely_of_the_body(text)
