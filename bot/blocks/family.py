"""What the staff wrote to a family, and that it did not go."""

from datetime import datetime

from sqlmodel import Session

from bot.blocks.message import Part
from bot.wording import contact as say
from core.contact.family import may_still_go
from core.model import FamilyMessage, OutboxMessage, Person, Pitcher


def family_parts(session: Session, row: OutboxMessage, _now: datetime) -> list[Part]:
    """The words in the family's conversation; nothing where it may not go any more."""
    message = _message(session, row)
    if message is None or (row.ts is None and not may_still_go(session, message, row.destination)):
        return []
    writer = session.get_one(Person, message.person_id).name
    pitcher = session.get_one(Pitcher, message.pitcher_id).name
    return [Part(say.to_family(writer, pitcher, message.text))]


def unsent_parts(session: Session, row: OutboxMessage, _now: datetime) -> list[Part]:
    """That it did not go, with the words, for whoever wrote them."""
    message = _message(session, row)
    if message is None:
        return []
    pitcher = session.get_one(Pitcher, message.pitcher_id).name
    return [Part(say.unsent(pitcher, message.text))]


def _message(session: Session, row: OutboxMessage) -> FamilyMessage | None:
    return session.get(FamilyMessage, int(row.slot.split("/")[1]))
