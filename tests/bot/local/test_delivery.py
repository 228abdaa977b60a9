"""Payloads reach a real Bolt app, over HTTP and over Socket Mode alike."""

from collections.abc import Iterator
from threading import Event
from typing import Any

import pytest
from slack_bolt import App

from bot.local.errors import ScriptError
from bot.local.records import Channel, Json, Person
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from tests.support.workspace import AppHost, bolt_app, over_http, over_socket


class Heard:
    """A listener that keeps what it was sent, and does as the text says."""

    def __init__(self) -> None:
        self.events: list[Json] = []
        self.go_on = Event()
        self.stuck = Event()

    def __call__(self, event: Json, client: Any) -> None:
        self.events.append(event)
        text = event.get("text")
        if text == "fail":
            raise RuntimeError("as ordered")
        if text == "wait":
            self.stuck.set()
            self.go_on.wait(timeout=10)
        if text == "62p":
            client.reactions_add(channel=event["channel"], timestamp=event["ts"], name="baseball")

    @property
    def texts(self) -> list[str]:
        return [event["text"] for event in self.events]


@pytest.fixture
def heard() -> Iterator[Heard]:
    heard = Heard()
    yield heard
    heard.go_on.set()


@pytest.fixture
def app(ws: Workspace, heard: Heard) -> App:
    app = bolt_app(ws)
    app.event("message")(heard)
    return app


@pytest.fixture(params=["http", "socket"], autouse=True)
def running(
    request: pytest.FixtureRequest, ws: Workspace, app: App, stand_in: StandIn, app_host: AppHost
) -> Iterator[None]:
    # A listener that raises gives no ack over a socket: that failure shows only as silence.
    ws.sockets.ack_limit = 0.3
    way = over_http(stand_in, app_host, ws, app) if request.param == "http" else None
    with way or over_socket(ws, app):
        yield


def test_a_line_reaches_the_app_and_is_answered(
    ws: Workspace, rosa: Person, log: Channel, heard: Heard
) -> None:
    said = ws.say(rosa, log, "62p")
    ws.settle()

    assert said.delivery.wait().acknowledged
    assert heard.texts == ["62p"]
    assert ws.reactions_of_bot(said) == ["baseball"]


def test_a_listener_that_raises_is_a_failed_delivery_and_slack_sends_it_again(
    ws: Workspace, rosa: Person, log: Channel, heard: Heard
) -> None:
    said = ws.say(rosa, log, "fail")
    first = said.delivery.wait()

    again = ws.courier.redeliver(said.delivery)
    again.wait()

    assert first.reason in ("http_error", "http_timeout")
    assert (again.attempt, again.event_id) == (1, said.delivery.event_id)
    assert [e["ts"] for e in heard.events] == [said.ts] * 2


def test_an_answer_that_comes_too_late_is_no_ack(
    ws: Workspace, rosa: Person, log: Channel, heard: Heard
) -> None:
    said = ws.say(rosa, log, "wait")
    assert heard.stuck.wait(timeout=10)

    ws.courier.time_out(said.delivery)

    heard.go_on.set()
    assert said.delivery.wait().reason == "http_timeout"
    ws.settle()


def test_a_duplicate_has_the_same_event_id_and_no_retry_mark(
    ws: Workspace, rosa: Person, log: Channel, heard: Heard
) -> None:
    said = ws.say(rosa, log, "twice")

    copy = ws.courier.duplicate(said.delivery)
    ws.settle()

    assert (copy.event_id, copy.attempt) == (said.delivery.event_id, 0)
    assert heard.texts == ["twice", "twice"]


def test_what_is_held_back_comes_in_the_order_of_release(
    ws: Workspace, rosa: Person, log: Channel, heard: Heard
) -> None:
    ws.courier.hold()
    said = ws.say(rosa, log, "one")
    (edit,) = ws.edit(said, "two")
    ws.settle()
    before = list(heard.events)

    ws.courier.release([edit, said.delivery])
    ws.settle()

    assert before == []
    assert [e.get("subtype") for e in heard.events] == ["message_changed", None]


def test_what_was_lost_never_comes(ws: Workspace, rosa: Person, log: Channel, heard: Heard) -> None:
    ws.courier.hold()
    said = ws.say(rosa, log, "lost")

    lost = ws.courier.drop_held()

    assert lost == [said.delivery]
    assert said.delivery.wait().reason == "connection_failed"
    assert heard.events == []


def test_only_what_is_held_can_be_released(ws: Workspace, rosa: Person, log: Channel) -> None:
    said = ws.say(rosa, log, "one")
    ws.settle()

    with pytest.raises(ScriptError, match="Not held back"):
        ws.courier.release([said.delivery])


def test_side_by_side_one_stuck_listener_does_not_keep_the_next_line(
    ws: Workspace, rosa: Person, log: Channel, heard: Heard
) -> None:
    ws.courier.at_once = 2
    ws.say(rosa, log, "wait")
    assert heard.stuck.wait(timeout=10)

    second = ws.say(rosa, log, "62p")

    assert second.delivery.wait().acknowledged
    heard.go_on.set()
    ws.settle()


def test_an_event_without_a_listener_is_a_failed_delivery(ws: Workspace, rosa: Person) -> None:
    (delivery,) = ws.open_home(rosa)

    assert not delivery.wait().acknowledged
