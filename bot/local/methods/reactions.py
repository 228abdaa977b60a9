"""reactions.*: the app puts emoji under messages."""

from bot.local.arguments import Arguments
from bot.local.errors import ApiError
from bot.local.methods.access import joined_channel, named_message
from bot.local.records import Json, Message
from bot.local.workspace import Workspace


def add(ws: Workspace, args: Arguments) -> Json:
    """reactions.add: put an emoji under a message."""
    name, message = _name(ws, args), _message(ws, args)
    if ws.bot.id in message.reacted(name):
        raise ApiError("already_reacted")
    ws.set_reaction(message, ws.bot.id, name, present=True)
    return {}


def remove(ws: Workspace, args: Arguments) -> Json:
    """reactions.remove: take the app's own emoji away."""
    name, message = _name(ws, args), _message(ws, args)
    if ws.bot.id not in message.reacted(name):
        raise ApiError("no_reaction")
    ws.set_reaction(message, ws.bot.id, name, present=False)
    return {}


def _name(ws: Workspace, args: Arguments) -> str:
    name = args.required("name")
    if name.partition("::skin-tone-")[0] not in ws.emoji:
        raise ApiError("invalid_name")
    return name


def _message(ws: Workspace, args: Arguments) -> Message:
    if "channel" not in args or "timestamp" not in args:
        raise ApiError("no_item_specified")
    channel = joined_channel(ws, args.required("channel"))
    if channel.archived:
        raise ApiError("is_archived")
    return named_message(ws, args, "timestamp", channel, malformed="bad_timestamp")
