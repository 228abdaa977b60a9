"""What the teams' schedules owe at a moment, and when they owe again.

Whether a message is owed needs no memory of the last look: its slot names the week, and the
first process to write the slot has claimed it. So a process that was down makes up for what
has not lapsed, once.
"""

from collections.abc import Iterator
from datetime import datetime, time

from sqlmodel import Session, col, select

from core.due.due import Due
from core.due.post_game import post_game_notice, post_game_wanted
from core.due.spin_due import spin_notices, spin_wanted
from core.due.weekly import Weekly
from core.leaving import is_served
from core.ledger.notices import Notice, NoticeKind
from core.model import DAILY, OutboxMessage, ScheduleKind, Team, TeamSchedule, key
from core.store.once import insert_once

#: Until the staff set others: weekday (0 is Monday) and local time.
DEFAULTS: dict[ScheduleKind, tuple[int, time]] = {
    ScheduleKind.MONDAY_SUMMARY: (0, time(7)),
    ScheduleKind.SPIN: (2, time(16)),
    ScheduleKind.POST_GAME: (0, time(8, 30)),
}


def weekly_of(team: Team, schedule: TeamSchedule) -> Weekly:
    """The schedule in the team's zone, as it is now."""
    weekday = None if schedule.kind in DAILY else schedule.weekday
    return Weekly(weekday, schedule.at, team.time_zone)


def begin_schedules(session: Session, now: datetime) -> None:
    """Give every team the schedules that it lacks, from `now` (UTC) on."""
    known = set(session.exec(select(TeamSchedule.team_id, TeamSchedule.kind)).all())
    for team in session.exec(select(Team)):
        for kind, (weekday, at) in DEFAULTS.items():
            if (key(team), kind) not in known:
                values = {
                    "workspace_id": team.workspace_id,
                    "team_id": key(team),
                    "kind": kind,
                    "weekday": weekday,
                    "at": at,
                    "is_on": True,
                    "since": now,
                    "cues": [],
                }
                session.execute(insert_once(session, TeamSchedule, values))


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
        (weekly_of(team, schedule).next_due(now) for team, schedule in _rows(session)),
        default=None,
    )


def _candidates(session: Session, now: datetime) -> Iterator[Due]:
    for team, schedule in _rows(session):
        weekly = weekly_of(team, schedule)
        for at in weekly.standing(now):
            due = Due(team, schedule, at, weekly.week(at))
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
        .where(TeamSchedule.is_on, is_served(col(Team.workspace_id)))
        .order_by(col(TeamSchedule.id))
    )
    return list(session.exec(rows).all())
