"""Buttons, commands and shortcuts, against docs.slack.dev/reference/interaction-payloads."""

from collections.abc import Iterator
from datetime import timedelta
from typing import Any

import pytest
from slack_bolt import App
from slack_sdk import WebClient
from slack_sdk.webhook import WebhookClient

from bot.clock import SimulatedClock
from bot.local.errors import ScriptError
from bot.local.faults import HttpError, RateLimited
from bot.local.records import Channel, Json, Message, Person
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from tests.support.workspace import AppHost, bolt_app, over_http, over_socket

UNDO: Any = {
    "type": "actions",
    "block_id": "choices",
    "elements": [
        {
            "type": "button",
            "action_id": "undo",
            "text": {"type": "plain_text", "text": "Undo"},
            "value": "row-7",
            "style": "danger",
        },
        {
            "type": "static_select",
            "action_id": "kind",
            "options": [
                {"text": {"type": "plain_text", "text": name}, "value": name}
                for name in ("game", "bullpen")
            ],
        },
    ],
}


@pytest.fixture
def posted(ws: Workspace, log: Channel, client: WebClient) -> Message:
    client.chat_postMessage(channel=log.id, text="62, noted", blocks=[UNDO])
    return ws.messages(log)[0]


@pytest.fixture
def bodies() -> list[Json]:
    return []


@pytest.fixture
def app(ws: Workspace, bodies: list[Json]) -> App:
    app = bolt_app(ws)

    @app.action("undo")
    @app.shortcut("help")
    @app.shortcut("fix")
    def take(ack: Any, body: Json) -> None:
        bodies.append(body)
        ack()

    @app.command("/spin")
    def spin(ack: Any, body: Json) -> None:
        bodies.append(body)
        ack(f"You said {body['text']}")

    return app


@pytest.fixture(params=["http", "socket"])
def running(
    request: pytest.FixtureRequest, ws: Workspace, app: App, stand_in: StandIn, app_host: AppHost
) -> Iterator[None]:
    way = over_http(stand_in, app_host, ws, app) if request.param == "http" else None
    with way or over_socket(ws, app):
        yield


@pytest.mark.usefixtures("running")
def test_a_pressed_button_names_person_place_message_and_value(
    ws: Workspace, rosa: Person, log: Channel, posted: Message, bodies: list[Json]
) -> None:
    assert ws.press(rosa, posted, "undo").wait().acknowledged

    (body,) = bodies
    assert body["type"] == "block_actions"
    assert body["user"]["id"] == rosa.id
    assert body["channel"] == {"id": log.id, "name": "pitching-log"}
    assert body["container"]["message_ts"] == body["message"]["ts"] == posted.ts
    assert body["state"] == {"values": {}}
    (action,) = body["actions"]
    assert (action["action_id"], action["block_id"]) == ("undo", "choices")
    assert (action["value"], action["style"]) == ("row-7", "danger")
    assert action["text"] == {"type": "plain_text", "text": "Undo"}


def test_a_choice_carries_the_option(ws: Workspace, rosa: Person, posted: Message) -> None:
    delivery = ws.press(rosa, posted, "kind", "bullpen")

    (action,) = delivery.payload["actions"]
    assert action["selected_option"]["value"] == "bullpen"
    with pytest.raises(LookupError, match="no option"):
        ws.press(rosa, posted, "kind", "golf")


def test_nobody_presses_what_they_do_not_see(ws: Workspace, rosa: Person, posted: Message) -> None:
    stranger = ws.add_person("Pat Hale")

    with pytest.raises(ScriptError, match="sees no message"):
        ws.press(stranger, posted, "undo")
    with pytest.raises(ScriptError, match="there is: undo, kind"):
        ws.press(rosa, posted, "redo")


@pytest.mark.usefixtures("running")
def test_a_slash_command_is_answered_to_the_person_alone(
    ws: Workspace, rosa: Person, log: Channel, bodies: list[Json]
) -> None:
    assert ws.command(rosa, log, "/spin", "rest").wait().acknowledged

    (body,) = bodies
    assert (body["command"], body["text"], body["user_id"]) == ("/spin", "rest", rosa.id)
    assert (body["channel_id"], body["channel_name"]) == (log.id, "pitching-log")
    assert [e.text for e in ws.ephemerals(rosa)] == ["You said rest"]


@pytest.mark.usefixtures("running")
def test_both_kinds_of_shortcut(
    ws: Workspace, rosa: Person, posted: Message, bodies: list[Json]
) -> None:
    assert ws.shortcut(rosa, "help").wait().acknowledged
    assert ws.message_shortcut(rosa, posted, "fix").wait().acknowledged

    everywhere, on_message = bodies
    assert "response_url" not in everywhere
    assert on_message["type"] == "message_action"
    assert on_message["message"]["ts"] == posted.ts


def answer_at(payload: Json, **fields: Any) -> int:
    return WebhookClient(payload["response_url"], retry_handlers=[]).send(**fields).status_code


def test_a_response_url_answers_privately_by_default(
    ws: Workspace, rosa: Person, log: Channel, posted: Message
) -> None:
    payload = ws.press(rosa, posted, "undo").payload

    answer_at(payload, text="taken back")

    assert [e.text for e in ws.ephemerals(rosa)] == ["taken back"]
    assert len(ws.messages(log)) == 1


def test_a_response_url_replaces_posts_and_deletes(
    ws: Workspace, rosa: Person, log: Channel, posted: Message
) -> None:
    payload = ws.press(rosa, posted, "undo").payload

    answer_at(payload, text="taken back", replace_original=True)
    replaced = [m.text for m in ws.messages(log)]
    answer_at(payload, text="news", response_type="in_channel")
    answer_at(payload, delete_original=True)

    assert replaced == ["taken back"]
    assert [m.text for m in ws.messages(log)] == ["news"]


def test_a_response_url_serves_five_times(ws: Workspace, rosa: Person, posted: Message) -> None:
    payload = ws.press(rosa, posted, "undo").payload

    statuses = [answer_at(payload, text=str(n)) for n in range(6)]

    assert statuses == [200] * 5 + [404]


def test_a_response_url_serves_for_thirty_minutes(
    ws: Workspace, rosa: Person, posted: Message, clock: SimulatedClock
) -> None:
    payload = ws.press(rosa, posted, "undo").payload

    clock.advance(timedelta(minutes=30, seconds=1))

    assert answer_at(payload, text="late") == 404


def test_a_response_url_can_be_made_to_fail(
    ws: Workspace, rosa: Person, log: Channel, posted: Message
) -> None:
    payload = ws.press(rosa, posted, "undo").payload
    ws.faults.order("response_url", HttpError(503))
    ws.faults.order("response_url", RateLimited(5))

    statuses = [answer_at(payload, text="news", response_type="in_channel") for _ in range(3)]

    assert statuses == [503, 429, 200]
    assert len(ws.messages(log)) == 2


def test_a_button_of_an_ephemeral_message_can_be_pressed(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    client.chat_postEphemeral(channel=log.id, user=rosa.id, text="sure?", blocks=[UNDO])
    (shown,) = ws.ephemerals(rosa)

    payload = ws.press_ephemeral(rosa, shown, "undo").payload
    answer_at(payload, text="done", replace_original=True)

    assert payload["container"]["is_ephemeral"] is True
    assert "message" not in payload
    assert [e.text for e in ws.ephemerals(rosa)] == ["done"]
