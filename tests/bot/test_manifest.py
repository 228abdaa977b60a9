"""The manifest asks for exactly what the code uses: methods, events, commands, shortcuts."""

import ast
import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from slack_sdk import WebClient
from typer.testing import CliRunner

from bot.app import register_listeners
from bot.cli import app as command_line
from bot.clock import SystemClock
from bot.listeners.desk import Desk
from bot.manifest import AddressError, make_manifest
from core.store import Store

ROOT = Path(__file__).parents[2]
HISTORY = {"channels:history", "groups:history", "im:history", "mpim:history"}

#: The bot scopes of each method, from its page under docs.slack.dev/reference/methods. Where
#: they depend on the kind of conversation: public and private channels, direct messages and,
#: for what the staff write to a family, group messages.
METHOD_SCOPES: dict[str, set[str]] = {
    "auth_test": set(),
    "chat_postMessage": {"chat:write"},
    "chat_update": {"chat:write"},
    "conversations_history": HISTORY,
    "conversations_info": {"channels:read", "groups:read"},
    "conversations_list": {"channels:read", "groups:read"},
    "conversations_members": {"channels:read", "groups:read"},
    "conversations_open": {"im:write", "mpim:write"},
    "conversations_replies": HISTORY,
    "oauth_v2_access": set(),
    "files_upload_v2": {"files:write"},
    "reactions_add": {"reactions:write"},
    "reactions_remove": {"reactions:write"},
    "users_info": {"users:read"},
    "users_list": {"users:read"},
    "users_lookupByEmail": {"users:read.email"},
    "views_open": set(),
    "views_publish": set(),
    "views_push": set(),
    "views_update": set(),
}

#: The bot scopes of each event, from its page under docs.slack.dev/reference/events.
EVENT_SCOPES: dict[str, set[str]] = {
    "app_home_opened": set(),
    "app_mention": {"app_mentions:read"},
    "app_uninstalled": set(),
    "channel_archive": {"channels:read"},
    "channel_unarchive": {"channels:read"},
    "member_joined_channel": {"channels:read", "groups:read"},
    "message.channels": {"channels:history"},
    "message.groups": {"groups:history"},
    "message.im": {"im:history"},
    "tokens_revoked": set(),
    "user_change": {"users:read"},
}


def methods_used() -> set[str]:
    """The Web API methods that the code names, the local workspace left out."""
    known = {name for name in vars(WebClient) if "_" in name.strip("_")}
    return {
        node.attr
        for path in product_files()
        for node in ast.walk(ast.parse(path.read_text()))
        if isinstance(node, ast.Attribute) and node.attr in known
    }


def product_files() -> Iterator[Path]:
    for path in sorted((ROOT / "bot").rglob("*.py")):
        if ROOT / "bot" / "local" not in path.parents:
            yield path


class Recorder:
    """Stands in for the Bolt app, and notes what the listeners register for."""

    def __init__(self) -> None:
        self.heard: dict[str, set[Any]] = {}

    def __getattr__(self, kind: str) -> Callable[..., Any]:
        def register(what: Any = None, *_more: Any, **_options: Any) -> Callable[..., Any]:
            self.heard.setdefault(kind, set()).add(what if isinstance(what, str) else None)
            return lambda listener: listener

        return register


def listened() -> dict[str, set[str]]:
    """Events, commands and shortcuts with a listener of their own."""
    app: Any = Recorder()
    store = Store("sqlite://")
    register_listeners(app, Desk(store, SystemClock(), lambda: None))
    store.close()
    kinds = {"event": "event", "command": "command"}
    kinds |= dict.fromkeys(("shortcut", "global_shortcut", "message_shortcut"), "shortcut")
    found: dict[str, set[str]] = {"event": set(), "command": set(), "shortcut": set()}
    for kind, names in app.heard.items():
        if kind in kinds:
            found[kinds[kind]] |= names - {None}
    return found


def asked_events() -> list[str]:
    events: list[str] = make_manifest()["settings"]["event_subscriptions"]["bot_events"]
    return events


def test_no_call_goes_round_the_named_methods() -> None:
    assert [path for path in product_files() if "api_call(" in path.read_text()] == []


def test_the_scopes_are_those_of_the_methods_and_events_and_no_more() -> None:
    needed = {"commands"}  # a slash command and shortcuts
    if any("Bearer" in path.read_text() for path in product_files()):
        needed |= {"files:read"}  # a file's own address, with the token (docs.slack.dev, files)
    for method in methods_used():
        needed |= METHOD_SCOPES[method]
    for event in asked_events():
        needed |= EVENT_SCOPES[event]

    asked = make_manifest()["oauth_config"]["scopes"]["bot"]

    assert set(asked) == needed
    assert len(asked) == len(set(asked))


def test_a_method_is_looked_for_in_every_file_of_the_bot() -> None:
    assert {"chat_postMessage", "reactions_add", "views_open", "users_list"} <= methods_used()


def test_each_event_that_is_asked_for_is_listened_to_and_the_other_way_round() -> None:
    # `message.im` and its like arrive as `message`.
    asked = {event.partition(".")[0] for event in asked_events()}

    assert asked == listened()["event"]


def test_each_command_and_shortcut_that_is_offered_is_listened_to() -> None:
    features = make_manifest()["features"]
    commands = {one["command"] for one in features["slash_commands"]}
    shortcuts = {one["callback_id"] for one in features["shortcuts"]}

    assert commands == listened()["command"]
    assert shortcuts == listened()["shortcut"]


def test_by_sockets_no_address_is_named() -> None:
    manifest = make_manifest()

    assert manifest["settings"]["socket_mode_enabled"] is True
    assert "url" not in json.dumps(manifest)


@pytest.mark.parametrize(
    "address",
    [
        "https://bot.example.org",
        "https://bot.example.org/",
        "https://bot.example.org/slack/events",
    ],
)
def test_over_http_every_address_is_the_one_that_bolt_serves(address: str) -> None:
    manifest = make_manifest(address)

    settings, (command,) = manifest["settings"], manifest["features"]["slash_commands"]
    named = {
        settings["event_subscriptions"]["request_url"],
        settings["interactivity"]["request_url"],
        command["url"],
    }
    assert named == {"https://bot.example.org/slack/events"}
    assert settings["socket_mode_enabled"] is False
    redirect = "https://bot.example.org/slack/oauth_redirect"
    assert manifest["oauth_config"]["redirect_urls"] == [redirect]


@pytest.mark.parametrize("address", ["", "bot.example.org", "http://bot.example.org", "https://"])
def test_an_address_that_slack_cannot_reach_is_refused(address: str) -> None:
    with pytest.raises(AddressError, match="public address"):
        make_manifest(address)


def test_the_command_line_prints_it_as_json() -> None:
    printed = CliRunner().invoke(command_line, ["manifest", "--http", "https://bot.example.org"])

    assert printed.exit_code == 0
    assert json.loads(printed.stdout) == make_manifest("https://bot.example.org")


def test_a_wrong_address_is_one_sentence_and_status_2() -> None:
    printed = CliRunner().invoke(command_line, ["manifest", "--http", "bot.example.org"])

    assert printed.exit_code == 2
    assert printed.stdout == ""
