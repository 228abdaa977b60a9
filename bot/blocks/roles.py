"""A change of roles, as it stands, for whom the message is."""

from sqlmodel import Session

from bot.blocks.message import Button, Part
from bot.presses.press import presses
from bot.wording import roles as say
from bot.wording.words import safe
from core.model import Matter, MatterState, OutboxMessage, Person, Role, Team, key


def role_parts(session: Session, row: OutboxMessage, matter: Matter) -> list[Part]:
    """What one reader is told: the asker, a second coach, or whom it is about."""
    data = matter.data
    role, give = Role(data["role"]), bool(data["give"])
    team = session.get_one(Team, matter.team_id).name
    who = _shown(session.get_one(Person, data["who"]))
    by = session.get_one(Person, matter.person_id).name
    settled = session.get(Person, matter.settled_by) if matter.settled_by is not None else None
    if matter.state == MatterState.CANCELLED:
        return [Part(say.refused(role, who, team, give, settled.name if settled else ""))]
    if matter.state == MatterState.DONE:
        if row.person_id == data["who"] and row.person_id != matter.person_id:
            return [Part(say.told(role, team, give))]
        second = settled.name if settled and settled.id != matter.person_id else ""
        return [Part(say.done(role, who, team, give, by, second))]
    if row.person_id == matter.person_id:
        second_coaches = [session.get_one(Person, one).name for one in data["second"]]
        return [Part(say.waits(role, who, team, give, second_coaches))]
    carried = {"matter": key(matter)}
    buttons = (
        Button(say.CONFIRM, presses("role_confirm"), carried, main=True),
        Button(say.REFUSE, presses("role_refuse"), carried),
    )
    return [Part(say.asked(role, who, team, give, by), buttons)]


def _shown(person: Person) -> str:
    """A name; somebody whose name is only being asked for is shown as a mention."""
    return safe(person.name) or f"<@{person.slack_id}>"
