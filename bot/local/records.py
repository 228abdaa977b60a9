"""What a workspace remembers: people, channels, messages and views, as unchanging values."""

from dataclasses import dataclass, field
from typing import Any, Literal

Json = dict[str, Any]
Kind = Literal["public", "private", "im", "mpim"]

# How message events name each kind of conversation.
CHANNEL_TYPES: dict[Kind, str] = {
    "public": "channel",
    "private": "group",
    "im": "im",
    "mpim": "mpim",
}


@dataclass(frozen=True, slots=True)
class Person:
    """Somebody with an account, or a bot user (then `bot_id` is set)."""

    id: str
    name: str
    real_name: str
    tz: str = "America/New_York"
    locale: str = "en-US"
    is_bot: bool = False
    bot_id: str | None = None
    app_id: str | None = None
    is_admin: bool = False
    is_owner: bool = False
    deleted: bool = False


@dataclass(frozen=True, slots=True)
class Channel:
    """A conversation; `members` are user ids in the order of joining."""

    id: str
    name: str
    kind: Kind
    created: int
    members: tuple[str, ...] = ()
    archived: bool = False

    @property
    def channel_type(self) -> str:
        """How message events name this kind of conversation."""
        return CHANNEL_TYPES[self.kind]


@dataclass(frozen=True, slots=True)
class Reaction:
    """One emoji under a message and the user ids who put it there."""

    name: str
    users: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Edited:
    """Who edited a message last, and the edit's own stamp."""

    user: str
    ts: str


@dataclass(frozen=True, slots=True)
class Message:
    """A message as it stands; `ts` is its id within the channel."""

    ts: str
    channel: str
    user: str | None
    text: str
    thread_ts: str | None = None
    subtype: str | None = None
    blocks: tuple[Json, ...] = ()
    attachments: tuple[Json, ...] = ()
    files: tuple[Json, ...] = ()
    metadata: Json | None = None
    bot_id: str | None = None
    app_id: str | None = None
    username: str | None = None
    client_msg_id: str | None = None
    inviter: str | None = None
    edited: Edited | None = None
    reactions: tuple[Reaction, ...] = ()

    @property
    def is_reply(self) -> bool:
        """Whether it stands in a thread below another message."""
        return self.thread_ts is not None and self.thread_ts != self.ts

    @property
    def is_tombstone(self) -> bool:
        """Whether it was deleted while replies hung on it."""
        return self.subtype == "tombstone"

    @property
    def is_notice(self) -> bool:
        """Whether Slack wrote it, as when somebody joins."""
        return self.subtype is not None and self.subtype.startswith(("channel_", "group_"))

    def reacted(self, name: str) -> tuple[str, ...]:
        """Return the ids of those who reacted with this emoji."""
        return next((r.users for r in self.reactions if r.name == name), ())


@dataclass(frozen=True, slots=True)
class Ephemeral:
    """A message that one person alone sees, and that nobody can fetch again."""

    ts: str
    channel: str
    user: str
    text: str
    blocks: tuple[Json, ...] = ()
    thread_ts: str | None = None


@dataclass(frozen=True, slots=True)
class View:
    """A modal or a Home tab that the app showed to `user`."""

    id: str
    user: str
    content: Json
    hash: str
    root: str
    previous: str | None = None
    closed: bool = False
    values: Json = field(default_factory=dict)
