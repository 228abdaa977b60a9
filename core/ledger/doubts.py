"""Counts far outside a pitcher's own history are asked about before they count."""

from collections.abc import Sequence
from dataclasses import replace

from sqlmodel import Session

from core.ledger.answers import Answers
from core.ledger.decide import Decision, Kept
from core.ledger.history import standing_outings
from core.ledger.question import Question, QuestionCode
from core.model import Line, LineState, key
from core.reading import Detail

#: So many counted outings of the kind make a history.
ENOUGH = 3
#: A count is far outside when it is over twice the most so far, and by this many more.
FAR, MORE = 2, 40
YES = "yes"


def with_doubts(session: Session, line: Line, decision: Decision, answers: Answers) -> Decision:
    """The decision with counts withheld that are far outside the pitcher's history.

    A count that was confirmed counts; until then the outing owes rest as uncounted.
    """
    questions = list(decision.questions)
    kept = [_doubted(session, line, one, answers, questions) for one in decision.kept]
    asked = len(questions) > len(decision.questions)
    state = LineState.ASKED if asked else decision.state
    return replace(decision, kept=tuple(kept), questions=tuple(questions), state=state)


def _doubted(
    session: Session, line: Line, one: Kept, answers: Answers, questions: list[Question]
) -> Kept:
    pitches = one.entry.pitches
    if pitches is None or not _far_outside(pitches, _counts(session, line, one)):
        return one
    question = Question(
        QuestionCode.SURE,
        about=one.arm.name,
        values=(YES,),
        pitcher_id=one.arm.pitcher_id,
        detail=Detail("pitches", pitches),
    )
    if answers.value(question) is not None or answers.put_right(one.arm.pitcher_id):
        return one
    questions.append(question)
    return replace(one, entry=replace(one.entry, pitches=None, about=False))


def _counts(session: Session, line: Line, one: Kept) -> list[int]:
    """The pitcher's counts of that kind from other lines."""
    return [
        outing.pitches
        for outing in standing_outings(session, one.arm.pitcher_id)
        if outing.kind == one.kind and outing.pitches and outing.line_id != key(line)
    ]


def _far_outside(pitches: int, before: Sequence[int]) -> bool:
    most = max(before, default=0)
    return len(before) >= ENOUGH and pitches > FAR * most and pitches - most >= MORE
