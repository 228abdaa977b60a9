"""Messages that belong to no line: consent, matters that wait for a word, pain asked after."""

from collections.abc import Callable
from datetime import datetime

from sqlmodel import Session

from bot.blocks.consent import consent_parts, kept_back_parts, said_parts
from bot.blocks.family import family_parts, unsent_parts
from bot.blocks.first_steps import added_parts, welcome_parts
from bot.blocks.matters import matter_parts
from bot.blocks.message import Part
from bot.blocks.still_hurts import still_hurts_parts
from core.ledger import NoticeKind
from core.model import OutboxMessage

_PARTS: dict[str, Callable[[Session, OutboxMessage, datetime], list[Part]]] = {
    NoticeKind.CONSENT: consent_parts,
    NoticeKind.CONSENT_SAID: said_parts,
    NoticeKind.KEPT_BACK: kept_back_parts,
    NoticeKind.MATTER: matter_parts,
    NoticeKind.WELCOME: welcome_parts,
    NoticeKind.ADDED: added_parts,
    NoticeKind.STILL_HURTS: still_hurts_parts,
    NoticeKind.FAMILY: family_parts,
    NoticeKind.FAMILY_UNSENT: unsent_parts,
}
#: The kinds of message that this file renders.
CLUB_KINDS = frozenset(_PARTS)


def club_parts(session: Session, row: OutboxMessage, now: datetime) -> list[Part]:
    """What such a message says at `now` (UTC)."""
    return _PARTS[row.kind](session, row, now)
