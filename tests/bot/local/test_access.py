"""Tokens, scopes and the errors that every Web API method shares."""

import httpx
import pytest
from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError

from bot.clock import SimulatedClock
from bot.local.records import Channel, Person
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from tests.support.workspace import client_of, refusal


def test_auth_test_says_who_the_app_is(ws: Workspace, client: WebClient) -> None:
    answer = client.auth_test()

    assert answer["team_id"] == ws.team_id
    assert (answer["user_id"], answer["bot_id"]) == (ws.bot.id, ws.bot.bot_id)


def test_a_token_shows_its_own_workspace_alone(
    stand_in: StandIn, ws: Workspace, log: Channel, clock: SimulatedClock
) -> None:
    other = stand_in.new_workspace(clock.now)

    client = client_of(other)

    assert client.auth_test()["team_id"] == other.team_id
    assert refusal(lambda: client.conversations_info(channel=log.id)) == "channel_not_found"


def test_a_missing_a_wrong_and_a_mistaken_token(stand_in: StandIn, ws: Workspace) -> None:
    def calling(token: str | None) -> str:
        return refusal(WebClient(token, base_url=stand_in.api_url).auth_test)

    assert calling(None) == "not_authed"
    assert calling("xoxb-made-up") == "invalid_auth"
    assert calling(ws.app_token) == "not_allowed_token_type"


def test_a_closed_workspaces_token_is_invalid(stand_in: StandIn, clock: SimulatedClock) -> None:
    closed = stand_in.new_workspace(clock.now)

    stand_in.close_workspace(closed)

    assert refusal(client_of(closed).auth_test) == "invalid_auth"


def test_an_unknown_method(client: WebClient) -> None:
    assert refusal(lambda: client.api_call("chat.postMesage")) == "unknown_method"


def test_without_the_scope_the_answer_names_it(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    ws.grant({"reactions:write"})

    with pytest.raises(SlackApiError, match="missing_scope") as caught:
        client.chat_postMessage(channel=log.id, text="hi")

    answer = caught.value.response
    assert answer["needed"] == "chat:write"
    assert answer["provided"] == "reactions:write"


def test_a_private_channels_history_needs_its_own_scope(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    staff = ws.add_channel("staff", [rosa], private=True)
    ws.grant({"channels:history"})

    assert client.conversations_history(channel=log.id)["ok"]
    refused = refusal(lambda: client.conversations_history(channel=staff.id))
    assert refused == "missing_scope"


def test_events_need_their_scope_too(ws: Workspace, rosa: Person, log: Channel) -> None:
    ws.grant({"channels:history"})

    assert ws.say(rosa, log, "62p").deliveries
    assert not ws.say(rosa, ws.dm(rosa), "62p").deliveries


def test_writing_to_a_user_needs_no_im_scope(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    ws.grant({"chat:write"})

    assert client.chat_postMessage(channel=rosa.id, text="hi")["ok"]
    refused = refusal(lambda: client.conversations_open(users=[rosa.id]))
    assert refused == "missing_scope"


def test_a_body_that_is_no_json(ws: Workspace) -> None:
    headers = {"Authorization": f"Bearer {ws.bot_token}", "Content-Type": "application/json"}

    with httpx.Client(trust_env=False) as client:
        answer = client.post(f"{ws.api_url}chat.postMessage", content="{", headers=headers)

    assert answer.json() == {"ok": False, "error": "invalid_json"}


def test_a_user_and_the_list_of_users(ws: Workspace, rosa: Person, client: WebClient) -> None:
    user = client.users_info(user=rosa.id, include_locale=True)["user"]

    assert (user["real_name"], user["tz"], user["tz_offset"]) == (
        "Rosa Delgado",
        "America/New_York",
        -4 * 3600,
    )
    assert user["locale"] == "en-US"
    assert [m["id"] for m in client.users_list()["members"]] == [ws.bot.id, rosa.id]
    assert refusal(lambda: client.users_info(user="U404")) == "user_not_found"


def test_every_call_is_logged_with_simulated_time(
    ws: Workspace, log: Channel, client: WebClient, clock: SimulatedClock
) -> None:
    client.chat_postMessage(channel=log.id, text="62")

    (call,) = ws.calls.of("chat.postMessage")
    assert call.args == {"channel": log.id, "text": "62"}
    assert (call.at, call.ok, call.status) == (clock.now(), True, 200)
