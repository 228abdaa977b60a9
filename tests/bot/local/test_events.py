"""Event shapes, as docs.slack.dev/reference/events/message and its subtypes give them."""

from slack_sdk import WebClient

from bot.local.records import Channel, Json, Person
from bot.local.workspace import Workspace


def test_the_envelope_names_team_app_and_installation(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    payload = ws.say(rosa, log, "62p").delivery.payload

    assert payload["type"] == "event_callback"
    assert payload["team_id"] == ws.team_id
    assert payload["api_app_id"] == ws.bot.app_id
    assert payload["event_time"] == int(payload["event"]["event_ts"].partition(".")[0])
    assert payload["authorizations"][0] | {"enterprise_id": None} == {
        "enterprise_id": None,
        "team_id": ws.team_id,
        "user_id": ws.bot.id,
        "is_bot": True,
        "is_enterprise_install": False,
    }


def test_a_new_message_has_no_subtype_and_its_own_ts(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    said = ws.say(rosa, log, "62p, 11 cb & <3 walks>")

    event = said.delivery.event
    assert _of(event, "type", "user", "ts", "channel", "channel_type") == {
        "type": "message",
        "user": rosa.id,
        "ts": said.ts,
        "channel": log.id,
        "channel_type": "channel",
    }
    assert event["text"] == "62p, 11 cb &amp; &lt;3 walks&gt;"
    assert "subtype" not in event
    assert "thread_ts" not in event
    assert event["client_msg_id"]


def test_channel_type_tells_the_four_kinds_apart(ws: Workspace, rosa: Person) -> None:
    coach = ws.add_person("Marta Quinn")
    places = [
        ws.add_channel("log", [rosa]),
        ws.add_channel("staff", [rosa], private=True),
        ws.dm(rosa),
        ws.group_dm(rosa, coach),
    ]

    types = [ws.say(rosa, place, "hi").delivery.event["channel_type"] for place in places]

    assert types == ["channel", "group", "im", "mpim"]


def test_an_edit_carries_both_texts_and_its_own_stamp(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    said = ws.say(rosa, log, "62p")

    (delivery,) = ws.edit(said, "63p")

    event = delivery.event
    assert event["subtype"] == "message_changed"
    assert event["hidden"] is True
    assert event["message"]["text"] == "63p"
    assert event["message"]["ts"] == said.ts != event["ts"]
    # Whole seconds: slackapi/bolt-python, tests/scenario_tests/test_message_changed.py.
    assert event["message"]["edited"] == {"user": rosa.id, "ts": f"{said.ts[:10]}.000000"}
    assert event["previous_message"]["text"] == "62p"
    assert not {"user", "text"} & set(event)


def test_a_link_preview_is_an_edit_with_the_same_text_and_no_edited(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    said = ws.say(rosa, log, "see <https://example.org>")

    (delivery,) = ws.unfurl(said, "https://example.org")

    event = delivery.event
    assert event["subtype"] == "message_changed"
    assert event["message"]["text"] == event["previous_message"]["text"]
    assert "edited" not in event["message"]
    assert event["message"]["attachments"]


def test_deleting_a_message_without_replies_is_message_deleted(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    said = ws.say(rosa, log, "62p")

    (delivery,) = ws.delete(said)

    assert delivery.event["subtype"] == "message_deleted"
    assert delivery.event["deleted_ts"] == said.ts
    assert delivery.event["previous_message"]["text"] == "62p"
    assert ws.messages(log) == []


def test_deleting_a_message_with_replies_leaves_a_tombstone(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    said = ws.say(rosa, log, "62p")
    client.chat_postMessage(channel=log.id, thread_ts=said.ts, text="62, noted")

    (delivery,) = ws.delete(said)

    event = delivery.event
    assert event["subtype"] == "message_changed"
    assert event["message"]["subtype"] == "tombstone"
    assert event["message"]["user"] == "USLACKBOT"
    assert event["message"]["ts"] == said.ts
    assert event["previous_message"]["text"] == "62p"
    assert ws.messages(log)[0].is_tombstone


def test_the_tombstone_goes_with_the_last_reply(ws: Workspace, rosa: Person, log: Channel) -> None:
    said = ws.say(rosa, log, "62p")
    reply = ws.say(rosa, log, "no, 63", under=said)
    ws.delete(said)

    ws.delete(reply)

    assert ws.state.in_channel(log.id) == []


def test_a_reply_names_its_parent_and_a_parent_its_replies(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    said = ws.say(rosa, log, "62p")
    reply = ws.say(rosa, log, "no, 63", under=said)

    (edit,) = ws.edit(said, "63p")

    assert reply.delivery.event["thread_ts"] == said.ts
    assert reply.delivery.event["parent_user_id"] == rosa.id
    assert edit.event["message"]["thread_ts"] == said.ts
    assert edit.event["message"]["reply_count"] == 1


def test_a_photo_is_file_share_and_may_have_no_text(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    event = ws.photo(rosa, log).delivery.event

    assert event["subtype"] == "file_share"
    assert event["text"] == ""
    assert event["files"][0]["mimetype"] == "image/png"


def test_a_mention_in_a_channel_is_two_events_about_one_message(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    said = ws.say(rosa, log, f"{ws.mention(ws.bot)} rest?")

    first, second = said.deliveries
    assert [first.event["type"], second.event["type"]] == ["message", "app_mention"]
    assert first.event_id != second.event_id
    assert first.event["ts"] == second.event["ts"]
    assert first.event["client_msg_id"] == second.event["client_msg_id"]


def test_a_mention_in_a_direct_message_is_no_app_mention(ws: Workspace, rosa: Person) -> None:
    said = ws.say(rosa, ws.dm(rosa), f"{ws.mention(ws.bot)} rest?")

    assert [d.event["type"] for d in said.deliveries] == ["message"]


def test_the_apps_own_posts_and_updates_come_back_to_it(
    ws: Workspace, log: Channel, client: WebClient
) -> None:
    posted = client.chat_postMessage(channel=log.id, text="62, noted")
    client.chat_update(channel=log.id, ts=posted["ts"], text="63, noted")

    post, update = (d.event for d in ws.courier.all)
    assert (post["user"], post["bot_id"]) == (ws.bot.id, ws.bot.bot_id)
    assert "client_msg_id" not in post
    assert update["message"]["user"] == ws.bot.id
    assert update["message"]["text"] == "63, noted"


def test_another_apps_message_has_its_bot_id(ws: Workspace, log: Channel) -> None:
    other = ws.add_person("Schedule Bot", is_bot=True)
    ws.join(other, log)

    modern = ws.say(other, log, "Game at 5").delivery.event
    classic = ws.say_as_webhook(other, log, "Game at 5").delivery.event

    assert modern["bot_id"] == classic["bot_id"] == other.bot_id
    assert classic["subtype"] == "bot_message"
    assert "user" not in classic


def test_reactions_are_sent_only_when_subscribed(ws: Workspace, rosa: Person, log: Channel) -> None:
    said = ws.say(rosa, log, "62p")
    unasked = ws.react(rosa, said, "eyes")

    ws.subscriptions.add("reaction_added")
    (delivery,) = ws.react(rosa, said, "fire")

    assert unasked == []
    assert delivery.event["item"] == {"type": "message", "channel": log.id, "ts": said.ts}
    assert delivery.event["item_user"] == rosa.id


def test_nothing_is_sent_from_a_channel_without_the_app(ws: Workspace, rosa: Person) -> None:
    elsewhere = ws.add_channel("lunch", [rosa], bot=False)

    assert ws.say(rosa, elsewhere, f"{ws.mention(ws.bot)} hello").deliveries == ()


def _of(event: Json, *names: str) -> Json:
    return {name: event[name] for name in names}
