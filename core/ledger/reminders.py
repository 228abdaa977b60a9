"""Which reminders were owed to whom: the database decides who was first."""

from sqlmodel import Session, col

from core.ledger.notices import NoticeKind
from core.model import Person, Reminder, key
from core.store.once import insert_once


def is_first(
    session: Session,
    kind: NoticeKind,
    person: Person,
    pitcher_id: int,
    *,
    period: str,
    slot: str,
) -> bool:
    """Remember a reminder of a person about a pitcher; whether there was none of this period."""
    values = {
        "workspace_id": person.workspace_id,
        "kind": kind,
        "person_id": key(person),
        "pitcher_id": pitcher_id,
        "period": period,
        "slot": slot,
    }
    return insert_once(session, Reminder, values, returning=col(Reminder.id)) is not None
