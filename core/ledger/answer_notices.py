"""The answer to a line: to the staff in whose channel it stands, else to the author alone."""

from dataclasses import replace
from datetime import datetime
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.contact.reach import speaks_instead
from core.ledger.asked.about_whom import arms_asked_about
from core.ledger.notices import Heard, Notice, NoticeKind
from core.ledger.of_line import OfLine
from core.ledger.open_again import asks_again_at, shown_for
from core.ledger.question import Question, asked_about
from core.model import (
    CoachLimit,
    Line,
    LineState,
    OutingBook,
    PitcherTeam,
    SpinPlan,
    Team,
    ThresholdSetting,
    key,
)

#: What an order may set for one pitcher.
_FOR_ONE: tuple[type[CoachLimit | OutingBook | ThresholdSetting | SpinPlan], ...] = (
    CoachLimit, OutingBook, ThresholdSetting, SpinPlan,
)  # fmt: skip


def answers_to_line(session: Session, heard: Heard) -> list[Notice]:
    """The answer, and its open questions once more on the next morning.

    Where a line of a staff channel speaks of another team's pitcher, its answer leaves the
    channel: it goes to the author, and what the channel showed before is brought up to date.
    """
    line = heard.line
    in_staff_channel = any(team.staff_channel == line.channel for team in heard.teams)
    if not in_staff_channel:
        answer = _to_author(session, heard, f"answer/{key(line)}")
        return [answer, *_asked_again(session, heard, answer)]
    here = _answer(heard, f"answer/{key(line)}", line.channel, line.thread_ts or line.ts)
    if line.state != LineState.QUESTION:  # a question has no reaction: its channel is told
        here = replace(here, only_if_shown=here.only_if_shown or heard.answered_elsewhere)
    private = _to_author(session, heard, f"answer/{key(line)}/author")
    private = replace(private, only_if_shown=private.only_if_shown or not heard.answered_elsewhere)
    asked = private if heard.answered_elsewhere else here
    return [here, private, *_asked_again(session, heard, asked)]


def answers_again(line_id: int, now: datetime) -> list[Notice]:
    """The answers to a line, where they are shown, brought up to date."""
    return [
        Notice(slot, NoticeKind.ANSWER, "", now, line_id=line_id, only_if_shown=True)
        for slot in (f"answer/{line_id}", f"answer/{line_id}/author")
    ]


def is_answered_elsewhere(session: Session, line: Line, rows: OfLine) -> bool:
    """Whether a line of a staff channel speaks of a pitcher of another team.

    Its answer names him, and the staff of this team may not read of him.
    """
    team = session.get(Team, line.team_id) if line.team_id is not None else None
    if team is None or team.staff_channel != line.channel:
        return False
    spoken_of = rows.arms | {row.pitcher_id for row in rows.clearances}
    spoken_of |= {one for question in line.questions for one in asked_about(question)}
    if line.state == LineState.ORDER:
        spoken_of |= _set_for(session, line)
    if line.state in {LineState.ORDER, LineState.QUESTION}:
        spoken_of |= arms_asked_about(session, line)
    if not spoken_of:
        return False
    of_team = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == line.team_id)
    return not spoken_of <= set(session.exec(of_team))


def _set_for(session: Session, line: Line) -> set[int]:
    """The pitchers for whom a line set something."""
    found: set[int] = set()
    for table in _FOR_ONE:
        ids = select(table.pitcher_id).where(col(table.line_id) == key(line))
        found |= {one for one in session.exec(ids) if one is not None}
    return found


def _to_author(session: Session, heard: Heard, slot: str) -> Notice:
    """The answer to the author; to the guardian alone who asked that he is not written to."""
    line = heard.line
    today = heard.now.astimezone(ZoneInfo(heard.time_zone)).date()
    guardian = speaks_instead(session, line.author_id, today)
    if guardian is not None:
        answer = _answer(heard, slot, guardian.slack_id or "", None)
        return replace(answer, person_id=key(guardian))
    # A direct conversation goes by its person's name: one order, one pace, one quiet time. A
    # thread of a channel is none of the author's direct conversation.
    return _answer(heard, slot, line.author_slack_id, line.thread_ts if line.direct else None)


def _answer(heard: Heard, slot: str, to: str, thread_ts: str | None) -> Notice:
    line = heard.line
    return Notice(
        slot=slot,
        kind=NoticeKind.ANSWER,
        destination=to,
        not_before=heard.now,
        line_id=key(line),
        person_id=line.author_id,
        thread_ts=thread_ts,
        only_if_shown=not heard.in_words or line.deleted_at is not None,
    )


def _asked_again(session: Session, heard: Heard, answer: Notice) -> list[Notice]:
    """The open questions of a line once more, at 08:00 of the day after it was posted.

    One message to a person asks for several lines: what was sent for them is brought up to date.
    """
    line = heard.line
    open_questions = any(Question.from_json(one).waits for one in line.questions)
    zone = ZoneInfo(heard.time_zone)
    at = asks_again_at(line.posted_at, zone)
    again = replace(
        answer,
        slot=f"again/{key(line)}",
        kind=NoticeKind.ASKED_AGAIN,
        not_before=at,
        only_if_shown=not open_questions or line.deleted_at is not None,
    )
    return [again, *(shown_for(session, again, line, zone) if heard.now >= at else [])]
