"""Payloads reach a real Bolt app, over HTTP and over Socket Mode, and failures are failures."""

from collections.abc import Iterator
from typing import Any

import pytest
from slack_bolt import App

from bot.local.records import Json
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from tests.support.workspace import AppHost, bolt_app, over_http, over_socket


@pytest.fixture
def seen() -> list[Json]:
    return []


@pytest.fixture
def app(ws: Workspace, seen: list[Json]) -> App:
    app = bolt_app(ws)

    @app.event("message")
    def hear(event: Json, client: Any) -> None:
        seen.append(event)
        if event.get("text") == "fail":
            raise RuntimeError("as ordered")
        if event.get("text") == "62p":
            client.reactions_add(channel=event["channel"], timestamp=event["ts"], name="baseball")

    return app


@pytest.fixture(params=["http", "socket"])
def running(
    request: pytest.FixtureRequest, ws: Workspace, app: App, stand_in: StandIn, app_host: AppHost
) -> Iterator[None]:
    way = over_http(stand_in, app_host, ws, app) if request.param == "http" else None
    with way or over_socket(ws, app):
        yield


@pytest.mark.usefixtures("running")
def test_a_line_reaches_the_app_and_is_answered(ws: Workspace, seen: list[Json]) -> None:
    rosa = ws.add_person("Rosa Delgado")
    log = ws.add_channel("pitching-log", [rosa])

    said = ws.say(rosa, log, "62p")
    ws.settle()

    assert said.delivery.outcome is not None
    assert said.delivery.outcome.acknowledged
    assert [e["text"] for e in seen] == ["62p"]
    assert ws.reactions_of_bot(said) == ["baseball"]
