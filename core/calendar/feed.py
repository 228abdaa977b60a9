"""What a family, a pitcher or the staff may carry in a calendar of their own.

Games and practices of the teams; for each arm that the reader may see the record of, days of
rest by rule and days of no throwing. Why an arm must not throw is never told here: a calendar
is shown on screens that others see.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.calendar.days import entries
from core.ledger.asked.arms import Gathered, staff_of
from core.ledger.binding import Books
from core.ledger.people import teams_of
from core.model import (
    CalendarEntry,
    GuardianLink,
    Person,
    Pitcher,
    PitcherTeam,
    Team,
    TeamEvent,
    key,
)
from core.rest import RestError, answer
from core.rulebooks import RuleBookError

DAY = timedelta(days=1)
#: So far back and ahead the team's events are given, and the days of an arm.
BACK, AHEAD = timedelta(days=31), timedelta(days=400)
ARM_BACK, ARM_AHEAD = timedelta(days=14), timedelta(days=21)


class ItemKind(StrEnum):
    """What an item is about."""

    GAME = "game"
    PRACTICE = "practice"
    EVENT = "event"
    REST = "rest"
    NO_THROWING = "no throwing"


@dataclass(frozen=True, slots=True)
class Item:
    """One event: whole days from `first` to `last`, or from `starts` to `ends` (UTC).

    `uid` stays the same for the same event, `sequence` grows with each change of it.
    """

    uid: str
    kind: ItemKind
    whose: str
    first: date
    last: date
    title: str = ""
    starts: datetime | None = None
    ends: datetime | None = None
    sequence: int = 0
    changed_at: datetime | None = None
    cancelled: bool = False

    @property
    def is_of_an_arm(self) -> bool:
        """Whether it is about one pitcher, not about a team."""
        return self.kind in {ItemKind.REST, ItemKind.NO_THROWING}


def feed_of_team(session: Session, team: Team, now: datetime, books: Books) -> list[Item]:
    """For the staff: the team's events, and every arm with consent on file. `now` is UTC."""
    links = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    arms = session.exec(select(Pitcher).where(col(Pitcher.id).in_(links)).order_by(Pitcher.name))
    return _feed(session, [team], list(arms), now, books)


def feed_of_person(session: Session, person: Person, now: datetime, books: Books) -> list[Item]:
    """For a family, or a pitcher: the own children or himself alone, and their teams' events."""
    children = select(GuardianLink.pitcher_id).where(GuardianLink.person_id == key(person))
    own = (col(Pitcher.id).in_(children)) | (Pitcher.person_id == key(person))
    arms = list(session.exec(select(Pitcher).where(own).order_by(Pitcher.name)))
    return _feed(session, teams_of(session, {key(one) for one in arms}), arms, now, books)


def _feed(
    session: Session, teams: list[Team], arms: list[Pitcher], now: datetime, books: Books
) -> list[Item]:
    found = [item for team in teams for item in _of_team(session, team, now)]
    zone = ZoneInfo(teams[0].time_zone) if teams else ZoneInfo("UTC")
    today = now.astimezone(zone).date()
    counted = [one for one in arms if one.consent_on is not None]
    staff = staff_of(session, counted, today, today)
    for pitcher in counted:
        found += _of_arm(staff.on(pitcher, today, books), today)
    return found


def _of_team(session: Session, team: Team, now: datetime) -> Iterator[Item]:
    zone = ZoneInfo(team.time_zone)
    today = now.astimezone(zone).date()
    first, last = today - BACK, today + AHEAD
    standing = entries(session, [key(team)], first, last)
    for entry in standing:
        yield _of_entry(entry, team, zone, cancelled=False)
    yield from _called_off(session, team, zone, today, {key(one) for one in standing})
    events = select(TeamEvent).where(
        TeamEvent.team_id == key(team), col(TeamEvent.ends_on) >= first
    )
    for event in session.exec(events):
        yield Item(
            uid=f"event-{key(event)}-{team.workspace_id}@spinkeeper",
            kind=ItemKind.EVENT,
            whose=team.name,
            first=event.starts_on,
            last=event.ends_on,
            title=event.name,
        )


def _called_off(
    session: Session, team: Team, zone: ZoneInfo, today: date, standing: set[int]
) -> Iterator[Item]:
    """What is still to come and was called off: whoever has it already must hear of it."""
    rows = select(CalendarEntry).where(
        CalendarEntry.team_id == key(team),
        col(CalendarEntry.on) >= today,
        CalendarEntry.sequence > 0,
    )
    known = {
        (one.kind, one.on, one.at) for one in entries(session, [key(team)], today, today + AHEAD)
    }
    for entry in session.exec(rows.order_by(col(CalendarEntry.id))):
        if key(entry) not in standing and (entry.kind, entry.on, entry.at) not in known:
            yield _of_entry(entry, team, zone, cancelled=True)


def _of_entry(entry: CalendarEntry, team: Team, zone: ZoneInfo, *, cancelled: bool) -> Item:
    recurrence = f"-{entry.recurrence}" if entry.recurrence else ""
    return Item(
        uid=f"entry-{key(entry)}{recurrence}-{team.workspace_id}@spinkeeper",
        kind=ItemKind(entry.kind),
        whose=team.name,
        first=entry.on,
        last=entry.on,
        title=entry.title,
        starts=_instant(entry.on, entry.at, zone),
        ends=_instant(entry.on, entry.until, zone),
        sequence=entry.sequence,
        changed_at=entry.changed_at,
        cancelled=cancelled,
    )


def _instant(on: date, at: time | None, zone: ZoneInfo) -> datetime | None:
    utc = ZoneInfo("UTC")
    return datetime.combine(on, at, zone).astimezone(utc) if at is not None else None


def _of_arm(one: Gathered, today: date) -> Iterator[Item]:
    """An arm's days, each an item of its own: what a day is never changes under its UID."""
    if one.status.since is not None:
        first = max(one.status.since, today - ARM_BACK)
        yield from _day_by_day(one, ItemKind.NO_THROWING, _days(first, today + ARM_AHEAD))
    else:
        yield from _day_by_day(one, ItemKind.REST, sorted(_rest_days(one, today)))


def _day_by_day(one: Gathered, kind: ItemKind, days: Iterable[date]) -> Iterator[Item]:
    mark = kind.replace(" ", "-")
    pitcher = one.pitcher
    for on in days:
        uid = f"{mark}-{key(pitcher)}-{on:%Y%m%d}-{pitcher.workspace_id}@spinkeeper"
        yield Item(uid=uid, kind=kind, whose=pitcher.name, first=on, last=on)


def _rest_days(one: Gathered, today: date) -> set[date]:
    """The days on which he rests by rule: those that outings owe, and those up to the first date.

    None where no book answers, or where no date is known: a calendar names no guess.
    """
    if one.arm is None:
        return set()
    thrown_today = any(outing.on == today for outing in one.arm.outings)
    start = today + DAY if thrown_today else today
    try:
        found = answer(one.arm.books, one.arm.thrower, one.arm.outings, start)
    except (RestError, RuleBookError):
        return set()
    owed = {
        on
        for rest in found.rest
        if rest.days
        for on in _days(rest.on + DAY, rest.on + rest.days * DAY)
        if on >= today - ARM_BACK
    }
    if found.next_eligible is not None:
        owed |= {on for on in _days(start, found.next_eligible - DAY) if on <= today + ARM_AHEAD}
    return owed


def _days(first: date, last: date) -> list[date]:
    return [first + n * DAY for n in range((last - first).days + 1)]
