"""Which rows may be sent at a moment: those that are due, free, and in turn."""

from datetime import datetime
from functools import cache

from sqlalchemy import ColumnElement, Select
from sqlalchemy import select as sa_select
from sqlalchemy.orm import aliased
from sqlmodel import col, select

from core.leaving import is_served
from core.ledger import NoticeKind
from core.model import MessageState, OutboxMessage


def due(now: datetime) -> Select[int | None]:
    """The rows that may be sent now, oldest first."""
    return (
        sa_select(col(OutboxMessage.id)).where(free(now), in_turn()).order_by(col(OutboxMessage.id))
    )


@cache
def in_turn() -> ColumnElement[bool]:
    """A conversation keeps its order: no earlier message of it is being sent or put off.

    A workspace that took the app away has no turn.
    """
    earlier = aliased(OutboxMessage)
    before = (
        select(earlier.id)
        .where(
            col(earlier.destination) == col(OutboxMessage.destination),
            col(earlier.id) < col(OutboxMessage.id),
            col(earlier.kind) != NoticeKind.REACTION,
            (col(earlier.state) == MessageState.SENDING)
            | ((col(earlier.state) == MessageState.QUEUED) & col(earlier.lease_until).is_not(None)),
        )
        .correlate(OutboxMessage)
        .exists()
    )
    served = is_served(col(OutboxMessage.workspace_id))
    return served & ((col(OutboxMessage.kind) == NoticeKind.REACTION) | ~before)


def free(now: datetime) -> ColumnElement[bool]:
    """The rows that nobody sends now and whose time has come."""
    queued = (
        (col(OutboxMessage.state) == MessageState.QUEUED)
        & (col(OutboxMessage.not_before) <= now)
        & (col(OutboxMessage.lease_until).is_(None) | (col(OutboxMessage.lease_until) <= now))
    )
    abandoned = (col(OutboxMessage.state) == MessageState.SENDING) & (
        col(OutboxMessage.lease_until) < now
    )
    return queued | abandoned
