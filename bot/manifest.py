"""The app manifest: all that Spinkeeper asks Slack for, kept in this one place."""

from typing import Any
from urllib.parse import urlsplit

from bot.wording.app_page import (
    COMMAND_HINT,
    COMMAND_SAYS,
    DESCRIPTION,
    FIX_NAME,
    FIX_SAYS,
    LOG_NAME,
    LOG_SAYS,
    LONG_DESCRIPTION,
    NAME,
)

Manifest = dict[str, Any]

#: The one slash command.
COMMAND = "/spinkeeper"
#: The shortcut in everybody's menu, and the one in a message's menu.
LOG_SHORTCUT = "log"
FIX_SHORTCUT = "fix_line"

#: The least that the code can work with: a test compares it with the calls that the code makes.
SCOPES = (
    "app_mentions:read",
    "channels:history",
    "channels:read",
    "chat:write",
    "commands",
    "files:read",
    "groups:history",
    "groups:read",
    "im:history",
    "im:write",
    "mpim:history",
    "mpim:write",
    "reactions:write",
    "users:read",
)
EVENTS = (
    "app_home_opened",
    "app_mention",
    "app_uninstalled",
    "message.channels",
    "message.groups",
    "message.im",
    "tokens_revoked",
    "user_change",
)

#: Where the bot listens under its own address; Bolt takes everything there.
PATH = "/slack/events"
#: Where a browser begins to install the app, and where Slack sends it back to.
INSTALL_PATH = "/slack/install"
REDIRECT_PATH = "/slack/oauth_redirect"


class AddressError(ValueError):
    """An address at which Slack cannot reach the bot; the message is one sentence."""


def make_manifest(address: str | None = None) -> Manifest:
    """The manifest for Socket Mode, or for HTTP at the bot's public `address` (https://host).

    Raises `AddressError` when Slack could not send to that address.
    """
    base = None if address is None else _base(address)
    url = None if base is None else f"{base}{PATH}"
    return {
        "_metadata": {"major_version": 2, "minor_version": 1},
        "display_information": {
            "name": NAME,
            "description": DESCRIPTION,
            "long_description": LONG_DESCRIPTION,
        },
        "features": {
            "app_home": {
                "home_tab_enabled": True,
                "messages_tab_enabled": True,
                "messages_tab_read_only_enabled": False,
            },
            "bot_user": {"display_name": NAME, "always_online": True},
            "shortcuts": [
                _shortcut("global", LOG_SHORTCUT, LOG_NAME, LOG_SAYS),
                _shortcut("message", FIX_SHORTCUT, FIX_NAME, FIX_SAYS),
            ],
            "slash_commands": [
                {
                    "command": COMMAND,
                    "description": COMMAND_SAYS,
                    "usage_hint": COMMAND_HINT,
                    "should_escape": True,
                    **_named("url", url),
                }
            ],
        },
        "oauth_config": {
            **({} if base is None else {"redirect_urls": [f"{base}{REDIRECT_PATH}"]}),
            "scopes": {"bot": list(SCOPES)},
        },
        "settings": {
            "event_subscriptions": {"bot_events": list(EVENTS), **_named("request_url", url)},
            "interactivity": {"is_enabled": True, **_named("request_url", url)},
            "org_deploy_enabled": False,
            "socket_mode_enabled": url is None,
            "token_rotation_enabled": False,
        },
    }


def _base(address: str) -> str:
    parts = urlsplit(address)
    if parts.scheme != "https" or not parts.hostname or parts.query or parts.fragment:
        raise AddressError(
            f"Slack cannot send to {address}: give the bot's public address, for example "
            "https://bot.example.org."
        )
    return f"https://{parts.netloc}{parts.path.rstrip('/').removesuffix(PATH)}"


def _shortcut(kind: str, callback: str, name: str, says: str) -> dict[str, str]:
    return {"name": name, "type": kind, "callback_id": callback, "description": says}


def _named(name: str, url: str | None) -> dict[str, str]:
    return {} if url is None else {name: url}
