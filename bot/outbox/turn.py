"""Which rows may be sent at a moment: those that are due, free, and in turn."""

from collections.abc import Iterable
from datetime import datetime
from functools import cache

from sqlalchemy import ColumnElement, Select, case, func, not_
from sqlalchemy import select as sa_select
from sqlalchemy.orm import aliased
from sqlmodel import col, select

from bot.outbox.pace import POST, Pace
from core.home.sent import NO_MESSAGES
from core.leaving import is_served
from core.ledger import NoticeKind
from core.model import MessageState, OutboxMessage

#: Rows that are looked at for one claim: others may take some of them first.
AT_A_TIME = 20


def due(
    now: datetime, pace: Pace, full: Iterable[str], opened: Iterable[str]
) -> Select[int | None]:
    """The first rows that may be sent now and at this pace, oldest first.

    What already stands in Slack is put right before anything is posted: whoever pressed a button
    looks at that message.
    Only a workspace in `opened` can be sent to; one in `full` takes no posts now.
    """
    closed = {*pace.closed(now), *((workspace, POST) for workspace in full)}
    waits: list[ColumnElement[bool]] = [
        (col(OutboxMessage.workspace_id) == workspace) & is_next(method)
        for workspace, method in sorted(closed)
        if method in _NEXT
    ]
    if resting := pace.resting(now):
        waits.append(col(OutboxMessage.destination).in_(resting) & is_next(POST))
    return (
        sa_select(col(OutboxMessage.id))
        .where(col(OutboxMessage.workspace_id).in_(opened), free(now), in_turn(), *map(not_, waits))
        .order_by(col(OutboxMessage.ts).is_(None), col(OutboxMessage.id))
        .limit(AT_A_TIME)
    )


_REACTS = col(OutboxMessage.kind) == NoticeKind.REACTION
_PUBLISHES = col(OutboxMessage.kind) == NoticeKind.HOME
_SPEAKS = ~_REACTS & ~_PUBLISHES
#: The call that a row needs next, as far as it can be told before it is rendered.
_NEXT = {
    "reactions.add": _REACTS,
    "views.publish": _PUBLISHES,
    "chat.update": _SPEAKS & col(OutboxMessage.ts).is_not(None),
    POST: _SPEAKS & col(OutboxMessage.ts).is_(None),
}


def is_next(method: str) -> ColumnElement[bool]:
    """Whether this method is what a row waits for."""
    return _NEXT[method]


def waiting() -> Select[tuple[str, str, str, datetime]]:
    """For each workspace, method and destination when its first row in the queue is due."""
    held = col(OutboxMessage.lease_until) > col(OutboxMessage.not_before)
    next_time = case((held, OutboxMessage.lease_until), else_=col(OutboxMessage.not_before))
    method = case(*((condition, name) for name, condition in _NEXT.items()))
    keys = (col(OutboxMessage.workspace_id), method, col(OutboxMessage.destination))
    return (
        sa_select(*keys, func.min(next_time))
        .where(col(OutboxMessage.state) == MessageState.QUEUED, in_turn())
        .group_by(*keys)
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
            col(earlier.kind).not_in(NO_MESSAGES),
            (col(earlier.state) == MessageState.SENDING)
            | ((col(earlier.state) == MessageState.QUEUED) & col(earlier.lease_until).is_not(None)),
        )
        .correlate(OutboxMessage)
        .exists()
    )
    served = is_served(col(OutboxMessage.workspace_id))
    return served & (col(OutboxMessage.kind).in_(NO_MESSAGES) | ~before)


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
