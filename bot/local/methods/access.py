"""Finding what a call names, with the errors that Slack answers when the app may not have it."""

from typing import Final

from bot.local.arguments import Arguments
from bot.local.errors import ApiError
from bot.local.records import Channel, Kind, Message
from bot.local.stamps import moment_of
from bot.local.workspace import Workspace

SCOPE_PREFIXES: Final[dict[Kind, str]] = {
    "public": "channels",
    "private": "groups",
    "im": "im",
    "mpim": "mpim",
}


def need_kind_scope(ws: Workspace, kind: Kind, right: str) -> None:
    """Raise ApiError `missing_scope` unless the app may `read`, … this kind of channel."""
    ws.need_scope(f"{SCOPE_PREFIXES[kind]}:{right}")


def visible_channel(ws: Workspace, channel_id: str) -> Channel:
    """Return a channel that the app may know of.

    A private conversation that the app is not in does not exist for it.
    """
    channel = ws.state.channels.get(channel_id)
    if channel is None or (channel.kind != "public" and ws.bot.id not in channel.members):
        raise ApiError("channel_not_found")
    return channel


def joined_channel(ws: Workspace, channel_id: str) -> Channel:
    """Return a channel that the app is in."""
    channel = visible_channel(ws, channel_id)
    if ws.bot.id not in channel.members:
        raise ApiError("not_in_channel")
    return channel


def postable_channel(ws: Workspace, channel_id: str) -> Channel:
    """Return where a new message goes; a user id stands for the app's DM with that user."""
    if channel_id.startswith("U"):
        return direct_message(ws, channel_id)
    channel = joined_channel(ws, channel_id)
    if channel.archived:
        raise ApiError("is_archived")
    if channel.kind == "im" and not ws.messages_tab:
        raise ApiError("messages_tab_disabled")
    return channel


def direct_message(ws: Workspace, user_id: str) -> Channel:
    """Return the app's DM with a user, opening it the first time."""
    person = ws.state.people.get(user_id)
    if person is None or person.is_bot:
        raise ApiError("channel_not_found")
    if person.deleted:
        raise ApiError("user_disabled")
    if not ws.messages_tab:
        raise ApiError("messages_tab_disabled")
    return ws.state.direct("im", (user_id, ws.bot.id))


def named_message(
    ws: Workspace,
    args: Arguments,
    name: str,
    channel: Channel,
    malformed: str = "message_not_found",
) -> Message:
    """Return the message that an argument names by its `ts`."""
    ts = args.required(name)
    try:
        moment_of(ts)
    except ValueError:
        raise ApiError(malformed) from None
    message = ws.state.find_message(channel.id, ts)
    if message is None or message.is_tombstone:
        raise ApiError("message_not_found")
    return message
