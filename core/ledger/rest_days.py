"""Who is reminded of rest days after an outing, and when: one message a family and moment.

Whether any rest is owed is seen when the message is rendered; where none is, it is dropped.
"""

from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import BindParameter, bindparam
from sqlmodel import Session, col, select

from core.audience import Occasion, Told, who_is_told
from core.calendar.days import is_game_day
from core.ledger.logged import Logged
from core.ledger.notices import MORNING, Heard, Notice, NoticeKind, quiet_until
from core.ledger.of_line import OfLine
from core.ledger.reminders import is_first
from core.ledger.schedule_rows import timings
from core.model import OutboxMessage, Outing, Person, Reminder, ScheduleKind, Team, key

EVENING_NUDGE = time(19, 30)
HALF_HOUR = timedelta(minutes=30)
#: Kinds of outing after which nobody is reminded.
NO_REST = frozenset({"off", "catch"})
#: No book asks for more rest days than this after one outing; older lines remind nobody.
LONGEST = timedelta(days=14)
#: For so long after it left a message may still be looked up, and is kept true.
STILL_READ = timedelta(days=8)


def rest_days(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """What is owed to the guardians about the outings of a line, as it stands now.

    A message that speaks of the pitcher already is brought up to date instead.
    """
    if Told.GUARDIANS not in who_is_told(Occasion.REST_DAYS).told:
        return []
    by_slot: dict[str, Notice] = {}
    pitchers = sorted(rows.arms)
    about = {period_of(outing) for outing in rows.outings}
    for notice in [
        *(one for pitcher_id in pitchers for one in _known(session, heard, pitcher_id, about)),
        *(notice for one in rows.outings for notice in _new(session, heard, one, rows)),
    ]:
        by_slot.setdefault(notice.slot, notice)
    return list(by_slot.values())


def nudge_at(
    on: date,
    now: datetime,
    time_zone: str,
    *,
    game_tomorrow: bool,
    at: time = MORNING,
    evening_at: time | None = EVENING_NUDGE,
) -> datetime:
    """When a family is reminded of the outing of a local day (UTC), logged at `now` (UTC).

    At `evening_at` the same day when a game is known for tomorrow, else at `at` the next
    morning. A line that comes later reminds at the next half hour outside quiet hours, so that
    what is typed in one sitting comes as one message.
    """
    zone = ZoneInfo(time_zone)
    if game_tomorrow and evening_at is not None:
        evening = datetime.combine(on, evening_at, zone).astimezone(UTC)
        if now <= evening:
            return evening
    morning = datetime.combine(on + timedelta(days=1), at, zone).astimezone(UTC)
    if now <= morning:
        return morning
    since_hour = timedelta(
        minutes=now.minute % 30, seconds=now.second, microseconds=now.microsecond
    )
    return quiet_until(now - since_hour + HALF_HOUR, time_zone)


def period_of(outing: Outing | Logged) -> str:
    """What a reminder is about: the outing, under one name for all lines that tell of it."""
    return f"outing/{outing.joins or key(outing)}"


_ABOUT: BindParameter[Any] = bindparam("about", expanding=True)
_SLOTS = (
    select(Reminder.slot)
    .join(OutboxMessage, col(OutboxMessage.slot) == col(Reminder.slot))
    .where(
        col(Reminder.kind).in_([NoticeKind.REST_DAYS, NoticeKind.LAST_REST_DAY]),
        col(Reminder.pitcher_id) == bindparam("pitcher"),
        col(OutboxMessage.workspace_id) == bindparam("workspace"),
        col(OutboxMessage.ts).is_not(None) | col(Reminder.period).in_(_ABOUT),
        col(OutboxMessage.not_before) >= bindparam("since"),
    )
    .distinct()
)


def _known(session: Session, heard: Heard, pitcher_id: int, about: set[str]) -> Iterator[Notice]:
    """The messages about these outings, and those about the pitcher that may still be read.

    Another one that waits is rendered when it leaves, and needs nobody to say so.
    """
    wanted = {
        "pitcher": pitcher_id,
        "workspace": heard.line.workspace_id,
        "about": list(about),
        "since": heard.now - STILL_READ,
    }
    for slot in session.exec(_SLOTS, params=wanted):
        yield _notice(slot, "", heard.now, only_if_shown=True)


def _new(session: Session, heard: Heard, outing: Outing, rows: OfLine) -> Iterator[Notice]:
    teams = rows.teams_of({outing.pitcher_id})
    oldest = heard.now.date() - LONGEST
    if outing.withdrawn_at or outing.kind in NO_REST or not teams or outing.on < oldest:
        return
    team = teams[0]
    tomorrow = outing.on + timedelta(days=1)
    game_tomorrow = is_game_day(session, [key(one) for one in teams], tomorrow)
    set_to = timings(session, key(team))
    morning, evening = set_to[ScheduleKind.REST_DAYS], set_to[ScheduleKind.REST_EVENING]
    if not morning.is_on:
        return
    at = nudge_at(
        outing.on,
        heard.now,
        team.time_zone,
        game_tomorrow=game_tomorrow,
        at=morning.at,
        evening_at=evening.at if evening.is_on else None,
    )
    for person in rows.guardians_of({outing.pitcher_id}):
        slot = f"{NoticeKind.REST_DAYS}/{key(person)}/{at:%Y-%m-%dT%H:%M}"
        if person.slack_id is not None and is_first(
            session, NoticeKind.REST_DAYS, person, outing.pitcher_id,
            period=period_of(outing), slot=slot,
        ):  # fmt: skip
            yield _notice(slot, person.slack_id, at, team=team, person=person)


def _notice(
    slot: str,
    destination: str,
    at: datetime,
    *,
    team: Team | None = None,
    person: Person | None = None,
    only_if_shown: bool = False,
) -> Notice:
    return Notice(
        slot=slot,
        kind=NoticeKind.REST_DAYS,
        destination=destination,
        not_before=at,
        team_id=key(team) if team is not None else None,
        person_id=key(person) if person is not None else None,
        only_if_shown=only_if_shown,
    )
