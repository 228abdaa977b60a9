"""Renders an outbox row when it is sent, from the record as it stands then."""

from collections.abc import Callable

from sqlmodel import Session, col, select

from bot.blocks.answer import answer_text, broken_text, counts_text
from bot.blocks.arm import guardian_text, staff_text, withdrawn_text
from bot.blocks.asked import asked_text
from bot.blocks.message import as_message
from bot.outbox.rendered import Reaction, Rendered
from bot.wording import answers, hints, pain
from bot.wording.words import listed, safe
from core.ledger import NoticeKind
from core.ledger.binding import Books
from core.ledger.hints import hint_for
from core.ledger.question import Question, QuestionCode
from core.ledger.view import line_view
from core.model import Line, LineState, OutboxMessage, Person, PitcherTeam, Team

#: Slack's names of the two reactions: a line that is in the log, a line with a question.
READ_REACTION, ASKED_REACTION = OURS = ("baseball", "question")


class Renderer:
    """Gives the content of each kind of message."""

    def __init__(self, books: Books) -> None:
        """Work out rest by `books`: from ids of rule books to the books."""
        self._books = books
        self._texts: dict[str, Callable[[Session, OutboxMessage, Line], str]] = {
            NoticeKind.ANSWER: self._answer,
            NoticeKind.STAFF_COUNTS: self._staff_counts,
            NoticeKind.RULE_BROKEN: self._rule_broken,
            NoticeKind.PAIN: _pain,
            NoticeKind.PAIN_WITHDRAWN: _pain_withdrawn,
            NoticeKind.PAIN_UNPLACED: _pain_unplaced,
            NoticeKind.KEPT_BACK: _kept_back,
            NoticeKind.STRANGER: _stranger,
            NoticeKind.HINT: _hint,
        }

    def __call__(self, session: Session, row: OutboxMessage) -> Rendered | None:
        """What the message says now; none when there is nothing to say."""
        line = session.get(Line, row.line_id) if row.line_id is not None else None
        if line is None:
            return None
        if row.kind == NoticeKind.REACTION:
            return None if line.deleted_at else Reaction(line.ts, _reaction(line), OURS)
        text = self._texts[row.kind](session, row, line)
        return as_message(text) if text else None

    def _answer(self, session: Session, row: OutboxMessage, line: Line) -> str:
        in_staff_channel = row.destination == line.channel and not line.direct
        viewer = None if in_staff_channel else _person(session, row)
        if line.state == LineState.QUESTION and line.deleted_at is None:
            return asked_text(session, line, self._books)
        if line.deleted_at is None:
            view = line_view(session, line, viewer, self._books)
            text = answer_text(session, view, viewer, READ_REACTION)
            if text:
                return text
        return answers.taken_back() if row.ts else ""

    def _staff_counts(self, session: Session, row: OutboxMessage, line: Line) -> str:
        view = line_view(session, line, None, self._books)
        text = counts_text(session, view, _author(session, line))
        return text or (answers.taken_back() if row.ts else "")

    def _rule_broken(self, session: Session, row: OutboxMessage, line: Line) -> str:
        view = line_view(session, line, None, self._books)
        text = broken_text(view, _author(session, line))
        return text or (answers.within_rules_again() if row.ts else "")


def _reaction(line: Line) -> str | None:
    if line.state == LineState.READ:
        return READ_REACTION
    silent = {LineState.TALK, LineState.QUESTION, LineState.STRANGER}
    return None if line.state in silent else ASKED_REACTION


def _person(session: Session, row: OutboxMessage) -> Person | None:
    return session.get(Person, row.person_id) if row.person_id is not None else None


def _author(session: Session, line: Line) -> str:
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    return author.name if author is not None else "somebody"


def _pain(session: Session, row: OutboxMessage, line: Line) -> str:
    person = _person(session, row)
    if person is not None:
        return guardian_text(session, line, person)
    links = select(PitcherTeam.pitcher_id).where(col(PitcherTeam.team_id) == row.team_id)
    return staff_text(session, line, _author(session, line), set(session.exec(links)))


def _pain_withdrawn(session: Session, row: OutboxMessage, line: Line) -> str:
    return withdrawn_text(session, line, _person(session, row))


def _pain_unplaced(session: Session, row: OutboxMessage, line: Line) -> str:
    if QuestionCode.PAIN_UNPLACED in {one["code"] for one in line.questions}:
        return pain.unplaced(_author(session, line))
    return answers.taken_back() if row.ts else ""


def _kept_back(_session: Session, row: OutboxMessage, line: Line) -> str:
    questions = [Question.from_json(stored) for stored in line.questions]
    names = [safe(one.about) for one in questions if one.code is QuestionCode.NO_CONSENT]
    if names:
        return hints.kept_back(listed(names))
    return answers.taken_back() if row.ts else ""


def _stranger(session: Session, _row: OutboxMessage, line: Line) -> str:
    teams = session.exec(select(Team.id).where(Team.workspace_id == line.workspace_id)).first()
    return hints.NO_TEAM if teams is None else hints.STRANGER


def _hint(_session: Session, _row: OutboxMessage, line: Line) -> str:
    return hints.HINTS[hint_for(line.text)]
