"""The messages of the first steps: the welcome, and how a team's channels stand."""

from datetime import datetime

from sqlmodel import Session, col, select

from bot.blocks.message import Button, Part
from bot.forms.form import opens
from bot.presses.press import presses
from bot.wording import first_steps as say
from core.model import Matter, OutboxMessage, Person, Team, key
from core.roster.channels import IN
from core.roster.people import coached_teams

NEXT = (
    Button(say.ADD_PITCHER, opens("pitcher"), {}, main=True),
    Button(say.MANY, opens("roster_paste"), {}),
    Button(say.ROLES, opens("roles"), {}),
    Button(say.SETTINGS, opens("team_settings"), {}),
)


def welcome_parts(session: Session, row: OutboxMessage, _now: datetime) -> list[Part]:
    """The welcome of a coach, or of somebody where no team is set up."""
    person = session.get(Person, row.person_id) if row.person_id is not None else None
    if person is None:
        return [Part(say.NO_TEAM)]
    ids = coached_teams(session, person)
    names = session.exec(select(Team.name).where(col(Team.id).in_(ids)).order_by(Team.name)).all()
    return [Part(say.welcome(names), NEXT)] if names else []


def first_parts(session: Session, _row: OutboxMessage, matter: Matter) -> list[Part]:
    """The same in a direct message."""
    return admin_parts(session, matter)


def admin_parts(session: Session, matter: Matter) -> list[Part]:
    """What an admin can do while there is no team."""
    if not matter.data.get("admin"):
        return []
    teams = select(Team.id).where(Team.workspace_id == matter.workspace_id)
    if session.exec(teams).first() is not None:
        return [Part(say.ADMIN_DONE)]
    return [Part(say.ADMIN, (Button(say.SET_UP, opens("new_team"), {}, main=True),))]


def channels_parts(session: Session, _row: OutboxMessage, matter: Matter) -> list[Part]:
    """How the channels stand, with the next steps."""
    team = session.get(Team, matter.team_id)
    if team is None or "log" not in matter.data:
        return []
    log, staff = str(matter.data["log"]), str(matter.data["staff"])
    text = say.channels(team.name, log, staff, matter.data["place"])
    again = Button(say.LOOK_AGAIN, presses("look_again"), {"matter": key(matter)})
    return [Part(text, NEXT if log == staff == IN else (again, *NEXT))]
