import pytest
from slack_sdk import WebClient

from bot.local.errors import ScriptError
from bot.local.records import Channel, Person
from bot.local.workspace import Workspace
from tests.support.workspace import refusal


def test_somebody_who_joins_causes_a_line_and_an_event(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    nico = ws.add_person("Nico Bell")

    line, joined = ws.join(nico, log, by=rosa)

    assert line.event["subtype"] == "channel_join"
    assert joined.event["type"] == "member_joined_channel"
    assert joined.event["inviter"] == rosa.id
    assert nico.id in ws.state.channel(log).members


def test_the_apps_own_joining_is_sent_to_it(ws: Workspace, rosa: Person) -> None:
    later = ws.add_channel("bullpen", [rosa], bot=False)

    *_, joined = ws.invite_app(later, by=rosa)

    assert joined.event["user"] == ws.bot.id


def test_a_deactivated_account_is_a_user_change(ws: Workspace, rosa: Person) -> None:
    (delivery,) = ws.change_person(rosa, deleted=True)

    assert delivery.event["type"] == "user_change"
    assert delivery.event["user"]["deleted"] is True


def test_a_deactivated_person_cannot_post(ws: Workspace, rosa: Person, log: Channel) -> None:
    ws.change_person(rosa, deleted=True)

    with pytest.raises(ScriptError, match="deactivated"):
        ws.say(rosa, log, "62p")


def test_a_person_outside_a_channel_cannot_post_there(ws: Workspace, log: Channel) -> None:
    stranger = ws.add_person("Pat Hale")

    with pytest.raises(ScriptError, match="join first"):
        ws.say(stranger, log, "62p")


def test_an_archived_channel_takes_no_messages(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    ws.archive(log, rosa)

    refused = refusal(lambda: client.chat_postMessage(channel=log.id, text="62, noted"))

    assert refused == "is_archived"
    ws.archive(log, rosa, back=True)
    assert client.chat_postMessage(channel=log.id, text="62, noted")["ok"]


def test_opening_the_home_tab_says_which_tab_and_shows_no_view_at_first(
    ws: Workspace, rosa: Person
) -> None:
    (delivery,) = ws.open_home(rosa)

    assert delivery.event["type"] == "app_home_opened"
    assert delivery.event["tab"] == "home"
    assert "view" not in delivery.event
