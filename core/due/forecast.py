"""What a team's schedules will send in the coming week, and to whom, as things stand."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.calendar.days import is_game_day
from core.due.due import Due
from core.due.instants import following, weekly_of
from core.due.post_game import post_game_notice
from core.due.spin_due import spin_readers, spin_wanted
from core.ledger.notices import NoticeKind
from core.model import (
    FOR_AN_OUTING,
    MessageState,
    OutboxMessage,
    Person,
    ScheduleKind,
    Team,
    TeamSchedule,
    key,
)

WEEK, DAY = timedelta(days=7), timedelta(days=1)
#: What already waits for its hour and is told in advance; whatever speaks of pain is not.
WAITING = (NoticeKind.REST_DAYS, NoticeKind.LAST_REST_DAY, NoticeKind.SPIN_REPS)


@dataclass(frozen=True, slots=True)
class Coming:
    """One message to come: when (UTC), what, and to whom: a channel or people by name.

    `is_sure` is False where it is sent only if there is something to say; `barred` tells that
    it falls due on a day on which it is not sent.
    """

    at: datetime
    kind: str
    channel: str = ""
    people: tuple[str, ...] = ()
    is_sure: bool = True
    barred: bool = False


def forecast(session: Session, team: Team, now: datetime) -> list[Coming]:
    """The messages of the next seven days, in order of time. `now` is UTC."""
    rows = session.exec(
        select(TeamSchedule)
        .where(TeamSchedule.team_id == key(team), TeamSchedule.is_on)
        .order_by(col(TeamSchedule.id))
    )
    found = [*_waiting(session, team, now)]
    for schedule in rows:
        found += _of_schedule(session, team, schedule, now)
    return sorted(found, key=lambda one: (one.at, one.kind))


def _of_schedule(
    session: Session, team: Team, schedule: TeamSchedule, now: datetime
) -> Iterator[Coming]:
    if schedule.kind in FOR_AN_OUTING:
        return
    if schedule.kind == ScheduleKind.POST_GAME:
        yield from _post_game(session, team, schedule, now)
        return
    at = following(session, team, schedule, now)
    if at > now + WEEK:
        return
    if schedule.kind == ScheduleKind.MONDAY_SUMMARY:
        yield Coming(at, schedule.kind, channel="staff")
        return
    due = Due(team, schedule, at, weekly_of(team, schedule).week(at))
    if not spin_wanted(session, due):
        yield Coming(at, schedule.kind, channel="log", barred=True)
        return
    yield Coming(at, schedule.kind, channel="log")
    people = tuple(one.name for one in spin_readers(session, due))
    if people:
        yield Coming(at, NoticeKind.SPIN_REPS, people=people, is_sure=False)


def _post_game(
    session: Session, team: Team, schedule: TeamSchedule, now: datetime
) -> Iterator[Coming]:
    zone = ZoneInfo(team.time_zone)
    today = now.astimezone(zone).date()
    for on in (today + n * DAY for n in range(8)):
        at = datetime.combine(on, schedule.at, zone).astimezone(UTC)
        if not now < at <= now + WEEK or not is_game_day(session, [key(team)], on - DAY):
            continue
        notice = post_game_notice(session, Due(team, schedule, at, on))
        person = session.get(Person, notice.person_id) if notice.person_id else None
        people = (person.name,) if person is not None else ()
        channel = "" if people else "staff"
        yield Coming(at, schedule.kind, channel=channel, people=people, is_sure=False)


def _waiting(session: Session, team: Team, now: datetime) -> Iterator[Coming]:
    """Messages to families that wait for their hour; each is rendered when it leaves."""
    rows = (
        select(OutboxMessage, Person.name)
        .join(Person, col(Person.id) == col(OutboxMessage.person_id))
        .where(
            OutboxMessage.team_id == key(team),
            OutboxMessage.state == MessageState.QUEUED,
            col(OutboxMessage.kind).in_(WAITING),
            col(OutboxMessage.ts).is_(None),
            col(OutboxMessage.not_before) > now,
            col(OutboxMessage.not_before) <= now + WEEK,
        )
        .order_by(col(OutboxMessage.not_before), Person.name)
    )
    by_time: dict[tuple[datetime, str], list[str]] = {}
    for row, name in session.exec(rows):
        by_time.setdefault((row.not_before, row.kind), []).append(name)
    for (at, kind), names in by_time.items():
        yield Coming(at, kind, people=tuple(names), is_sure=False)
