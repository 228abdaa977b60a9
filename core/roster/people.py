"""People by their Slack id: known ones are found, others are begun and their names learnt."""

from collections.abc import Iterable
from datetime import datetime

from sqlmodel import Session, select

from core.ledger.crew import find_person
from core.model import STAFF_ROLES, Errand, Membership, Person, Role, key

#: The errand that asks Slack for the names of people who were only given as ids.
LEARN_NAMES = "learn names"


def people_of(
    session: Session, workspace_id: str, slack_ids: Iterable[str], now: datetime
) -> list[Person]:
    """The people behind these accounts; the names of new ones are asked for soon."""
    people, new = [], []
    for slack_id in dict.fromkeys(slack_ids):
        person = find_person(session, workspace_id, slack_id)
        if person is None:
            person = Person(workspace_id=workspace_id, slack_id=slack_id, name="")
            session.add(person)
            new.append(slack_id)
        people.append(person)
    session.flush()
    if new:
        session.add(
            Errand(
                workspace_id=workspace_id, kind=LEARN_NAMES, data={"people": new}, not_before=now
            )
        )
    return people


def is_staff(session: Session, person: Person, team_id: int) -> bool:
    """Whether somebody coaches this team."""
    return bool({Role(role) for role in roles_on(session, person, team_id)} & STAFF_ROLES)


def roles_on(session: Session, person: Person, team_id: int) -> set[str]:
    """The roles that somebody was given on a team."""
    rows = select(Membership.role).where(
        Membership.team_id == team_id, Membership.person_id == key(person)
    )
    return set(session.exec(rows))


def is_coach_anywhere(session: Session, person: Person) -> bool:
    """Whether somebody has the coach's own role on any team: assistants have not."""
    rows = select(Membership.id).where(
        Membership.person_id == key(person), Membership.role == Role.COACH
    )
    return session.exec(rows).first() is not None


def coached_teams(session: Session, person: Person) -> list[int]:
    """The teams (ids) that somebody coaches, oldest first."""
    rows = select(Membership.team_id, Membership.role).where(Membership.person_id == key(person))
    return sorted({team_id for team_id, role in session.exec(rows) if role in STAFF_ROLES})
