"""What a test can order to go wrong, seen by the real client."""

from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from http.client import HTTPException

import pytest
from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError
from slack_sdk.http_retry import ConnectionErrorRetryHandler, FixedValueRetryIntervalCalculator

from bot.clock import SimulatedClock
from bot.local.errors import ScriptError
from bot.local.faults import Dropped, HttpError, RateLimited, Refused
from bot.local.records import Channel, Person
from bot.local.workspace import Workspace
from tests.support.workspace import refusal


def test_429_carries_retry_after_and_blocks_one_method_once(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    ws.faults.order("chat.postMessage", RateLimited(retry_after=7))

    with pytest.raises(SlackApiError) as caught:
        client.chat_postMessage(channel=log.id, text="hi")

    assert caught.value.response.status_code == 429
    assert caught.value.response.headers["Retry-After"] == "7"
    assert caught.value.response["error"] == "ratelimited"
    assert client.auth_test()["ok"]
    assert client.chat_postMessage(channel=log.id, text="hi")["ok"]


@pytest.mark.parametrize("status", [500, 502, 503])
def test_an_http_error_has_a_body_of_html(
    ws: Workspace, log: Channel, client: WebClient, status: int
) -> None:
    ws.faults.order("chat.postMessage", HttpError(status))

    with pytest.raises(SlackApiError) as caught:
        client.chat_postMessage(channel=log.id, text="hi")

    assert caught.value.response.status_code == status
    assert ws.messages(log) == []


def test_a_line_that_drops_after_the_work_leaves_the_message_there(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    ws.faults.order("chat.postMessage", Dropped())

    with pytest.raises((OSError, HTTPException)):
        client.chat_postMessage(channel=log.id, text="hi")

    assert [m.text for m in ws.messages(log)] == ["hi"]


def test_a_line_that_drops_before_the_work_leaves_nothing(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    ws.faults.order("chat.postMessage", Dropped(processed=False))

    with pytest.raises((OSError, HTTPException)):
        client.chat_postMessage(channel=log.id, text="hi")

    assert ws.messages(log) == []


def test_the_sdks_own_retry_posts_twice_over_a_dropped_line(ws: Workspace, log: Channel) -> None:
    # slack_sdk's default retry of connection errors: the reason why the outbox turns it off.
    at_once = ConnectionErrorRetryHandler(
        interval_calculator=FixedValueRetryIntervalCalculator(fixed_internal=0)
    )
    eager = WebClient(ws.bot_token, base_url=ws.api_url, retry_handlers=[at_once])
    ws.faults.order("chat.postMessage", Dropped())

    eager.chat_postMessage(channel=log.id, text="hi")

    assert [m.text for m in ws.messages(log)] == ["hi", "hi"]


def test_a_given_error_for_the_next_two_calls(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    ws.faults.order("chat.postMessage", Refused("restricted_action"), times=2)

    def post() -> str:
        return refusal(lambda: client.chat_postMessage(channel=log.id, text="hi"))

    assert [post(), post()] == ["restricted_action"] * 2
    assert client.chat_postMessage(channel=log.id, text="hi")["ok"]


def test_fatal_error_may_have_done_the_work(ws: Workspace, log: Channel, client: WebClient) -> None:
    ws.faults.order("chat.postMessage", Refused("fatal_error", processed=True))

    refused = refusal(lambda: client.chat_postMessage(channel=log.id, text="hi"))

    assert refused == "fatal_error"
    assert len(ws.messages(log)) == 1


@pytest.mark.parametrize("processed", [False, True])
def test_a_gate_holds_a_call_until_it_is_opened(
    ws: Workspace, log: Channel, client: WebClient, processed: bool
) -> None:
    gate = ws.faults.gate("chat.postMessage", processed=processed)
    with ThreadPoolExecutor() as pool:
        call = pool.submit(client.chat_postMessage, channel=log.id, text="hi")
        assert gate.wait_reached()
        there = len(ws.messages(log))

        gate.open()

        assert call.result(timeout=10)["ok"]
    assert there == int(processed)


def test_settle_says_what_it_waits_for(ws: Workspace, client: WebClient) -> None:
    gate = ws.faults.gate("auth.test")
    with ThreadPoolExecutor() as pool:
        call = pool.submit(client.auth_test)
        assert gate.wait_reached()

        with pytest.raises(ScriptError, match=r"auth\.test"):
            ws.settle(timeout=0.01)

        gate.open()
        call.result(timeout=10)
    ws.settle()


def test_the_pace_is_one_post_a_second_and_channel_when_enforced(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient, clock: SimulatedClock
) -> None:
    ws.rates.enforce()
    client.chat_postMessage(channel=log.id, text="one")
    client.chat_postMessage(channel=rosa.id, text="elsewhere")

    refused = refusal(lambda: client.chat_postMessage(channel=log.id, text="two"))
    clock.advance(timedelta(seconds=1))

    assert refused == "ratelimited"
    assert client.chat_postMessage(channel=log.id, text="two")["ok"]


def test_a_workspace_takes_three_hundred_posts_a_minute_when_enforced(
    ws: Workspace, clock: SimulatedClock
) -> None:
    ws.rates.enforce()
    post = "chat.postMessage"

    waits = [ws.rates.wait(post, {"channel": f"C{number}"}) for number in range(301)]
    again = ws.rates.wait(post, {"channel": "C0"})
    clock.advance(timedelta(seconds=60))

    assert waits == [None] * 300 + [60]
    assert again == 60
    assert ws.rates.wait(post, {"channel": "C0"}) is None
