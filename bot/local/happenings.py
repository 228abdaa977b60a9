"""News for whoever looks on, such as the terminal that shows the workspace."""

from dataclasses import dataclass
from typing import Literal

from bot.local.records import Ephemeral, Message, Reaction, View


@dataclass(frozen=True, slots=True)
class MessageNews:
    """A message was posted, changed (an edit, a preview, a tombstone) or deleted."""

    what: Literal["posted", "changed", "deleted"]
    message: Message


@dataclass(frozen=True, slots=True)
class ReactionNews:
    """Somebody put an emoji under a message, or took it away."""

    message: Message
    user: str
    reaction: Reaction
    present: bool


@dataclass(frozen=True, slots=True)
class EphemeralNews:
    """One person was shown a message that nobody else sees."""

    ephemeral: Ephemeral


@dataclass(frozen=True, slots=True)
class ViewNews:
    """A modal opened, changed or closed, or a Home tab was published."""

    view: View


News = MessageNews | ReactionNews | EphemeralNews | ViewNews
