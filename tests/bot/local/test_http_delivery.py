"""Requests over HTTP as docs.slack.dev describes them; the signature is checked by slack_sdk."""

import json
from collections.abc import Callable, Iterator
from datetime import timedelta
from threading import Event
from typing import Any

import pytest
from slack_sdk.signature import SignatureVerifier
from starlette.requests import Request
from starlette.responses import PlainTextResponse

from bot.local.http_target import HttpTarget
from bot.local.records import Channel, Person
from bot.local.server import StandIn
from bot.local.signing import signature
from bot.local.workspace import Workspace
from tests.support.workspace import AppHost, bolt_app, over_http


class Receiver:
    """An app that keeps raw requests and answers with a status of the test's choosing."""

    def __init__(self) -> None:
        self.requests: list[tuple[dict[str, str], bytes]] = []
        self.status = 200
        self.headers: dict[str, str] = {}

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:
        request = Request(scope, receive)
        self.requests.append((dict(request.headers), await request.body()))
        answer = PlainTextResponse("", self.status, headers=self.headers)
        await answer(scope, receive, send)


@pytest.fixture
def receiver() -> Receiver:
    return Receiver()


@pytest.fixture
def target(
    ws: Workspace, stand_in: StandIn, app_host: AppHost, receiver: Receiver
) -> Iterator[HttpTarget]:
    with app_host.serving(receiver) as base:
        yield stand_in.deliver_to(ws, f"{base}/slack/events")


def test_the_signature_of_slacks_own_published_example() -> None:
    # docs.slack.dev, "Verifying requests from Slack", step by step example.
    body = (
        b"token=xyzz0WbapA4vBCDEFasx0q6G&team_id=T1DC2JH3J&team_domain=testteamnow"
        b"&channel_id=G8PSS9T3V&channel_name=foobar&user_id=U2CERLKJA&user_name=roadrunner"
        b"&command=%2Fwebhook-collect&text=&response_url=https%3A%2F%2Fhooks.slack.com%2Fcommands"
        b"%2FT1DC2JH3J%2F397700885554%2F96rGlfmibIGlgcZRskXaIFfN"
        b"&trigger_id=398738663015.47445629121.803a0bc887a14d10d2c447fce8b6703c"
    )

    made = signature("8f742231b10e8888abcd99yyyzzz85a5", "1531420618", body)

    assert made == "v0=a2114d57b48eac39b9ad189dd8316235a7b4a8d21a10bd27519666489c69b503"


@pytest.mark.usefixtures("target")
def test_an_event_is_signed_json(
    ws: Workspace, rosa: Person, log: Channel, receiver: Receiver
) -> None:
    said = ws.say(rosa, log, "62p ñ")
    ws.settle()

    ((headers, body),) = receiver.requests
    assert SignatureVerifier(ws.signing_secret).is_valid_request(body, headers)
    assert headers["content-type"] == "application/json"
    assert json.loads(body) == said.delivery.payload
    assert "x-slack-retry-num" not in headers


@pytest.mark.usefixtures("target")
def test_a_retry_says_its_number_and_reason(
    ws: Workspace, rosa: Person, log: Channel, receiver: Receiver
) -> None:
    receiver.status = 500
    said = ws.say(rosa, log, "62p")
    said.delivery.wait()
    receiver.status = 200

    again = ws.courier.redeliver(said.delivery, reason="http_error")

    assert again.wait().acknowledged
    headers, _ = receiver.requests[-1]
    assert (headers["x-slack-retry-num"], headers["x-slack-retry-reason"]) == ("1", "http_error")


@pytest.mark.usefixtures("target")
@pytest.mark.parametrize(("status", "reason"), [(200, None), (204, None), (404, "http_error")])
def test_any_2xx_is_an_ack(
    ws: Workspace, rosa: Person, log: Channel, receiver: Receiver, status: int, reason: str | None
) -> None:
    receiver.status = status

    outcome = ws.say(rosa, log, "62p").delivery.wait()

    assert (outcome.status, outcome.reason) == (status, reason)


@pytest.mark.usefixtures("target")
def test_an_app_can_ask_not_to_be_sent_it_again(
    ws: Workspace, rosa: Person, log: Channel, receiver: Receiver
) -> None:
    receiver.status, receiver.headers = 503, {"x-slack-no-retry": "1"}

    assert ws.say(rosa, log, "62p").delivery.wait().no_retry


def test_nobody_listening_is_connection_failed(
    ws: Workspace, rosa: Person, log: Channel, stand_in: StandIn
) -> None:
    stand_in.deliver_to(ws, "http://127.0.0.1:1/slack/events")

    assert ws.say(rosa, log, "62p").delivery.wait().reason == "connection_failed"


def test_silence_past_the_limit_is_http_timeout(
    ws: Workspace, rosa: Person, log: Channel, stand_in: StandIn, app_host: AppHost
) -> None:
    go_on = Event()

    async def silent(scope: Any, receive: Any, send: Any) -> None:
        while not (await receive())["type"].endswith("disconnect"):
            pass
        go_on.set()

    with app_host.serving(silent) as base:
        stand_in.deliver_to(ws, base, ack_limit=0.05)
        outcome = ws.say(rosa, log, "62p").delivery.wait()
        assert go_on.wait(timeout=10)

    assert outcome.reason == "http_timeout"


def test_one_event_can_go_to_two_processes(
    ws: Workspace,
    rosa: Person,
    log: Channel,
    target: HttpTarget,
    app_host: AppHost,
    receiver: Receiver,
) -> None:
    second = Receiver()
    with app_host.serving(second) as base:
        said = ws.say(rosa, log, "62p")
        ws.courier.duplicate(said.delivery, url=f"{base}/slack/events")
        ws.settle()

    assert [body for _, body in receiver.requests] == [body for _, body in second.requests]


Forge = Callable[[HttpTarget, bytes], dict[str, str]]


def _right(target: HttpTarget, body: bytes) -> dict[str, str]:
    return target.signed(body)


def _too_old(target: HttpTarget, body: bytes) -> dict[str, str]:
    return target.signed(body, shift=timedelta(seconds=-301))


def _from_the_future(target: HttpTarget, body: bytes) -> dict[str, str]:
    return target.signed(body, shift=timedelta(seconds=302))


def _over_another_body(target: HttpTarget, body: bytes) -> dict[str, str]:
    return target.signed(body + b" ")


def _with_another_secret(target: HttpTarget, body: bytes) -> dict[str, str]:
    return target.signed(body, secret="0" * 32)


@pytest.mark.parametrize(
    ("forge", "status"),
    [
        (_right, 200),
        (_too_old, 401),
        (_from_the_future, 401),
        (_over_another_body, 401),
        (_with_another_secret, 401),
    ],
)
def test_bolt_takes_genuine_requests_alone(
    ws: Workspace, stand_in: StandIn, app_host: AppHost, forge: Forge, status: int
) -> None:
    body = json.dumps({"type": "url_verification", "challenge": "c0ffee"}).encode()

    with over_http(stand_in, app_host, ws, bolt_app(ws)) as url:
        target = stand_in.deliver_to(ws, url)
        headers = forge(target, body) | {"Content-Type": "application/json"}
        outcome = target.post(body, headers)

    assert outcome.status == status
