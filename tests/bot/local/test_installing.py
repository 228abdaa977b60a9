"""Installing, removing and reinstalling, against docs.slack.dev, "Installing with OAuth"."""

from urllib.parse import parse_qs, urlencode, urlsplit

import pytest
from slack_sdk import WebClient

from bot.clock import SimulatedClock
from bot.local.errors import ScriptError
from bot.local.records import Channel, Person
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from tests.support.workspace import bolt_app, client_of, over_socket, refusal

BACK = "https://example.org/slack/oauth_redirect"


def authorize_url(client_id: str) -> str:
    asked = {"client_id": client_id, "scope": "chat:write,im:history", "state": "s1"}
    return f"https://example.org/authorize?{urlencode(asked | {'redirect_uri': BACK})}"


def code_in(address: str) -> str:
    return parse_qs(urlsplit(address).query)["code"][0]


def test_an_approved_app_gets_a_token_for_its_code_once(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    address = ws.approve(rosa, authorize_url(ws.client_id))
    exchange = {"client_id": ws.client_id, "client_secret": ws.client_secret}

    answer = client.oauth_v2_access(code=code_in(address), redirect_uri=BACK, **exchange)
    again = refusal(
        lambda: client.oauth_v2_access(code=code_in(address), redirect_uri=BACK, **exchange)
    )

    assert address.startswith(BACK)
    assert parse_qs(urlsplit(address).query)["state"] == ["s1"]
    assert answer["access_token"] == ws.bot_token
    assert (answer["bot_user_id"], answer["team"]["id"]) == (ws.bot.id, ws.team_id)
    assert ws.scopes == frozenset({"chat:write", "im:history"})
    assert again == "code_already_used"


def test_a_code_needs_the_right_secret_and_address(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    code = code_in(ws.approve(rosa, authorize_url(ws.client_id)))

    def exchange(secret: str, code: str, back: str) -> str:
        return refusal(
            lambda: client.oauth_v2_access(
                client_id=ws.client_id, client_secret=secret, code=code, redirect_uri=back
            )
        )

    assert exchange("wrong", code, BACK) == "bad_client_secret"
    assert exchange(ws.client_secret, "wrong", BACK) == "invalid_code"
    assert exchange(ws.client_secret, code, "https://example.org/else") == "bad_redirect_uri"


def test_another_apps_page_is_not_approved(ws: Workspace, rosa: Person) -> None:
    with pytest.raises(ScriptError, match="client id"):
        ws.approve(rosa, authorize_url("another"))


def test_uninstalling_sends_both_events_and_then_nothing(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    revoked, removed = ws.uninstall()

    assert revoked.event["tokens"] == {"bot": [ws.bot.id]}
    assert removed.event["type"] == "app_uninstalled"
    assert ws.say(rosa, log, "62p").deliveries == ()
    assert refusal(client.auth_test) == "account_inactive"


def test_a_revoked_token_is_refused(ws: Workspace, client: WebClient) -> None:
    ws.revoke_tokens()

    assert refusal(client.auth_test) == "token_revoked"


def test_reinstalling_gives_a_new_token_and_the_old_one_stays_dead(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    old = ws.bot_token
    ws.uninstall()

    new = ws.reinstall()

    assert new == ws.bot_token != old
    assert refusal(client.auth_test) == "token_revoked"
    assert client_of(ws).auth_test()["ok"]
    assert ws.say(rosa, log, "62p").deliveries


def test_two_workspaces_of_one_app_share_its_socket(
    stand_in: StandIn, ws: Workspace, clock: SimulatedClock
) -> None:
    second = stand_in.new_workspace(clock.now, same_app_as=ws)
    nico = second.add_person("Nico Bell")
    app = bolt_app(ws)
    teams: list[str] = []

    @app.event("message")
    def hear(body: dict[str, str]) -> None:
        teams.append(body["team_id"])

    with over_socket(ws, app):
        second.say(nico, second.add_channel("log", [nico]), "62p")
        second.settle()

    assert teams == [second.team_id] != [ws.team_id]
    assert second.signing_secret == ws.signing_secret
    assert second.bot_token != ws.bot_token
