"""Renders an outbox row when it is sent, from the record as it stands then."""

from collections.abc import Callable
from datetime import datetime
from typing import Any

from sqlmodel import Session, col, select

from bot.blocks.alerts import alert_parts
from bot.blocks.answer import answer_parts, broken_text, counts_parts
from bot.blocks.arm import copy_parts, guardian_parts, staff_parts, unreached_text, withdrawn_text
from bot.blocks.asked import asked_parts
from bot.blocks.asked_again import asked_again_parts
from bot.blocks.buttons import fix_and_undo
from bot.blocks.clock import CLOCK_KINDS, by_the_clock
from bot.blocks.club import CLUB_KINDS, club_parts
from bot.blocks.contact import for_staff
from bot.blocks.holds import clearance_text, thrown_text
from bot.blocks.home import home_view
from bot.blocks.message import Part, as_message
from bot.blocks.newcomers import add_button
from bot.blocks.orders import order_parts
from bot.blocks.trouble import channel_trouble_parts, person_trouble_parts
from bot.blocks.twice import two_counts_parts
from bot.blocks.unplaced import unplaced_parts
from bot.outbox.rendered import Reaction, Rendered
from bot.wording import answers, hints, holds, pain
from bot.wording.buttons import FORM_ERRORS
from bot.wording.contact import instead_of
from bot.wording.questions import ANSWERED
from bot.wording.unanswered import EMPTY_ROSTER
from core.contact.reach import is_silenced
from core.ledger import NoticeKind
from core.ledger.answer_notices import is_answered_elsewhere
from core.ledger.answers import GONE
from core.ledger.binding import Books
from core.ledger.corrections import undone_by
from core.ledger.crew import crew_of
from core.ledger.hints import hint_for
from core.ledger.notices import SILENT_STATES
from core.ledger.of_line import of_line
from core.ledger.people import guardians_of
from core.ledger.question import QuestionCode
from core.ledger.view import line_view
from core.model import Line, LineState, OutboxMessage, Person, Pitcher, PitcherTeam, key

#: Slack's names of the two reactions: a line that is in the log, a line with a question.
READ_REACTION, ASKED_REACTION = OURS = ("baseball", "question")


Parts = list[Part]


class Renderer:
    """Gives the content of each kind of message."""

    def __init__(self, books: Books) -> None:
        """Work out rest by `books`: from ids of rule books to the books."""
        self._books = books
        self._parts: dict[str, Callable[[Session, OutboxMessage, Line], Parts]] = {
            NoticeKind.ANSWER: self._answer,
            NoticeKind.ASKED_AGAIN: self._asked_again,
            NoticeKind.STAFF_COUNTS: self._staff_counts,
            NoticeKind.RULE_BROKEN: self._rule_broken,
            NoticeKind.TWO_COUNTS: _two_counts,
            NoticeKind.PAIN: _pain,
            NoticeKind.PAIN_WITHDRAWN: _as_one(_pain_withdrawn),
            NoticeKind.PAIN_UNPLACED: _pain_unplaced,
            NoticeKind.UNREACHED: _unreached,
            NoticeKind.PAIN_GONE: _as_one(_pain_gone),
            NoticeKind.DANGER: _as_one(_danger),
            NoticeKind.CLEARANCE: _as_one(_clearance),
            NoticeKind.THROWN_ON_HOLD: _as_one(_thrown_on_hold),
            NoticeKind.NO_CONTACT: _as_one(_no_contact),
            NoticeKind.STRANGER: _as_one(_stranger),
            NoticeKind.HINT: _hint,
        }

    def __call__(self, session: Session, row: OutboxMessage, now: datetime) -> Rendered | None:
        """What the message says at `now` (UTC); none when there is nothing to say."""
        if is_silenced(session, row, now.date()):
            return None
        if row.kind in CLOCK_KINDS:
            told = by_the_clock(session, row, self._books, now)
            return as_message(told) if any(part.text for part in told) else None
        if row.kind in CLUB_KINDS:
            club = club_parts(session, row, now)
            return as_message(club) if club else None
        if row.kind == NoticeKind.CHANNEL_TROUBLE:
            trouble = channel_trouble_parts(session, row)
            return as_message(trouble) if trouble else None
        if row.kind == NoticeKind.PERSON_TROUBLE:
            unreached = person_trouble_parts(session, row)
            return as_message(unreached) if unreached else None
        if row.kind == NoticeKind.ALERT:
            alert = alert_parts(session, row, now)
            return as_message(alert) if alert else None
        if row.kind == NoticeKind.HOME:
            return home_view(session, row, now, self._books)
        if row.kind == NoticeKind.REFUSED:
            return as_message([Part(FORM_ERRORS[row.slot.split("/")[1]])])
        line = session.get(Line, row.line_id) if row.line_id is not None else None
        if line is None:
            return None
        if row.kind == NoticeKind.REACTION:
            return None if line.deleted_at else Reaction(line.ts, _reaction(line), OURS)
        parts = self._parts[row.kind](session, row, line)
        return as_message(parts) if any(part.text for part in parts) else None

    def _answer(self, session: Session, row: OutboxMessage, line: Line) -> Parts:
        parts = self._answered(session, row, line)
        instead = row.person_id is not None and row.person_id != line.author_id
        if not parts or not instead:
            return parts
        return [Part(instead_of(_author(session, line), line.text)), *parts]

    def _answered(self, session: Session, row: OutboxMessage, line: Line) -> Parts:
        # A line that was filled in has its author for a channel, and is his to read.
        in_staff_channel = row.destination == line.channel and not line.direct
        viewer = None if in_staff_channel else _person(session, row)
        if in_staff_channel and is_answered_elsewhere(session, line, of_line(session, line)):
            if line.state == LineState.QUESTION and line.deleted_at is None:
                return [Part(answers.QUESTION_ANSWERED_ALONE)]
            return _if_shown(row, answers.ANSWERED_ALONE)
        if line.deleted_at is None:
            if line.state == LineState.QUESTION:
                return asked_parts(session, line, self._books)
            if line.state == LineState.ORDER:
                return order_parts(session, line, self._books)
            view = line_view(session, line, viewer, self._books)
            parts = answer_parts(session, view, viewer, READ_REACTION)
            if parts:
                return parts
        return _if_shown(row, answers.taken_back(undone_by(session, line)))

    def _asked_again(self, session: Session, row: OutboxMessage, _line: Line) -> Parts:
        asked = asked_again_parts(session, row, _person(session, row), self._books)
        return asked or _if_shown(row, ANSWERED)

    def _staff_counts(self, session: Session, row: OutboxMessage, line: Line) -> Parts:
        view = line_view(session, line, None, self._books, _of_team(session, row))
        parts = counts_parts(session, view, _author(session, line))
        return parts or _if_shown(row, answers.taken_back())

    def _rule_broken(self, session: Session, row: OutboxMessage, line: Line) -> Parts:
        view = line_view(session, line, None, self._books, _of_team(session, row))
        text = broken_text(view, _author(session, line))
        if not text:
            return _if_shown(row, answers.within_rules_again())
        return [Part(text, fix_and_undo(view))]


def _two_counts(session: Session, row: OutboxMessage, line: Line) -> Parts:
    parts = two_counts_parts(session, line, _of_team(session, row))
    return parts or _if_shown(row, answers.taken_back())


def _if_shown(row: OutboxMessage, text: str) -> Parts:
    """What a message says once its reason is gone; nothing where nobody has read it."""
    return [Part(text)] if row.ts else []


def _as_one(
    text: Callable[[Session, OutboxMessage, Line], str],
) -> Callable[[Session, OutboxMessage, Line], Parts]:
    return lambda session, row, line: [Part(text(session, row, line))]


def _reaction(line: Line) -> str | None:
    if line.state == LineState.READ:
        return READ_REACTION
    return None if line.state in SILENT_STATES else ASKED_REACTION


def _person(session: Session, row: OutboxMessage) -> Person | None:
    return session.get(Person, row.person_id) if row.person_id is not None else None


def _author(session: Session, line: Line) -> str:
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    return author.name if author is not None else "somebody"


def _pain(session: Session, row: OutboxMessage, line: Line) -> Parts:
    person = _person(session, row)
    if person is not None and row.team_id is not None:
        return copy_parts(session, line, _author(session, line), _of_team(session, row))
    if person is not None:
        return guardian_parts(session, line, person)
    return staff_parts(session, line, _author(session, line), _of_team(session, row))


def _unreached(session: Session, row: OutboxMessage, line: Line) -> Parts:
    pitchers = _of_team(session, row)
    if row.person_id is not None:
        report = staff_parts(session, line, _author(session, line), pitchers)
        return [Part(pain.NO_STAFF_CHANNEL), *report]
    return [Part(unreached_text(session, line, pitchers))]


def _of_team(session: Session, row: OutboxMessage) -> set[int]:
    """The pitchers of the team that a message is for."""
    links = select(PitcherTeam.pitcher_id).where(col(PitcherTeam.team_id) == row.team_id)
    return set(session.exec(links))


def _pain_withdrawn(session: Session, row: OutboxMessage, line: Line) -> str:
    return withdrawn_text(session, line, _person(session, row), _of_team(session, row))


def _pain_unplaced(session: Session, row: OutboxMessage, line: Line) -> Parts:
    return unplaced_parts(session, row, line, _author(session, line)) or _if_shown(
        row, answers.taken_back()
    )


def _pain_gone(session: Session, row: OutboxMessage, line: Line) -> str:
    if line.deleted_at is not None:
        return answers.taken_back() if row.ts else ""
    answers_given = [
        answer
        for answer in line.answers
        if answer["code"] == QuestionCode.PAIN_FREE
        and answer["value"] == GONE
        and _is_told(session, row, answer["pitcher_id"])
    ]
    return "\n".join(_gone_text(session, line, answer) for answer in answers_given)


def _is_told(session: Session, row: OutboxMessage, pitcher_id: int) -> bool:
    """Whether a message is for a team of this pitcher, or for a guardian of his."""
    if row.person_id is None:
        return pitcher_id in _of_team(session, row)
    return row.person_id in {key(one) for one in guardians_of(session, {pitcher_id})}


def _gone_text(session: Session, line: Line, answer: dict[str, Any]) -> str:
    name, by = session.get_one(Pitcher, answer["pitcher_id"]).name, _author(session, line)
    said_by = answer.get("said_by")
    return pain.sore_gone(name, said_by, by) if said_by else pain.gone(name, by)


def _danger(session: Session, _row: OutboxMessage, line: Line) -> str:
    # A line that was edited or deleted since must still be looked at.
    return pain.danger(_author(session, line))


def _clearance(session: Session, row: OutboxMessage, line: Line) -> str:
    return clearance_text(session, line, row) or (answers.taken_back() if row.ts else "")


def _thrown_on_hold(session: Session, row: OutboxMessage, line: Line) -> str:
    text = thrown_text(session, line, row, _author(session, line))
    return text or (holds.NO_LONGER_LOGGED if row.ts else "")


def _no_contact(session: Session, _row: OutboxMessage, line: Line) -> str:
    # It stands though its line be edited or deleted: a wish ends by its own words.
    return for_staff(session, line)


def _stranger(_session: Session, _row: OutboxMessage, _line: Line) -> str:
    return hints.STRANGER


def _hint(session: Session, _row: OutboxMessage, line: Line) -> Parts:
    crew = crew_of(session, line)
    said = Part(hints.HINTS[hint_for(line.text)])
    if crew is None or crew.is_staff or not crew.coaches:
        return [said]
    # Who coaches a team without pitchers is led to the first one.
    return [said, Part(EMPTY_ROSTER, (add_button(""),))]
