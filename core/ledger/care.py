"""Words beside the counts that call for an adult: "no pain" while pain stands, "don't tell",
and words of danger.
"""

from dataclasses import replace

from sqlmodel import Session

from core.ledger.answers import GONE, NOT_YET, Answers
from core.ledger.clearance import may_clear, pain_stands_since
from core.ledger.decide import Decision, Kept
from core.ledger.question import Question, QuestionCode
from core.model import Line, LineState, Pitcher
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
    since = pain_stands_since(session, pitcher)
    if since is None:
        return None
    may_say = line.author_id in may_clear(session, pitcher, one.on)
    question = Question(
        QuestionCode.PAIN_FREE if may_say else QuestionCode.PAIN_OPEN,
        about=pitcher.name,
        reason=since.isoformat(),
        values=(GONE, NOT_YET) if may_say else (),
        pitcher_id=one.arm.pitcher_id,
    )
    return None if may_say and answers.value(question) is not None else question
