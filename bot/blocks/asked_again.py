"""What is still open the next morning: one message to one person, with each question once."""

from collections.abc import Sequence
from zoneinfo import ZoneInfo

from sqlmodel import Session

from bot.blocks.answer import questions_of
from bot.blocks.message import Part
from bot.wording.questions import EDIT, PRESS_OR_TYPE, asked_again, you_wrote
from core.ledger.binding import Books
from core.ledger.clearance import arm_status
from core.ledger.open_again import asked_together
from core.ledger.question import Question, QuestionCode
from core.ledger.view import LineView, line_team, line_view
from core.model import Line, OutboxMessage, Person, Pitcher

#: Questions about one outing: two lines with the same words may mean two of them.
_OF_AN_OUTING = frozenset(
    {QuestionCode.KIND, QuestionCode.DAY, QuestionCode.SAME, QuestionCode.SURE}
)
Asked = tuple[str, ...]


def asked_again_parts(
    session: Session, row: OutboxMessage, viewer: Person | None, books: Books
) -> list[Part]:
    """The questions still open of all lines that this message asks for; empty when none is."""
    parts: list[Part] = []
    known: set[Asked] = set()
    how = EDIT
    zone = _zone(session, row)
    for line in asked_together(session, row, zone):
        view = line_view(session, line, viewer, books)
        told = _not_said(session, view, known)
        if not any(part.text not in {EDIT, PRESS_OR_TYPE} for part in told):
            continue
        parts += [Part(_heading(view, zone, first=not parts)), *told]
        how = PRESS_OR_TYPE if PRESS_OR_TYPE in {part.text for part in told} else how
    asked = [part for part in parts if part.text not in {EDIT, PRESS_OR_TYPE}]
    return [*asked, Part(how)] if asked else []


def _zone(session: Session, row: OutboxMessage) -> ZoneInfo:
    team = line_team(session, session.get_one(Line, row.line_id))
    return ZoneInfo(team.time_zone if team is not None else "UTC")


def _heading(view: LineView, zone: ZoneInfo, *, first: bool) -> str:
    if not first:
        return you_wrote(view.line.text)
    return asked_again(view.line.posted_at.astimezone(zone).date(), view.line.text)


def _not_said(session: Session, view: LineView, known: set[Asked]) -> Sequence[Part]:
    """The questions of a line that no line before it asks, and that still wait for a word."""
    if not any(one.waits for one in view.questions):
        return []
    new: set[int] = set()
    for number, one in enumerate(view.questions):
        asked = _same(one, view.line)
        if asked not in known and not _is_settled(session, view, one):
            known.add(asked)
            new.add(number)
    return questions_of(session, view, new)


def _same(asked: Question, line: Line) -> Asked:
    of = " ".join(line.text.casefold().split()) if asked.code in _OF_AN_OUTING else ""
    return (asked.code, asked.about, asked.reason, str(asked.pitcher_id), *asked.values, of)


def _is_settled(session: Session, view: LineView, asked: Question) -> bool:
    """Whether pain that is asked after was ended by another line's answer."""
    if asked.code is not QuestionCode.PAIN_FREE or asked.pitcher_id is None:
        return False
    pitcher = session.get_one(Pitcher, asked.pitcher_id)
    return arm_status(session, pitcher, view.line.posted_at.date()).since is None
