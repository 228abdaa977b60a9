"""When a team's schedule falls due: at its own time, or before the week's first practice."""

from datetime import UTC, date, datetime, time, timedelta

from sqlmodel import Session

from core.calendar.days import entries, is_game_day
from core.due.weekly import Weekly
from core.model import DAILY, EntryKind, Team, TeamSchedule, key

WEEK = timedelta(days=7)


def weekly_of(team: Team, schedule: TeamSchedule) -> Weekly:
    """The schedule in the team's zone, as it is now."""
    weekday = None if schedule.kind in DAILY else schedule.weekday
    return Weekly(weekday, schedule.at, team.time_zone)


def standing(session: Session, team: Team, schedule: TeamSchedule, now: datetime) -> list[datetime]:
    """The instants (UTC) that are not after `now` and have not lapsed, oldest first."""
    weekly = weekly_of(team, schedule)
    if schedule.before_practice is None:
        return weekly.standing(now)
    weeks = (_instant(session, team, schedule, monday) for monday in _mondays(weekly, now)[:2])
    return [at for at in weeks if at <= now < weekly.lapses(at)]


def following(session: Session, team: Team, schedule: TeamSchedule, now: datetime) -> datetime:
    """The first instant (UTC) after `now`, as the calendar stands."""
    weekly = weekly_of(team, schedule)
    if schedule.before_practice is None:
        return weekly.next_due(now)
    mondays = _mondays(weekly, now)[1:]
    weeks = [_instant(session, team, schedule, monday) for monday in mondays]
    return min(at for at in weeks if at > now)


def _mondays(weekly: Weekly, now: datetime) -> list[date]:
    """Those of the week before, of this one and of the two that follow."""
    this = weekly.week(now) if weekly.weekday is not None else weekly.local_day(now)
    return [this + n * WEEK for n in (-1, 0, 1, 2)]


def _instant(session: Session, team: Team, schedule: TeamSchedule, monday: date) -> datetime:
    minutes = schedule.before_practice or 0
    weekly = weekly_of(team, schedule)
    before = _before_practice(session, team, monday, timedelta(minutes=minutes), weekly)
    return before or weekly.in_week(monday)


def _before_practice(
    session: Session, team: Team, monday: date, span: timedelta, weekly: Weekly
) -> datetime | None:
    """So long before the week's first practice that is on no game day, out of quiet hours."""
    found = entries(session, [key(team)], monday, monday + WEEK - timedelta(days=1))
    for entry in found:
        if entry.kind != EntryKind.PRACTICE or entry.at is None:
            continue
        begins = datetime.combine(entry.on, entry.at, weekly.zone).astimezone(UTC) - span
        local = begins.astimezone(weekly.zone)
        by_day = time(team.quiet_to) <= local.time() < time(team.quiet_from)
        by_day = by_day and local.date() == entry.on
        if by_day and not is_game_day(session, [key(team)], entry.on):
            return begins
    return None
