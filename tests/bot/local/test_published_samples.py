"""Payloads hold every field of the samples that Slack publishes.

Field names were taken down from slackapi/bolt-python, tests/scenario_tests (MIT), and from
the event pages of docs.slack.dev; fields of Enterprise Grid are left out.
"""

from slack_sdk import WebClient

from bot.local.records import Channel, Json, Person
from bot.local.workspace import Workspace

BUTTON: Json = {
    "type": "actions",
    "elements": [
        {
            "type": "button",
            "action_id": "a",
            "value": "v",
            "text": {"type": "plain_text", "text": "B"},
        }
    ],
}
VIEW_FIELDS = """id team_id type blocks private_metadata callback_id state hash title clear_on_close
    notify_on_close close submit previous_view_id root_view_id app_id external_id
    app_installed_team_id bot_id"""


def missing(payload: Json, fields: str) -> set[str]:
    return set(fields.split()) - set(payload)


def test_envelope(ws: Workspace, rosa: Person, log: Channel) -> None:
    payload = ws.say(rosa, log, "hi").delivery.payload

    # test_message_bot.py
    fields = """token team_id api_app_id event type event_id event_time authorizations
        is_ext_shared_channel event_context"""
    assert not missing(payload, fields)
    grant = "enterprise_id team_id user_id is_bot is_enterprise_install"
    assert not missing(payload["authorizations"][0], grant)


def test_message_of_a_person(ws: Workspace, rosa: Person, log: Channel) -> None:
    event = ws.say(rosa, log, "hi").delivery.event

    # test_message_bot.py, user_message_event_payload: these fields and no others.
    fields = "client_msg_id type text user ts team blocks channel event_ts channel_type"
    assert set(event) == set(fields.split())
    assert event["blocks"][0]["elements"][0]["elements"] == [{"type": "text", "text": "hi"}]


def test_message_of_an_app(ws: Workspace, log: Channel, client: WebClient) -> None:
    client.chat_postMessage(channel=log.id, text="hi")

    event = ws.courier.all[0].event
    # test_message_bot.py, bot_message_event_payload.
    fields = "bot_id type text user ts team bot_profile channel event_ts channel_type"
    assert not missing(event, fields)
    assert not missing(event["bot_profile"], "id deleted name updated app_id icons team_id")
    assert not {"client_msg_id", "subtype"} & set(event)


def test_message_of_a_classic_app(ws: Workspace, log: Channel) -> None:
    other = ws.add_person("Schedule Bot", is_bot=True)
    ws.join(other, log)

    event = ws.say_as_webhook(other, log, "hi").delivery.event

    # test_message_bot.py, classic_bot_message_event_payload.
    assert not missing(event, "type subtype text ts username bot_id channel event_ts channel_type")
    assert not {"user", "team", "bot_profile"} & set(event)


def test_changed_and_deleted(ws: Workspace, rosa: Person, log: Channel) -> None:
    said = ws.say(rosa, log, "hi")
    (edit,) = ws.edit(said, "ho")
    (delete,) = ws.delete(said)

    # test_message_changed.py, test_message_deleted.py
    common = "type subtype previous_message channel hidden ts event_ts channel_type"
    assert not missing(edit.event, f"{common} message")
    assert not missing(edit.event["message"], "type text user team edited blocks")
    assert not missing(delete.event, f"{common} deleted_ts")


def test_file_share(ws: Workspace, rosa: Person, log: Channel) -> None:
    event = ws.photo(rosa, log, "look").delivery.event

    # test_message_file_share.py
    fields = """type text files upload user display_as_bot ts blocks client_msg_id channel subtype
        event_ts channel_type"""
    assert not missing(event, fields)
    file_fields = """id created timestamp name title mimetype filetype pretty_type user editable
        size mode is_external is_public url_private url_private_download permalink"""
    assert not missing(event["files"][0], file_fields)


def test_thread_broadcast(ws: Workspace, rosa: Person, log: Channel) -> None:
    said = ws.say(rosa, log, "hi")

    event = ws.say(rosa, log, "all", under=said, broadcast=True).delivery.event

    # test_message_thread_broadcast.py
    assert event["subtype"] == "thread_broadcast"
    assert not missing(event, "type subtype text user ts thread_ts root channel event_ts")
    assert event["root"]["ts"] == said.ts


def test_mention_and_reaction(ws: Workspace, rosa: Person, log: Channel) -> None:
    ws.subscriptions.add("reaction_added")
    said = ws.say(rosa, log, f"{ws.mention(ws.bot)} hi")
    (reaction,) = ws.react(rosa, said, "eyes")

    # test_events.py
    mention = "client_msg_id type text user ts team channel event_ts"
    assert not missing(said.deliveries[1].event, mention)
    assert not missing(reaction.event, "type user item reaction item_user event_ts")


def test_joining(ws: Workspace, rosa: Person, log: Channel) -> None:
    line, joined = ws.join(ws.add_person("Nico Bell"), log, by=rosa)

    # docs.slack.dev/reference/events/member_joined_channel and message/channel_join
    assert not missing(joined.event, "type user channel channel_type team inviter event_ts")
    assert joined.event["channel_type"] == "C"
    assert not missing(line.event, "type subtype ts user text inviter channel event_ts")


def test_home_opened(ws: Workspace, rosa: Person, client: WebClient) -> None:
    client.views_publish(user_id=rosa.id, view={"type": "home", "blocks": []})

    (home,) = ws.open_home(rosa)
    (messages,) = ws.open_home(rosa, tab="messages")

    # docs.slack.dev/reference/events/app_home_opened
    assert not missing(home.event, "type user channel event_ts tab view")
    assert not missing(home.event["view"], VIEW_FIELDS)
    assert "view" not in messages.event


def test_block_actions(ws: Workspace, rosa: Person, log: Channel, client: WebClient) -> None:
    client.chat_postMessage(channel=log.id, text="hi", blocks=[BUTTON])

    payload = ws.press(rosa, ws.messages(log)[0], "a").payload

    # test_block_actions.py
    fields = """type user api_app_id token container trigger_id team channel response_url actions"""
    assert not missing(payload, fields)
    assert not missing(payload["user"], "id username name team_id")
    assert not missing(payload["container"], "type message_ts channel_id is_ephemeral")
    assert not missing(payload["actions"][0], "action_id block_id text value type action_ts")


def test_views(ws: Workspace, rosa: Person, client: WebClient) -> None:
    trigger = ws.shortcut(rosa, "any").payload["trigger_id"]
    title = {"type": "plain_text", "text": "My App"}
    modal = {"type": "modal", "title": title, "blocks": [], "notify_on_close": True}
    client.views_open(trigger_id=trigger, view=modal)
    submitted = ws.submit(rosa).payload
    closed = ws.close_view(rosa)

    # test_view_submission.py, test_view_closed.py
    assert closed is not None
    for payload in (submitted, closed.payload):
        assert not missing(payload, "type team user api_app_id token view")
        assert not missing(payload["view"], VIEW_FIELDS)
    assert not missing(submitted, "trigger_id response_urls")
    assert not missing(closed.payload, "is_cleared")


def test_commands_and_shortcuts(ws: Workspace, rosa: Person, log: Channel) -> None:
    command = ws.command(rosa, log, "/hello-world", "Hi").payload
    shortcut = ws.shortcut(rosa, "any").payload

    # test_slash_command.py, test_shortcut.py
    fields = """token team_id team_domain channel_id channel_name user_id user_name command text
        response_url trigger_id"""
    assert not missing(command, fields)
    assert not missing(shortcut, "type token action_ts team user callback_id trigger_id")
