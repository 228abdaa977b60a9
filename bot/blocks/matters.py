"""What waits for somebody's word, as it stands, and what became of it."""

from collections.abc import Callable
from datetime import datetime

from sqlmodel import Session

from bot.blocks.first_steps import channels_parts, first_parts
from bot.blocks.message import Button, Part
from bot.blocks.roles import role_parts
from bot.presses.press import presses
from bot.wording import consent, roster
from core.matters import DELETION, MOVED, ROSTER
from core.model import Matter, MatterState, OutboxMessage, Person, Team, key
from core.roster.channels import CHANNELS
from core.roster.first_steps import FIRST
from core.roster.roles import ROLE

Parts = list[Part]


def matter_parts(session: Session, row: OutboxMessage, _now: datetime) -> Parts:
    """The message about a matter, for whom the row is."""
    matter = session.get(Matter, int(row.slot.split("/")[1]))
    return _PARTS[matter.kind](session, row, matter) if matter is not None else []


def _deletion(session: Session, row: OutboxMessage, matter: Matter) -> Parts:
    name = str(matter.data.get("name", ""))
    if row.person_id is None:
        by = session.get_one(Person, matter.person_id).name
        return [Part(consent.delete_for_staff(name, by, matter.state))]
    if matter.state == MatterState.CANCELLED:
        return [Part(consent.DELETE_KEPT)]
    if matter.state == MatterState.DONE:
        return [Part(consent.delete_begun(name) if name else consent.RECORD_GONE)]
    carried = {"matter": key(matter)}
    buttons = (
        Button(consent.DELETE_FOR_GOOD, presses("delete_for_good"), carried),
        Button(consent.KEEP, presses("keep_record"), carried),
    )
    return [Part(consent.delete_asked(name), buttons)]


def _roster(_session: Session, _row: OutboxMessage, matter: Matter) -> Parts:
    data = matter.data
    if "unreadable" in data:
        return [Part(roster.unreadable(str(data["unreadable"])))]
    if "problems" in data:
        return [Part(roster.faulty(list(data["problems"])))]
    if matter.state == MatterState.CANCELLED:
        return [Part(roster.TOO_OLD if data.get("old") else roster.CANCELLED)]
    if data.get("applied"):
        return [Part(roster.applied(list(data["says"])))]
    if matter.state == MatterState.DONE:
        return [Part(roster.APPLYING)]
    if "says" not in data:
        return [Part(roster.READING)]
    if not data["says"]:
        return [Part(roster.NOTHING_NEW)]
    carried = {"matter": key(matter)}
    buttons = (
        Button(roster.APPLY, presses("roster_apply"), carried, main=True),
        Button(roster.CANCEL, presses("roster_cancel"), carried),
    )
    return [Part(roster.preview(list(data["says"])), buttons)]


def _moved(session: Session, _row: OutboxMessage, matter: Matter) -> Parts:
    name = str(matter.data.get("name", ""))
    by = session.get_one(Person, matter.person_id).name
    team = session.get_one(Team, matter.team_id).name
    return [Part(roster.joined(name, team, by) if name else consent.RECORD_GONE)]


_PARTS: dict[str, Callable[[Session, OutboxMessage, Matter], Parts]] = {
    DELETION: _deletion,
    ROSTER: _roster,
    ROLE: role_parts,
    MOVED: _moved,
    FIRST: first_parts,
    CHANNELS: channels_parts,
}
