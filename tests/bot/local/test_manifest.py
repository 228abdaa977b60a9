"""With a manifest the app has what it asks for, and no more (docs.slack.dev, "App manifest")."""

from typing import Any

import pytest
from slack_sdk import WebClient

from bot.local.errors import ScriptError
from bot.local.records import Channel, Json, Message, Person
from bot.local.workspace import Workspace
from tests.support.workspace import refusal

MANIFEST: Json = {
    "display_information": {"name": "Local"},
    "features": {
        "app_home": {
            "home_tab_enabled": True,
            "messages_tab_enabled": True,
            "messages_tab_read_only_enabled": False,
        },
        "slash_commands": [{"command": "/spin", "description": "Help"}],
        "shortcuts": [{"name": "Fix", "type": "message", "callback_id": "fix"}],
    },
    "oauth_config": {"scopes": {"bot": ["channels:history", "chat:write"]}},
    "settings": {
        "event_subscriptions": {"bot_events": ["message.channels", "app_mention"]},
        "interactivity": {"is_enabled": True},
    },
}
BUTTON: Any = {
    "type": "actions",
    "elements": [{"type": "button", "action_id": "a", "text": {"type": "plain_text", "text": "B"}}],
}


def posted(ws: Workspace, log: Channel, client: WebClient) -> Message:
    client.chat_postMessage(channel=log.id, text="hi", blocks=[BUTTON])
    return ws.messages(log)[0]


def test_what_the_manifest_asks_for_is_there(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    ws.follow(MANIFEST)
    message = posted(ws, log, client)

    assert ws.say(rosa, log, "62p").deliveries
    assert ws.command(rosa, log, "/spin").payload["command"] == "/spin"
    assert ws.message_shortcut(rosa, message, "fix").payload["callback_id"] == "fix"
    assert ws.press(rosa, message, "a").payload["type"] == "block_actions"


def test_an_event_needs_subscription_and_scope(ws: Workspace, rosa: Person, log: Channel) -> None:
    ws.follow(MANIFEST)

    # No message.im; app_mention is subscribed, but app_mentions:read is not asked for.
    said = ws.say(rosa, log, f"{ws.mention(ws.bot)} rest?")
    assert [d.event["type"] for d in said.deliveries] == ["message"]
    assert not ws.say(rosa, ws.dm(rosa), "62p").deliveries


def test_a_method_needs_its_scope(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    ws.follow(MANIFEST)
    said = ws.say(rosa, log, "62p")

    refused = refusal(
        lambda: client.reactions_add(channel=log.id, timestamp=said.ts, name="baseball")
    )

    assert refused == "missing_scope"


def test_nobody_can_call_what_is_not_offered(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    ws.follow(MANIFEST)
    message = posted(ws, log, client)

    with pytest.raises(ScriptError, match="no command /other"):
        ws.command(rosa, log, "/other")
    with pytest.raises(ScriptError, match="no global shortcut fix"):
        ws.shortcut(rosa, "fix")
    with pytest.raises(ScriptError, match="no message shortcut other"):
        ws.message_shortcut(rosa, message, "other")


@pytest.mark.parametrize(
    "off", [{"messages_tab_enabled": False}, {"messages_tab_read_only_enabled": True}]
)
def test_nobody_writes_to_a_messages_tab_that_is_off(
    ws: Workspace, rosa: Person, off: Json
) -> None:
    features = MANIFEST["features"]
    home = features["app_home"] | off
    ws.follow(MANIFEST | {"features": features | {"app_home": home}})

    with pytest.raises(ScriptError, match="messages tab is off"):
        ws.say(rosa, ws.dm(rosa), "62p")


def test_an_empty_manifest_offers_nothing(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    message = posted(ws, log, client)
    ws.follow({})

    assert not ws.say(rosa, log, "62p").deliveries
    with pytest.raises(ScriptError, match="no interactivity"):
        ws.press(rosa, message, "a")
    with pytest.raises(ScriptError, match="no Home tab"):
        ws.open_home(rosa)
