"""A word typed where a question is open is its answer: in its thread, or to the bot.

The author of the line alone answers so. With several questions open it is asked which.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta

from sqlmodel import Session, col, select

from core.ledger.answer_words import fits_any, is_bare, is_unsure, kind_of, value_of
from core.ledger.answers import Answer
from core.ledger.question import Question, QuestionCode
from core.model import Line, LineState, key
from core.reading import UnreadReason

#: A question is answered by a word for so long after its line.
WITHIN = timedelta(days=3)


@dataclass(frozen=True, slots=True)
class Open:
    """A question that waits: its line, and its place among the line's questions."""

    line: Line
    number: int
    question: Question


@dataclass(frozen=True, slots=True)
class TypedAnswer:
    """What a line answers: one question with a value, or any of several, which is asked."""

    open: tuple[Open, ...]
    value: str | None = None
    unsure: bool = False


def typed_answer(session: Session, line: Line) -> TypedAnswer | None:
    """What a line answers to the questions open where it stands; none where it answers nothing."""
    if len(line.text) > _LONGEST or not (line.direct or line.thread_ts):
        return None
    unsure = is_unsure(line.text)
    waiting = _open(session, line)
    fits = [(one, value) for one in waiting if (value := value_of(one.question, line.text))]
    if unsure and waiting:
        return TypedAnswer(tuple(waiting), unsure=True)
    if len(fits) == 1 and (len(waiting) == 1 or not fits_any(line.text)):
        return TypedAnswer((fits[0][0],), fits[0][1])
    if fits:
        return TypedAnswer(tuple(one for one, _ in fits))
    return TypedAnswer(tuple(waiting)) if waiting and is_bare(line.text) else None


#: Characters; an answer is a word or two.
_LONGEST = 40


def take(line: Line, typed: TypedAnswer) -> Line | None:
    """Keep the answer with the line that asked; gives that line, to be read again."""
    if typed.value is None:
        return None
    (one,) = typed.open
    asked = one.question
    answer = Answer(asked.code, typed.value, asked.about, asked.pitcher_id, by_line=key(line))
    one.line.answers = [*one.line.answers, answer.as_json()]
    return one.line


def answered_by(session: Session, line: Line) -> list[Line]:
    """The lines whose questions this line answered."""
    return [one for one in _near(session, line, None) if _is_by(one, key(line))]


def take_back(session: Session, line: Line) -> list[Line]:
    """Forget what this line answered; gives the lines that ask again."""
    lines = answered_by(session, line)
    for one in lines:
        one.answers = [answer for answer in one.answers if answer.get("by_line") != key(line)]
        session.add(one)
    return lines


def _is_by(line: Line, line_id: int) -> bool:
    return any(answer.get("by_line") == line_id for answer in line.answers)


def _open(session: Session, line: Line) -> list[Open]:
    return [
        Open(one, number, question)
        for one in _near(session, line, LineState.ASKED)
        for number, question in enumerate(map(Question.from_json, one.questions))
        if question.waits and can_be_typed(question)
    ]


def can_be_typed(question: Question) -> bool:
    """Whether a word or a number answers it."""
    vague = question.code is QuestionCode.UNREAD and question.reason == UnreadReason.VAGUE
    return bool(question.values) or (vague and kind_of(question.about) is not None)


def _near(session: Session, line: Line, state: LineState | None) -> Sequence[Line]:
    """The author's lines of the last days, in the same thread where it stands in one."""
    rows = select(Line).where(
        Line.workspace_id == line.workspace_id,
        Line.author_id == line.author_id,
        Line.id != line.id,
        col(Line.posted_at) >= line.posted_at - WITHIN,
        col(Line.posted_at) <= line.posted_at,
        col(Line.deleted_at).is_(None),
    )
    if state is not None:
        rows = rows.where(Line.state == state)
    if not line.direct:
        in_thread = (Line.ts == line.thread_ts) | (Line.thread_ts == line.thread_ts)
        rows = rows.where(Line.channel == line.channel, in_thread)
    return session.exec(rows.order_by(col(Line.posted_at), col(Line.id))).all()
