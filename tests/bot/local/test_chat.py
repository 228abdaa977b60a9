"""chat.* against the method pages of docs.slack.dev/reference/methods."""

from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest
from slack_sdk import WebClient

from bot.clock import SimulatedClock
from bot.local.records import Channel, Person
from bot.local.workspace import Workspace
from tests.support.workspace import refusal

SECTION: Any = {"type": "section", "text": {"type": "mrkdwn", "text": "62, noted"}}


def test_a_post_carries_simulated_time_and_comes_back_whole(
    ws: Workspace, log: Channel, client: WebClient, clock: SimulatedClock
) -> None:
    metadata = {"event_type": "answer", "event_payload": {"row": 7}}

    answer = client.chat_postMessage(channel=log.id, text="62, noted", metadata=metadata)

    assert answer["ts"].startswith(str(int(clock.now().timestamp())))
    assert answer["message"]["bot_id"] == ws.bot.bot_id
    (message,) = ws.messages(log)
    assert (message.text, message.metadata) == ("62, noted", metadata)


def test_a_post_to_a_user_opens_the_direct_message(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    first = client.chat_postMessage(channel=rosa.id, text="one")
    second = client.chat_postMessage(channel=rosa.id, text="two")

    assert first["channel"] == second["channel"]
    assert first["channel"].startswith("D")
    assert [m.text for m in ws.dm_messages(rosa)] == ["one", "two"]


def test_where_the_app_may_not_post(ws: Workspace, rosa: Person, client: WebClient) -> None:
    public = ws.add_channel("lunch", [rosa], bot=False)
    private = ws.add_channel("board", [rosa], bot=False, private=True)

    def post(channel: str) -> str:
        return refusal(lambda: client.chat_postMessage(channel=channel, text="hi"))

    errors = [post(place) for place in (public.id, private.id, "C404", "U404")]

    assert errors == ["not_in_channel", *["channel_not_found"] * 3]


def test_with_the_messages_tab_off_nobody_is_written_to(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    ws.messages_tab = False

    refused = refusal(lambda: client.chat_postMessage(channel=rosa.id, text="hi"))

    assert refused == "messages_tab_disabled"


def test_a_post_needs_text_or_blocks(log: Channel, client: WebClient) -> None:
    def post(**content: Any) -> Any:
        return client.api_call("chat.postMessage", json={"channel": log.id, **content})

    assert refusal(lambda: post(text="")) == "no_text"
    assert post(blocks=[SECTION])["ok"]


def test_a_missing_argument_is_refused(client: WebClient) -> None:
    refused = refusal(lambda: client.api_call("chat.postMessage", json={"text": "hi"}))

    assert refused == "invalid_arguments"


def test_text_past_40000_characters_is_cut_and_past_4000_an_update_is_refused(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    posted = client.chat_postMessage(channel=log.id, text="x" * 40_001)

    refused = refusal(lambda: client.chat_update(channel=log.id, ts=posted["ts"], text="x" * 4_001))

    assert len(ws.messages(log)[0].text) == 40_000
    assert refused == "msg_too_long"


def test_an_update_with_text_alone_drops_the_blocks_and_keeps_the_metadata(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    metadata = {"event_type": "answer", "event_payload": {}}
    posted = client.chat_postMessage(channel=log.id, text="62", blocks=[SECTION], metadata=metadata)

    client.chat_update(channel=log.id, ts=posted["ts"], text="63")

    (message,) = ws.messages(log)
    assert (message.text, message.blocks, message.metadata) == ("63", (), metadata)


def test_an_update_needs_a_message_of_the_apps_own_in_that_channel(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")
    posted = client.chat_postMessage(channel=rosa.id, text="hi")

    def update(channel: str, ts: str) -> str:
        return refusal(lambda: client.chat_update(channel=channel, ts=ts, text="x"))

    assert update(log.id, said.ts) == "cant_update_message"
    assert update(log.id, posted["ts"]) == "message_not_found"
    assert update(rosa.id, posted["ts"]) == "channel_not_found"


def test_a_deleted_message_is_gone(log: Channel, client: WebClient) -> None:
    posted = client.chat_postMessage(channel=log.id, text="62")

    client.chat_delete(channel=log.id, ts=posted["ts"])

    again = refusal(lambda: client.chat_delete(channel=log.id, ts=posted["ts"]))
    assert again == "message_not_found"


def test_a_reply_to_what_was_deleted_surfaces_in_the_channel(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")
    ws.delete(said)

    client.chat_postMessage(channel=log.id, thread_ts=said.ts, text="noted")

    assert [m.text for m in ws.messages(log)] == ["noted"]


def test_a_reply_to_a_reply_is_refused(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")
    reply = ws.say(rosa, log, "63", under=said)

    refused = refusal(
        lambda: client.chat_postMessage(channel=log.id, thread_ts=reply.ts, text="noted")
    )

    assert refused == "cannot_reply_to_message"


def test_a_reply_to_slacks_own_line_is_refused(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    line, _ = ws.join(ws.add_person("Nico Bell"), log, by=rosa)
    joined = line.event["ts"]

    refused = refusal(
        lambda: client.chat_postMessage(channel=log.id, thread_ts=joined, text="welcome")
    )

    assert refused == "cannot_reply_to_message"


def test_an_ephemeral_message_is_seen_by_one_and_kept_nowhere(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    client.chat_postEphemeral(channel=log.id, user=rosa.id, text="only you")

    assert [e.text for e in ws.ephemerals(rosa)] == ["only you"]
    assert ws.messages(log) == []


def test_an_ephemeral_message_needs_a_member(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    stranger = ws.add_person("Pat Hale")

    refused = refusal(
        lambda: client.chat_postEphemeral(channel=log.id, user=stranger.id, text="hi")
    )

    assert refused == "user_not_in_channel"


def test_a_permalink_points_at_the_message_and_its_thread(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")
    reply = ws.say(rosa, log, "63", under=said)

    link = client.chat_getPermalink(channel=log.id, message_ts=reply.ts)["permalink"]

    assert f"/archives/{log.id}/p{reply.ts.replace('.', '')}?thread_ts={said.ts}" in link


@pytest.mark.parametrize("metadata", [{"event_type": "x"}, {"event_payload": {}}, ["x"]])
def test_metadata_needs_a_type_and_a_payload(
    log: Channel, client: WebClient, metadata: Any
) -> None:
    refused = refusal(lambda: client.chat_postMessage(channel=log.id, text="hi", metadata=metadata))

    assert refused == "invalid_metadata_schema"


def test_posts_from_many_threads_have_stamps_of_their_own(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    with ThreadPoolExecutor(8) as pool:
        posts = [
            pool.submit(client.chat_postMessage, channel=log.id, text=str(n)) for n in range(40)
        ]
    stamps = {post.result()["ts"] for post in posts}

    assert len(stamps) == 40
    assert [m.ts for m in ws.messages(log)] == sorted(stamps)
