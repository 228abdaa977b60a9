"""Whether Slack takes no direct messages for somebody whose Home tab still works."""

from collections.abc import Sequence

from sqlalchemy import ColumnElement
from sqlmodel import col, func, select

from core.home.sent import NO_MESSAGES
from core.ledger.person_trouble import SHUT
from core.model import MessageState, OutboxMessage


def is_last_to(workspace_id: str, slack_id: str) -> ColumnElement[bool]:
    """Picks the newest direct message to an account that Slack took, or refused for good."""
    refused = col(OutboxMessage.state) == MessageState.FAILED
    taken = (col(OutboxMessage.state) == MessageState.SENT) & col(OutboxMessage.ts).is_not(None)
    newest = select(func.max(OutboxMessage.id)).where(
        OutboxMessage.workspace_id == workspace_id,
        OutboxMessage.destination == slack_id,
        col(OutboxMessage.kind).not_in(NO_MESSAGES),
        refused | taken,
    )
    return col(OutboxMessage.id) == newest.scalar_subquery()


def is_shut(last: Sequence[OutboxMessage]) -> bool:
    """Whether that message, if there is one, was refused because Slack takes none at all."""
    return any(one.state == MessageState.FAILED and one.error in SHUT for one in last)
