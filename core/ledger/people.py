"""Who belongs to a pitcher: the teams he throws for and his guardians."""

from collections.abc import Collection
from typing import Any

from sqlalchemy import BindParameter, bindparam
from sqlmodel import Session, col, select

from core.model import STAFF_ROLES, GuardianLink, Membership, Person, PitcherTeam, Role, Team, key

_PITCHERS: BindParameter[Any] = bindparam("pitchers", expanding=True)
_THROWS_FOR = select(PitcherTeam.team_id).where(col(PitcherTeam.pitcher_id).in_(_PITCHERS))
_TEAMS = select(Team).where(col(Team.id).in_(_THROWS_FOR)).order_by(col(Team.id))
_LINKED = select(GuardianLink.person_id).where(col(GuardianLink.pitcher_id).in_(_PITCHERS))
_GUARDIANS = select(Person).where(col(Person.id).in_(_LINKED)).order_by(col(Person.id))


def teams_of(session: Session, pitcher_ids: Collection[int]) -> list[Team]:
    """The teams that any of these pitchers throws for."""
    return list(session.exec(_TEAMS, params={"pitchers": list(pitcher_ids)}))


def guardians_of(session: Session, pitcher_ids: Collection[int]) -> list[Person]:
    """The guardians of any of these pitchers, those without a Slack account included."""
    return list(session.exec(_GUARDIANS, params={"pitchers": list(pitcher_ids)}))


def second_adult(session: Session, team: Team, author_id: int | None) -> Person | None:
    """Another of the staff than the one who reads a team's notices first; none where none is.

    The author of a line knows what it says, so that he is no second adult for it.
    """
    rows = session.exec(
        select(Person, Membership.role)
        .join(Membership, col(Membership.person_id) == col(Person.id))
        .where(Membership.team_id == key(team), col(Membership.role).in_(STAFF_ROLES))
        .order_by(col(Person.id))
    ).all()
    by_rank = sorted(rows, key=lambda row: row[1] != Role.COACH)
    staff = list(dict.fromkeys(key(person) for person, _ in by_rank if person.slack_id))
    others = [one for one in staff if one != author_id]
    chosen = others if author_id in staff else others[1:]
    return session.get(Person, chosen[0]) if chosen else None
