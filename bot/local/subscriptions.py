"""Which events an app gets: those it subscribes to, and for which it was granted the scope.

From the event pages of docs.slack.dev/reference/events; the scopes of the two archive
events are from memory.
"""

from typing import Final

from bot.local.records import Channel, Kind

MESSAGE_EVENTS: Final[dict[Kind, str]] = {
    "public": "message.channels",
    "private": "message.groups",
    "im": "message.im",
    "mpim": "message.mpim",
}

DEFAULT: Final = frozenset(
    {
        *MESSAGE_EVENTS.values(),
        "app_mention",
        "app_home_opened",
        "app_uninstalled",
        "channel_archive",
        "channel_unarchive",
        "member_joined_channel",
        "member_left_channel",
        "tokens_revoked",
        "user_change",
    }
)

# An event that is not here needs no scope.
SCOPES: Final = {
    "message.channels": "channels:history",
    "message.groups": "groups:history",
    "message.im": "im:history",
    "message.mpim": "mpim:history",
    "app_mention": "app_mentions:read",
    "reaction_added": "reactions:read",
    "reaction_removed": "reactions:read",
    "user_change": "users:read",
}


def scope_for(event: str, channel: Channel | None) -> str | None:
    """Return the scope that an event needs, or None."""
    if event.startswith(("member_", "channel_")):
        return (
            "groups:read"
            if channel is not None and channel.kind == "private"
            else ("channels:read")
        )
    return SCOPES.get(event)
