"""What the teams' schedules owe at a moment, and when they owe again.

Whether a message is owed needs no memory of the last look: its slot names the week, and the
first process to write the slot has claimed it. So a process that was down makes up for what
has not lapsed, once.
"""

from collections.abc import Iterator
from datetime import datetime

from sqlmodel import Session, col, select

from core.due.due import Due
from core.due.instants import following, standing, weekly_of
from core.due.post_game import post_game_notice, post_game_wanted
from core.due.spin_due import spin_notices, spin_wanted
from core.leaving import is_served
from core.ledger.notices import Notice, NoticeKind
from core.ledger.schedule_rows import DEFAULTS, begin
from core.model import FOR_AN_OUTING, OutboxMessage, ScheduleKind, Team, TeamSchedule, key


def begin_schedules(session: Session, now: datetime) -> None:
    """Give every team the schedules that it lacks, from `now` (UTC) on."""
    known = set(session.exec(select(TeamSchedule.team_id, TeamSchedule.kind)).all())
    for team in session.exec(select(Team)):
        for kind in DEFAULTS:
            if (key(team), kind) not in known:
                begin(session, team, kind, now)


def lacks_schedules(session: Session) -> bool:
    """Whether a team has no schedules yet."""
    teams = session.exec(select(Team.id)).all()
    rows = session.exec(select(TeamSchedule.team_id)).all()
    return len(rows) < len(teams) * len(DEFAULTS)


def due_now(session: Session, now: datetime) -> list[Due]:
    """The schedules that are due at `now` (UTC), not lapsed, and not owed by anybody yet."""
    candidates = list(_candidates(session, now))
    slots = [one.slot for one in candidates]
    known = select(OutboxMessage.workspace_id, OutboxMessage.slot).where(
        col(OutboxMessage.slot).in_(slots)
    )
    owed = set(session.exec(known).all()) if slots else set()
    return [one for one in candidates if (one.team.workspace_id, one.slot) not in owed]


def notices_of(session: Session, due: Due) -> list[Notice]:
    """The messages that a schedule owes when it is due, the one with its own slot first."""
    if due.schedule.kind == ScheduleKind.SPIN:
        return spin_notices(session, due)
    if due.schedule.kind == ScheduleKind.POST_GAME:
        return [post_game_notice(session, due)]
    return [
        Notice(
            slot=due.slot,
            kind=NoticeKind.MONDAY_SUMMARY,
            destination=due.team.staff_channel,
            not_before=due.at,
            team_id=key(due.team),
        )
    ]


def next_due(session: Session, now: datetime) -> datetime | None:
    """The first instant (UTC) after `now` at which a schedule is due."""
    return min(
        (following(session, team, schedule, now) for team, schedule in _rows(session)),
        default=None,
    )


def _candidates(session: Session, now: datetime) -> Iterator[Due]:
    for team, schedule in _rows(session):
        for at in standing(session, team, schedule, now):
            due = Due(team, schedule, at, weekly_of(team, schedule).week(at))
            if at >= schedule.since and _is_wanted(session, due):
                yield due


def _is_wanted(session: Session, due: Due) -> bool:
    """Whether what is due has a reason on its day."""
    if due.schedule.kind == ScheduleKind.SPIN:
        return spin_wanted(session, due)
    return due.schedule.kind != ScheduleKind.POST_GAME or post_game_wanted(session, due)


def _rows(session: Session) -> list[tuple[Team, TeamSchedule]]:
    rows = (
        select(Team, TeamSchedule)
        .join(TeamSchedule, col(TeamSchedule.team_id) == col(Team.id))
        .where(
            TeamSchedule.is_on,
            col(TeamSchedule.kind).not_in(FOR_AN_OUTING),
            is_served(col(Team.workspace_id)),
        )
        .order_by(col(TeamSchedule.id))
    )
    return list(session.exec(rows).all())
