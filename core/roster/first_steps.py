"""The first coach: whoever the team file names, or an admin of the workspace who opens Home."""

from datetime import datetime, timedelta
from typing import Final

from sqlmodel import Session, col, select

from core.ledger.crew import find_person
from core.ledger.notices import Notice, NoticeKind
from core.model import STAFF_ROLES, Errand, Line, Matter, Membership, Person, Team, key

#: The matter of somebody who may become the first coach; `data` has what Slack said of him.
FIRST: Final = "first coach"
#: The errand that asks Slack who it was that opened Home.
WHO_OPENED: Final = "who opened home"
#: What Slack said of somebody is asked again after this.
HOLDS: Final = timedelta(days=1)


def opened_home(session: Session, workspace_id: str, slack_id: str, now: datetime) -> list[Notice]:
    """What follows when somebody opens Home: staff are welcomed once, with what comes next.

    Where there is no team yet, Slack is asked soon whether it is an admin of the workspace.
    """
    person = find_person(session, workspace_id, slack_id)
    if person is not None and _coaches(session, person):
        # Who set the team up himself was welcomed then.
        return [] if first_matter(session, person) is not None else [welcome(person, now)]
    if not has_team(session, workspace_id):
        ask_who(session, workspace_id, slack_id, now)
    return []


def is_set_up(session: Session, line: Line) -> bool:
    """Whether the workspace of a line has a team yet."""
    return line.team_id is not None or has_team(session, line.workspace_id)


def has_team(session: Session, workspace_id: str) -> bool:
    """Whether any team is set up in a workspace."""
    teams = select(Team.id).where(Team.workspace_id == workspace_id)
    return session.exec(teams).first() is not None


def welcome(person: Person, now: datetime) -> Notice:
    """The welcome of somebody who coaches; one for each person."""
    return Notice(
        slot=f"{NoticeKind.WELCOME}/{key(person)}",
        kind=NoticeKind.WELCOME,
        destination=person.slack_id or "",
        not_before=now,
        person_id=key(person),
    )


def may_found(session: Session, person: Person, now: datetime) -> bool:
    """Whether somebody may make a team: a coach, or where there is none yet, an admin."""
    if _coaches(session, person):
        return True
    matter = first_matter(session, person)
    return (
        not has_team(session, person.workspace_id)
        and matter is not None
        and bool(matter.data.get("admin"))
        and now - matter.opened_at <= HOLDS
    )


def first_matter(session: Session, person: Person) -> Matter | None:
    """What Slack said last of somebody who opened Home while there was no team."""
    rows = select(Matter).where(Matter.kind == FIRST, Matter.person_id == key(person))
    return session.exec(rows.order_by(col(Matter.id).desc())).first()


def _coaches(session: Session, person: Person) -> bool:
    roles = select(Membership.role).where(Membership.person_id == key(person))
    return any(role in STAFF_ROLES for role in session.exec(roles))


def ask_who(
    session: Session, workspace_id: str, slack_id: str, now: datetime, wrote: str = ""
) -> None:
    """Ask Slack soon whether somebody is an admin; `wrote` is the ts of a line to be answered."""
    asked = session.exec(
        select(Errand).where(
            Errand.workspace_id == workspace_id,
            Errand.kind == WHO_OPENED,
            col(Errand.done_at).is_(None),
        )
    )
    data = {"who": slack_id, "wrote": wrote}
    if all(one.data != data for one in asked):
        session.add(Errand(workspace_id=workspace_id, kind=WHO_OPENED, data=data, not_before=now))
