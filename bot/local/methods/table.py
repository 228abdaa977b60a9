"""Which function answers which Web API method, and which scope the method needs.

Scopes are those of the method pages of docs.slack.dev/reference/methods.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from bot.local.arguments import Arguments
from bot.local.methods import chat, conversations, reactions, users, views
from bot.local.records import Json
from bot.local.workspace import Workspace


@dataclass(frozen=True, slots=True)
class Method:
    """One Web API method; with several `scopes`, any one of them is enough."""

    answer: Callable[[Workspace, Arguments], Json]
    scopes: tuple[str, ...] = ()


METHODS: Final = {
    "auth.test": Method(users.auth_test),
    "chat.delete": Method(chat.delete, ("chat:write",)),
    "chat.getPermalink": Method(chat.get_permalink),
    "chat.postEphemeral": Method(chat.post_ephemeral, ("chat:write",)),
    "chat.postMessage": Method(chat.post_message, ("chat:write",)),
    "chat.update": Method(chat.update, ("chat:write",)),
    "conversations.history": Method(conversations.history),
    "conversations.info": Method(conversations.info),
    "conversations.list": Method(conversations.list_),
    "conversations.members": Method(conversations.members),
    "conversations.open": Method(conversations.open_),
    "conversations.replies": Method(conversations.replies),
    "reactions.add": Method(reactions.add, ("reactions:write",)),
    "reactions.remove": Method(reactions.remove, ("reactions:write",)),
    "users.info": Method(users.info, ("users:read",)),
    "users.list": Method(users.list_, ("users:read",)),
    "views.open": Method(views.open_),
    "views.publish": Method(views.publish),
    "views.push": Method(views.push),
    "views.update": Method(views.update),
}
