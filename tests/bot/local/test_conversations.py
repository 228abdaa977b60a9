"""conversations.* against the method pages of docs.slack.dev/reference/methods."""

import pytest
from slack_sdk import WebClient

from bot.local.records import Channel, Person
from bot.local.workspace import Workspace
from tests.support.workspace import refusal


def test_history_is_newest_first_and_leaves_threads_out(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    first = ws.say(rosa, log, "one")
    ws.say(rosa, log, "below", under=first)
    ws.say(rosa, log, "two")

    answer = client.conversations_history(channel=log.id)

    assert [m["text"] for m in answer["messages"]] == ["two", "one"]
    assert answer["messages"][1]["reply_count"] == 1
    assert answer["has_more"] is False


def test_history_goes_page_by_page(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    for number in range(5):
        ws.say(rosa, log, str(number))

    pages = client.conversations_history(channel=log.id, limit=2)

    texts = [[m["text"] for m in page["messages"]] for page in pages]
    assert texts == [["4", "3"], ["2", "1"], ["0"]]


@pytest.mark.parametrize(("inclusive", "expected"), [(False, ["1"]), (True, ["2", "1", "0"])])
def test_history_between_two_stamps(
    ws: Workspace,
    rosa: Person,
    log: Channel,
    client: WebClient,
    inclusive: bool,
    expected: list[str],
) -> None:
    said = [ws.say(rosa, log, str(number)) for number in range(3)]

    answer = client.conversations_history(
        channel=log.id, oldest=said[0].ts, latest=said[2].ts, inclusive=inclusive
    )

    assert [m["text"] for m in answer["messages"]] == expected


def test_metadata_is_shown_only_on_request(log: Channel, client: WebClient) -> None:
    metadata = {"event_type": "answer", "event_payload": {"row": 7}}
    client.chat_postMessage(channel=log.id, text="62", metadata=metadata)

    (plain,) = client.conversations_history(channel=log.id)["messages"]
    (full,) = client.conversations_history(channel=log.id, include_all_metadata=True)["messages"]

    assert "metadata" not in plain
    assert full["metadata"] == metadata


def test_replies_start_with_the_parent(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "one")
    ws.say(rosa, log, "two", under=said)

    answer = client.conversations_replies(channel=log.id, ts=said.ts)

    assert [m["text"] for m in answer["messages"]] == ["one", "two"]


def test_replies_to_nothing(log: Channel, client: WebClient) -> None:
    refused = refusal(lambda: client.conversations_replies(channel=log.id, ts="1777752000.000000"))

    assert refused == "thread_not_found"


def test_the_list_hides_private_channels_of_others(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    staff = ws.add_channel("staff", [rosa], private=True)
    ws.add_channel("board", [rosa], private=True, bot=False)

    answer = client.conversations_list(types="public_channel,private_channel")

    assert [c["id"] for c in answer["channels"]] == [log.id, staff.id]


def test_the_default_list_is_of_public_channels(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    ws.add_channel("staff", [rosa], private=True)

    assert [c["name"] for c in client.conversations_list()["channels"]] == ["pitching-log"]


def test_info_tells_kind_and_membership(ws: Workspace, rosa: Person, client: WebClient) -> None:
    staff = ws.add_channel("staff", [rosa], private=True)

    channel = client.conversations_info(channel=staff.id)["channel"]

    assert (channel["is_private"], channel["is_member"]) == (True, True)
    assert "num_members" not in channel


def test_members_goes_page_by_page(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    pages = [page["members"] for page in client.conversations_members(channel=log.id, limit=1)]

    assert pages == [[rosa.id], [ws.bot.id]]


def test_opening_the_same_group_twice_gives_one_conversation(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    coach = ws.add_person("Marta Quinn")

    first = client.conversations_open(users=[rosa.id, coach.id])
    second = client.conversations_open(users=[coach.id, rosa.id])

    assert first["channel"]["id"] == second["channel"]["id"]
    assert client.chat_postMessage(channel=first["channel"]["id"], text="hi")["ok"]


def test_whom_a_conversation_cannot_be_opened_with(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    ws.change_person(rosa, deleted=True)
    crowd = [ws.add_person(f"Player {n}").id for n in range(9)]

    def opening(*users: str) -> str:
        return refusal(lambda: client.conversations_open(users=list(users)))

    assert opening(rosa.id) == "user_disabled"
    assert opening("U404") == "user_not_found"
    assert opening(*crowd) == "too_many_users"
    assert opening() == "users_list_not_supplied"


@pytest.mark.parametrize("cursor", ["nonsense", "bmV4dDpz", "cHJldjoy"])
def test_a_made_up_cursor_is_refused(log: Channel, client: WebClient, cursor: str) -> None:
    refused = refusal(lambda: client.conversations_history(channel=log.id, cursor=cursor))

    assert refused == "invalid_cursor"
