"""The messages of the first steps: the welcome, and how a team's channels stand."""

from collections.abc import Sequence
from datetime import datetime

from sqlmodel import Session, col, select

from bot.blocks.message import Button, Part
from bot.forms.form import opens
from bot.presses.press import presses
from bot.wording import first_steps as say
from core.consent.asking import local_day
from core.consent.standing import may_consent
from core.home.steps import Steps
from core.model import Matter, OutboxMessage, Person, Pitcher, Team, key
from core.roster.channels import IN
from core.roster.first_steps import first_matter
from core.roster.people import coached_teams, is_coach_anywhere

ROSTER = (
    Button(say.ADD_PITCHER, opens("pitcher"), {}, main=True),
    Button(say.MANY, opens("roster_paste"), {}),
)
#: So many pitchers without consent have a button of their own.
MOST_PAPERS = 5
#: What the coach alone may do, and no assistant.
FOR_COACH = (
    Button(say.ROLES, opens("roles"), {}),
    Button(say.SETTINGS, opens("team_settings"), {}),
)


def next_steps(session: Session, person: Person) -> tuple[Button, ...]:
    """What somebody of the staff may do next."""
    return (*ROSTER, *FOR_COACH) if is_coach_anywhere(session, person) else ROSTER


def welcome_parts(session: Session, row: OutboxMessage, _now: datetime) -> list[Part]:
    """The welcome of a coach, or of somebody where no team is set up."""
    person = session.get(Person, row.person_id) if row.person_id is not None else None
    if person is None:
        return [Part(say.NO_TEAM)]
    ids = coached_teams(session, person)
    names = session.exec(select(Team.name).where(col(Team.id).in_(ids)).order_by(Team.name)).all()
    if names:
        return [Part(say.welcome(names), next_steps(session, person))]
    matter = first_matter(session, person)
    return admin_parts(session, matter) if matter is not None else []


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


def channels_parts(session: Session, row: OutboxMessage, matter: Matter) -> list[Part]:
    """How the channels stand, with the next steps."""
    team = session.get(Team, matter.team_id)
    if team is None or "log" not in matter.data:
        return []
    log, staff = str(matter.data["log"]), str(matter.data["staff"])
    text = say.channels(team.name, log, staff, matter.data["place"])
    again = Button(say.LOOK_AGAIN, presses("look_again"), {"matter": key(matter)})
    reader = session.get(Person, row.person_id) if row.person_id is not None else None
    steps = next_steps(session, reader) if reader is not None else ()
    return [Part(text, steps if log == staff == IN else (again, *steps))]


def steps_parts(team: Team, steps: Steps) -> list[Part]:
    """The open steps of a team's set-up, each with its button."""
    parts = []
    if steps.channels is not None:
        data = steps.channels.data
        again = Button(say.LOOK_AGAIN, presses("look_again"), {"matter": key(steps.channels)})
        todo = say.channel_steps(str(data["log"]), str(data["staff"]), data["place"])
        parts.append(Part("\n".join(todo), (again,)))
    if steps.empty_roster:
        parts.append(Part(say.first_pitcher(team.name), ROSTER))
    if steps.no_consent:
        names = [one.name for one in steps.no_consent]
        unasked = [one.name for one in steps.nobody_to_ask]
        papers = paper_buttons([(key(one), one.name) for one in steps.no_consent])
        parts.append(Part(say.consent_missing(names, unasked), papers))
    return parts


def paper_buttons(pitchers: Sequence[tuple[int, str]]) -> tuple[Button, ...]:
    """Record a signature on paper, for the first few of these pitchers (id and name)."""
    return tuple(
        Button(say.on_paper(name), opens("consent_paper"), {"pitcher": one})
        for one, name in pitchers[:MOST_PAPERS]
    )


def added_parts(session: Session, row: OutboxMessage, now: datetime) -> list[Part]:
    """That a pitcher is on the roster now, to whoever put him there; and what comes next."""
    pitcher = session.get(Pitcher, int(row.slot.split("/")[1]))
    team = session.get(Team, row.team_id)
    if pitcher is None or team is None:
        return []
    today = local_day(team, now)
    asked = [one.name for one in may_consent(session, pitcher, today) if one.slack_id is not None]
    waits = pitcher.consent_on is None
    papers = paper_buttons([(key(pitcher), pitcher.name)]) if waits else ()
    text = say.added(pitcher.name, team.name, asked, waits=waits)
    return [Part(text, (Button(say.ADD_ANOTHER, opens("pitcher"), {"team": key(team)}), *papers))]
