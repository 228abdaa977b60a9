"""The inner events that Slack sends for what happens in a workspace (Events API reference).

Shapes follow docs.slack.dev/reference/events; the tombstone form of a deleted thread
parent follows public reports of the same shape.
"""

from bot.local.records import Channel, Json, Message, Person
from bot.local.shapes import message_json, person_json
from bot.local.state import State


def message_posted(state: State, message: Message, channel: Channel, team_id: str) -> Json:
    """Return the `message` event of a new message."""
    shown = message_json(state, message, team_id)
    return shown | {
        "channel": channel.id,
        "event_ts": message.ts,
        "channel_type": channel.channel_type,
    }


def app_mentioned(state: State, message: Message, channel: Channel, team_id: str) -> Json:
    """Return the second event that a mention of the app in a channel causes."""
    shown = message_json(state, message, team_id)
    return shown | {"type": "app_mention", "channel": channel.id, "event_ts": message.ts}


def message_changed(
    state: State, before: Json, after: Message, channel: Channel, team_id: str
) -> Json:
    """Return the event of an edit, of a link preview, or of a tombstone.

    `before` is the message's JSON as it stood, for its thread may have grown since.
    """
    return _hidden(state, "message_changed", channel) | {
        "message": _nested(message_json(state, after, team_id), team_id),
        "previous_message": _nested(before, team_id),
    }


def message_deleted(state: State, before: Json, channel: Channel, team_id: str) -> Json:
    """Return the event of a deleted message on which no reply hung."""
    return _hidden(state, "message_deleted", channel) | {
        "deleted_ts": before["ts"],
        "previous_message": _nested(before, team_id),
    }


def reaction(kind: str, user: str, name: str, message: Message, stamp: str) -> Json:
    """Return `reaction_added` or `reaction_removed`."""
    event: Json = {
        "type": kind,
        "user": user,
        "reaction": name,
        "item": {"type": "message", "channel": message.channel, "ts": message.ts},
        "event_ts": stamp,
    }
    return event | ({"item_user": message.user} if message.user is not None else {})


def member_joined(user: str, channel: Channel, team_id: str, stamp: str, inviter: str) -> Json:
    """Return `member_joined_channel`."""
    event = _membership("member_joined_channel", user, channel, team_id, stamp)
    return event | {"inviter": inviter}


def member_left(user: str, channel: Channel, team_id: str, stamp: str) -> Json:
    """Return `member_left_channel`."""
    return _membership("member_left_channel", user, channel, team_id, stamp)


def _membership(kind: str, user: str, channel: Channel, team_id: str, stamp: str) -> Json:
    return {
        "type": kind,
        "user": user,
        "channel": channel.id,
        # The first letter of the id, which does not tell public from private.
        "channel_type": channel.id[0],
        "team": team_id,
        "event_ts": stamp,
    }


def user_changed(state: State, person: Person, team_id: str, stamp: str) -> Json:
    """Return `user_change`, as after a new name, a new time zone or a deactivation."""
    user = person_json(state, person, team_id)
    return {"type": "user_change", "user": user, "cache_ts": user["updated"], "event_ts": stamp}


def channel_archived(kind: str, channel: Channel, user: str, stamp: str) -> Json:
    """Return `channel_archive` or `channel_unarchive`."""
    return {"type": kind, "channel": channel.id, "user": user, "event_ts": stamp}


def home_opened(user: str, channel: Channel, tab: str, view: Json | None, stamp: str) -> Json:
    """Return `app_home_opened`; `view` is there only once a Home was published."""
    event: Json = {
        "type": "app_home_opened",
        "user": user,
        "channel": channel.id,
        "tab": tab,
        "event_ts": stamp,
    }
    return event | ({"view": view} if view is not None else {})


def tokens_revoked(bot_user: str, stamp: str) -> Json:
    """Return `tokens_revoked` for the bot's token."""
    return {"type": "tokens_revoked", "tokens": {"bot": [bot_user]}, "event_ts": stamp}


def app_uninstalled(stamp: str) -> Json:
    """Return `app_uninstalled`."""
    return {"type": "app_uninstalled", "event_ts": stamp}


def _hidden(state: State, subtype: str, channel: Channel) -> Json:
    stamp = state.stamps.next()
    return {
        "type": "message",
        "subtype": subtype,
        "hidden": True,
        "channel": channel.id,
        "ts": stamp,
        "event_ts": stamp,
        "channel_type": channel.channel_type,
    }


def _nested(message: Json, team_id: str) -> Json:
    if message.get("subtype") == "tombstone":
        return message
    return message | {"source_team": team_id, "user_team": team_id}
