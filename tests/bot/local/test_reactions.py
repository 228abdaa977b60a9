"""reactions.* against the method pages of docs.slack.dev/reference/methods."""

import pytest
from slack_sdk import WebClient

from bot.local.errors import ScriptError
from bot.local.records import Channel, Person
from bot.local.workspace import Workspace
from tests.support.workspace import refusal


def test_an_emoji_is_put_once_and_taken_away_once(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")
    on = {"channel": log.id, "timestamp": said.ts}

    client.reactions_add(name="baseball", **on)
    again = refusal(lambda: client.reactions_add(name="baseball", **on))
    seen = ws.reactions_of_bot(said)
    client.reactions_remove(name="baseball", **on)
    nothing = refusal(lambda: client.reactions_remove(name="baseball", **on))

    assert (again, seen, nothing) == ("already_reacted", ["baseball"], "no_reaction")
    assert ws.reactions(said) == ()


def test_two_people_share_one_emoji(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")
    ws.react(rosa, said, "baseball")

    client.reactions_add(channel=log.id, timestamp=said.ts, name="baseball")

    (message,) = client.conversations_history(channel=log.id)["messages"]
    users = [rosa.id, ws.bot.id]
    assert message["reactions"] == [{"name": "baseball", "users": users, "count": 2}]


@pytest.mark.parametrize("name", [":baseball:", "Baseball", "no_such_emoji_here"])
def test_an_unknown_name_is_refused(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient, name: str
) -> None:
    said = ws.say(rosa, log, "62p")

    refused = refusal(lambda: client.reactions_add(channel=log.id, timestamp=said.ts, name=name))

    assert refused == "invalid_name"


def test_a_custom_emoji_can_be_added(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")
    ws.add_emoji("spin")

    client.reactions_add(channel=log.id, timestamp=said.ts, name="spin")

    assert ws.reactions_of_bot(said) == ["spin"]
    with pytest.raises(ScriptError, match="no emoji name"):
        ws.add_emoji("Spin!")


def test_a_message_that_is_gone(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")
    ws.delete(said)

    refused = refusal(
        lambda: client.reactions_add(channel=log.id, timestamp=said.ts, name="baseball")
    )

    assert refused == "message_not_found"


def test_where_no_emoji_can_be_put(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")

    def add(**on: str) -> str:
        return refusal(lambda: client.api_call("reactions.add", params={"name": "fire", **on}))

    assert add(channel=log.id) == "no_item_specified"
    assert add(channel=log.id, timestamp="yesterday") == "bad_timestamp"
    ws.archive(log, rosa)
    assert add(channel=log.id, timestamp=said.ts) == "is_archived"
