"""The second message about rest, on the last rest day, for the families who asked for it."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.audience import Occasion, Told, who_is_told
from core.ledger.asked.arms import Gathered, gather
from core.ledger.binding import Books, books_at_hand
from core.ledger.last_day import wants_last_day
from core.ledger.notices import Notice, NoticeKind
from core.ledger.people import guardians_of
from core.ledger.reminders import is_first
from core.ledger.schedule_rows import timing
from core.model import (
    LastDayWish,
    OutboxMessage,
    Person,
    Pitcher,
    PitcherTeam,
    Reminder,
    ScheduleKind,
    Team,
    key,
)
from core.rest import RestError, answer
from core.rulebooks import RuleBookError

DAY = timedelta(days=1)


class LastDayTold(StrEnum):
    """What is said of one child."""

    LAST = "last"
    #: Something was logged since, so it is the last rest day no more.
    CHANGED = "changed"
    NOT_CLEARED = "not cleared"


@dataclass(frozen=True, slots=True)
class ChildLastDay:
    """One child of a message, and what is said of him."""

    pitcher: Pitcher
    told: LastDayTold


def last_day_notices(session: Session, team: Team, now: datetime) -> Iterator[Notice]:
    """What is owed this local day to the families of a team who asked for it."""
    rest_days = timing(session, key(team), ScheduleKind.REST_DAYS)
    if not rest_days.is_on or Told.GUARDIANS not in who_is_told(Occasion.LAST_REST_DAY).told:
        return
    wishes = select(LastDayWish.person_id).where(LastDayWish.workspace_id == team.workspace_id)
    asked = set(session.exec(wishes.distinct()))
    if not asked:
        return
    zone = ZoneInfo(team.time_zone)
    today = now.astimezone(zone).date()
    at = datetime.combine(today, rest_days.at, zone).astimezone(UTC)
    for pitcher in _arms(session, team):
        readers = [one for one in guardians_of(session, {key(pitcher)}) if key(one) in asked]
        if not readers:
            continue
        arm = gather(session, pitcher, today, books_at_hand(session))
        if not _is_last_day(arm, today):
            continue
        for person in readers:
            if person.slack_id is None or not wants_last_day(session, key(person)):
                continue
            if _reads_of_it_today(session, person, pitcher, today, zone):
                continue
            yield _notice(session, person, pitcher, team, today, at)


def last_day_of(
    session: Session, row: OutboxMessage, now: datetime, books: Books
) -> list[ChildLastDay]:
    """The children of a message, as the record stands; none once its day is over."""
    team = session.get(Team, row.team_id)
    on = date.fromisoformat(row.slot.split("/")[2])
    if team is None or now.astimezone(ZoneInfo(team.time_zone)).date() != on:
        return []
    rows = select(Reminder).where(
        Reminder.slot == row.slot, Reminder.workspace_id == row.workspace_id
    )
    found: list[ChildLastDay] = []
    for one in session.exec(rows.order_by(col(Reminder.id))):
        pitcher = session.get_one(Pitcher, one.pitcher_id)
        arm = gather(session, pitcher, on, books)
        if _is_last_day(arm, on):
            found.append(ChildLastDay(pitcher, LastDayTold.LAST))
        elif row.ts is not None:
            stopped = arm.status.bars_pitching
            told = LastDayTold.NOT_CLEARED if stopped else LastDayTold.CHANGED
            found.append(ChildLastDay(pitcher, told))
    return found


def _arms(session: Session, team: Team) -> list[Pitcher]:
    links = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    rows = select(Pitcher).where(col(Pitcher.id).in_(links), col(Pitcher.consent_on).is_not(None))
    return list(session.exec(rows.order_by(col(Pitcher.id))))


def _is_last_day(one: Gathered, today: date) -> bool:
    """Whether he rests today by rule and no longer tomorrow; never of an arm that is stopped."""
    threw = any(outing.on == today for outing in one.outings)
    if one.arm is None or one.status.bars_pitching or threw:
        return False
    try:
        rest = answer(one.arm.books, one.arm.thrower, one.arm.outings, today)
    except (RestError, RuleBookError):
        return False
    return not rest.eligible and rest.next_eligible == today + DAY


def _reads_of_it_today(
    session: Session, person: Person, pitcher: Pitcher, today: date, zone: ZoneInfo
) -> bool:
    """Whether the first message about these rest days comes this very day."""
    rows = (
        select(OutboxMessage.not_before)
        .join(Reminder, col(Reminder.slot) == col(OutboxMessage.slot))
        .where(
            Reminder.kind == NoticeKind.REST_DAYS,
            Reminder.person_id == key(person),
            Reminder.pitcher_id == key(pitcher),
            OutboxMessage.workspace_id == person.workspace_id,
        )
    )
    return any(at.astimezone(zone).date() == today for at in session.exec(rows))


def _notice(
    session: Session, person: Person, pitcher: Pitcher, team: Team, on: date, at: datetime
) -> Notice:
    slot = f"{NoticeKind.LAST_REST_DAY}/{key(person)}/{on}"
    is_first(
        session, NoticeKind.LAST_REST_DAY, person, key(pitcher), period=f"last/{on}", slot=slot
    )
    return Notice(
        slot=slot,
        kind=NoticeKind.LAST_REST_DAY,
        destination=person.slack_id or "",
        not_before=at,
        team_id=key(team),
        person_id=key(person),
    )
