"""Socket Mode with the SDK's own handler, and with a bare WebSocket where frames matter."""

import json
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from typing import Any

import pytest
from slack_bolt import App
from slack_sdk import WebClient
from websockets.exceptions import ConnectionClosed, InvalidStatus
from websockets.sync.client import ClientConnection, connect

from bot.local.records import Channel, Json, Person
from bot.local.workspace import Workspace
from tests.support.workspace import bolt_app, over_socket, refusal


@pytest.fixture
def heard() -> list[str]:
    return []


@pytest.fixture
def app(ws: Workspace, heard: list[str]) -> App:
    app = bolt_app(ws)

    @app.event("message")
    def hear(event: Json) -> None:
        heard.append(event["text"])

    return app


@contextmanager
def bare(ws: Workspace, client: WebClient) -> Iterator[ClientConnection]:
    url = client.apps_connections_open(app_token=ws.app_token)["url"]
    with connect(url, proxy=None) as socket:
        yield socket


def frame(socket: ClientConnection) -> Json:
    received: Json = json.loads(socket.recv(timeout=10))
    return received


def test_hello_counts_the_connections(ws: Workspace, client: WebClient) -> None:
    with bare(ws, client) as first, bare(ws, client) as second:
        hellos = [frame(first), frame(second)]

    assert [h["type"] for h in hellos] == ["hello", "hello"]
    assert [h["num_connections"] for h in hellos] == [1, 2]
    assert hellos[0]["connection_info"] == {"app_id": ws.bot.app_id}


def test_an_envelope_carries_the_payload_and_attempt_0(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    with bare(ws, client) as socket:
        frame(socket)
        said = ws.say(rosa, log, "62p")
        envelope = frame(socket)
        socket.send(json.dumps({"envelope_id": envelope["envelope_id"]}))
        outcome = said.delivery.wait()

    assert envelope["type"] == "events_api"
    assert envelope["payload"] == said.delivery.payload
    assert (envelope["retry_attempt"], envelope["retry_reason"]) == (0, "")
    assert envelope["accepts_response_payload"] is False
    assert outcome.acknowledged


def test_an_envelope_without_an_ack_fails_and_comes_again(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    with bare(ws, client) as socket:
        frame(socket)
        said = ws.say(rosa, log, "62p")
        first = frame(socket)
        ws.courier.time_out(said.delivery)
        ws.courier.redeliver(said.delivery)
        second = frame(socket)
        socket.send(json.dumps({"envelope_id": second["envelope_id"]}))
        ws.settle()

    assert first["payload"]["event_id"] == second["payload"]["event_id"]
    assert first["envelope_id"] != second["envelope_id"]
    assert (second["retry_attempt"], second["retry_reason"]) == (1, "http_timeout")


def test_bolt_sees_the_retry_as_headers(
    ws: Workspace, rosa: Person, log: Channel, app: App, heard: list[str]
) -> None:
    nums: list[Any] = []

    @app.middleware
    def note(request: Any, next: Any) -> None:  # noqa: A002 - Bolt calls it by this name
        nums.append(request.headers.get("x-slack-retry-num"))
        next()

    with over_socket(ws, app):
        said = ws.say(rosa, log, "62p")
        ws.courier.redeliver(said.delivery)
        ws.settle()

    assert nums == [["0"], ["1"]]
    assert heard == ["62p", "62p"]


def test_two_connections_share_the_payloads(
    ws: Workspace, rosa: Person, log: Channel, app: App, heard: list[str]
) -> None:
    with over_socket(ws, app), over_socket(ws, app):
        ws.sockets.wait_connected(2)
        for number in range(4):
            ws.say(rosa, log, str(number))
        ws.settle()
        shares = [len(c.received) for c in ws.sockets.connections]

    assert heard == ["0", "1", "2", "3"]
    assert shares == [2, 2]


def test_the_client_reconnects_when_asked_to_refresh(
    ws: Workspace, rosa: Person, log: Channel, app: App, heard: list[str]
) -> None:
    with over_socket(ws, app):
        ws.sockets.wait_connected()

        ws.sockets.disconnect("refresh_requested")
        ws.sockets.wait_opened(2)
        said = ws.say(rosa, log, "after")

        assert said.delivery.wait().acknowledged
        ws.sockets.wait_connected(1)
    assert heard == ["after"]


def test_the_client_reconnects_after_the_server_closes(
    ws: Workspace, rosa: Person, log: Channel, app: App, heard: list[str]
) -> None:
    with over_socket(ws, app, ping_interval=0.1):
        ws.sockets.wait_connected()

        ws.sockets.cut()
        ws.sockets.wait_opened(2)
        said = ws.say(rosa, log, "after")

        assert said.delivery.wait().acknowledged
    assert heard == ["after"]


def test_an_eleventh_connection_is_turned_away(ws: Workspace, client: WebClient) -> None:
    with ExitStack() as stack:
        sockets = [stack.enter_context(bare(ws, client)) for _ in range(11)]
        greetings = [frame(socket) for socket in sockets]

        with pytest.raises(ConnectionClosed):
            sockets[-1].recv(timeout=10)

    assert [g["type"] for g in greetings] == ["hello"] * 10 + ["disconnect"]
    assert greetings[-1]["reason"] == "too_many_websockets"


def test_a_ticket_lets_one_client_in_once(ws: Workspace, client: WebClient) -> None:
    url = client.apps_connections_open(app_token=ws.app_token)["url"]
    with connect(url, proxy=None):
        pass

    with pytest.raises(InvalidStatus), connect(url, proxy=None):
        pass


def test_opening_a_connection_takes_the_app_token(ws: Workspace, client: WebClient) -> None:
    opening = client.apps_connections_open

    assert refusal(lambda: opening(app_token=ws.bot_token)) == "not_allowed_token_type"


def test_with_nobody_connected_the_delivery_fails(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    assert ws.say(rosa, log, "62p").delivery.wait().reason == "connection_failed"


def test_an_ack_nobody_waits_for_is_noted(ws: Workspace, client: WebClient) -> None:
    with bare(ws, client) as socket:
        frame(socket)
        socket.send(json.dumps({"envelope_id": "made-up"}))
        ws.sockets.push({"type": "ping-me"})
        frame(socket)

    ws.sockets.wait_connected(0)
    assert ws.sockets.stray_acks == [{"envelope_id": "made-up"}]
