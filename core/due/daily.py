"""Once a local day the record of a team is looked at, for what the calendar alone moves."""

from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.due.last_day import last_day_notices
from core.leaving import is_served
from core.ledger.lapse import lapse_soreness
from core.ledger.notices import MORNING, Notice
from core.ledger.still_hurts import ask_again
from core.ledger.watch import watch_team
from core.model import DailyLook, Team, key
from core.store.once import insert_once

#: When the day's look comes due (local): the first moment at which a family may be written to.
LOOK_AT: time = MORNING


def teams_to_look_at(session: Session, now: datetime) -> list[Team]:
    """The teams whose look of this local day is due at `now` (UTC), and that nobody has had."""
    # Two local days at most are today somewhere on earth; a day more does no harm.
    recent = select(DailyLook).where(col(DailyLook.on) >= now.date() - timedelta(days=2))
    done = {(row.team_id, row.on) for row in session.exec(recent)}
    return [
        team
        for team in served_teams(session)
        if local_time(team, now).time() >= LOOK_AT
        and (key(team), local_time(team, now).date()) not in done
    ]


def look(session: Session, team: Team, now: datetime) -> list[Notice]:
    """Claim the day for this process and give what must be told; nothing where it is claimed.

    The claim and whatever follows from it are one transaction: a process that dies leaves the
    day to the next one.
    """
    values = {
        "team_id": key(team),
        "on": local_time(team, now).date(),
        "workspace_id": team.workspace_id,
        "at": now,
    }
    if insert_once(session, DailyLook, values, returning=col(DailyLook.team_id)) is None:
        return []
    return [
        *watch_team(session, team, now),
        *ask_again(session, team, now),
        *lapse_soreness(session, team, now),
        *last_day_notices(session, team, now),
    ]


def next_look(session: Session, now: datetime) -> datetime | None:
    """The first instant (UTC) after `now` at which a look comes due."""
    return min((next_at(team, LOOK_AT, now) for team in served_teams(session)), default=None)


def served_teams(session: Session) -> list[Team]:
    """The teams of every workspace that has the app."""
    served = select(Team).where(is_served(col(Team.workspace_id)))
    return list(session.exec(served.order_by(col(Team.id))))


def next_at(team: Team, at: time, now: datetime) -> datetime:
    """The first instant (UTC) after `now` at which it is `at` where the team is."""
    on = local_time(team, now).date()
    days = (on, on + timedelta(days=1))
    zone = ZoneInfo(team.time_zone)
    instants = (datetime.combine(day, at, zone).astimezone(now.tzinfo) for day in days)
    return next(instant for instant in instants if instant > now)


def local_time(team: Team, now: datetime) -> datetime:
    """`now` on the clocks where the team is."""
    return now.astimezone(ZoneInfo(team.time_zone))
