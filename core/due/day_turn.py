"""At a team's midnight its Home tabs come to the new day: "rest done" moves with the date."""

from datetime import datetime, time
from typing import Any, cast

from sqlalchemy import CursorResult, or_, update
from sqlmodel import Session, col

from core.due.daily import local_time, next_at, served_teams
from core.model import Team, key

#: What Home shows counts calendar days, so it is another one from midnight on (local).
MIDNIGHT = time(0)


def teams_of_new_day(session: Session, now: datetime) -> list[Team]:
    """The teams whose Home tabs nobody has brought yet to the local day of `now` (UTC)."""
    return [
        team
        for team in served_teams(session)
        if team.homes_on is None or team.homes_on < local_time(team, now).date()
    ]


def begin_day(session: Session, team: Team, now: datetime) -> bool:
    """Claim the local day of `now` (UTC) for this process; false where another one has it.

    The claim and what follows from it are one transaction. A team that moves west lives a date
    twice, and it is claimed once.
    """
    today = local_time(team, now).date()
    claimed = session.execute(
        update(Team)
        .where(
            col(Team.id) == key(team),
            or_(col(Team.homes_on).is_(None), col(Team.homes_on) < today),
        )
        .values(homes_on=today)
        .execution_options(synchronize_session=False)
    )
    return cast(CursorResult[Any], claimed).rowcount == 1


def next_day(session: Session, now: datetime) -> datetime | None:
    """The first instant (UTC) after `now` at which a team's day turns."""
    return min((next_at(team, MIDNIGHT, now) for team in served_teams(session)), default=None)
