"""A channel or a person that takes no messages: told to those who can do something about it."""

from sqlmodel import Session

from bot.blocks.message import Part
from bot.wording.trouble import channel_trouble, person_trouble
from core.ledger.channel_trouble import ARCHIVED, NOT_THERE
from core.ledger.person_trouble import GONE, person_at
from core.model import OutboxMessage, Team


def channel_trouble_parts(session: Session, row: OutboxMessage) -> list[Part]:
    """Which channel, and what helps; nothing once the team is gone or uses another channel."""
    team = session.get(Team, row.team_id)
    _kind, place, _last, error, _person = row.slot.split("/")
    if team is None or place not in {team.log_channel, team.staff_channel}:
        return []
    fix = "archived" if error in ARCHIVED else "invite" if error in NOT_THERE else "allow"
    return [Part(channel_trouble(team.name, is_log=place == team.log_channel, fix=fix))]


def person_trouble_parts(session: Session, row: OutboxMessage) -> list[Part]:
    """Who, and what helps; nothing once nobody knows that account."""
    _kind, account, _last, error, _team = row.slot.split("/")
    person = person_at(session, row.workspace_id, account)
    return [] if person is None else [Part(person_trouble(person.name, gone=error in GONE))]
