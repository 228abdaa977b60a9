"""Messages that people see, from the moment they are owed until they stand in Slack."""

from datetime import datetime
from enum import StrEnum

from sqlmodel import Field, Index, UniqueConstraint

from core.model.base import Stored


class MessageState(StrEnum):
    """Where a message stands."""

    QUEUED = "queued"
    SENDING = "sending"  # leased by one process
    SENT = "sent"
    DROPPED = "dropped"  # nothing to say any more before it left
    FAILED = "failed"  # Slack refused for good; `error` says why


class OutboxMessage(Stored, table=True):
    """One message that people see (or one reaction), written before it is sent.

    It is rendered when it is sent, from the record as it stands then. `wanted` counts the
    changes of the record it must show, `delivered` the one that people see now; `slot` is
    its natural key, so whoever writes first has claimed it.
    """

    __table_args__ = (
        UniqueConstraint("workspace_id", "slot"),
        # Whether an earlier message of a conversation waits is asked for every row.
        Index("ix_outboxmessage_destination_state", "destination", "state"),
        # How many were posted within the last minute is asked before each post.
        Index("ix_outboxmessage_workspace_id_ts", "workspace_id", "ts"),
    )

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    slot: str
    kind: str
    line_id: int | None = Field(default=None, foreign_key="line.id", index=True)
    team_id: int | None = Field(default=None, foreign_key="team.id")
    person_id: int | None = Field(default=None, foreign_key="person.id")
    #: Where it goes: a channel, or a user (Slack opens the direct message).
    destination: str
    thread_ts: str | None = None
    not_before: datetime
    wanted: int = 1
    delivered: int = 0
    state: str = Field(default=MessageState.QUEUED, index=True)
    lease_until: datetime | None = None
    attempts: int = 0
    #: The conversation and the timestamp under which Slack shows it.
    channel: str | None = None
    ts: str | None = None
    #: The content that people see now: a digest, or the name of the reaction.
    shown: str | None = None
    error: str | None = None
