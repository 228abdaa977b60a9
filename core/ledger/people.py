"""Who belongs to a pitcher: the teams he throws for and his guardians."""

from sqlmodel import Session, col, select

from core.model import GuardianLink, Person, PitcherTeam, Team


def teams_of(session: Session, pitcher_ids: set[int]) -> list[Team]:
    """The teams that any of these pitchers throws for."""
    links = select(PitcherTeam.team_id).where(col(PitcherTeam.pitcher_id).in_(pitcher_ids))
    return list(session.exec(select(Team).where(col(Team.id).in_(links)).order_by(col(Team.id))))


def guardians_of(session: Session, pitcher_ids: set[int]) -> list[Person]:
    """The guardians of any of these pitchers, those without a Slack account included."""
    links = select(GuardianLink.person_id).where(col(GuardianLink.pitcher_id).in_(pitcher_ids))
    people = select(Person).where(col(Person.id).in_(links)).order_by(col(Person.id))
    return list(session.exec(people))
