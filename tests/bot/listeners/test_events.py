"""What a message event of Slack's says; shapes as on docs.slack.dev/reference/events/message."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.listeners.events import storable, understand, unescape
from core.ledger import Deleted, Edited, Said

TEAM = "T1"
LINE: dict[str, Any] = {
    "type": "message", "user": "U1", "text": "62p", "ts": "1.000100", "channel": "C1",
    "channel_type": "channel",
}  # fmt: skip
SAID = Said(TEAM, "C1", "1.000100", "U1", "62p")


def changed(message: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {
        "type": "message", "subtype": "message_changed", "hidden": True, "channel": "C1",
        "ts": "9.000000", "message": message, **more,
    }  # fmt: skip


def test_a_typed_line_is_said() -> None:
    assert understand(LINE, TEAM) == SAID


@pytest.mark.parametrize("subtype", ["file_share", "thread_broadcast", "me_message"])
def test_other_forms_of_a_typed_line_are_said(subtype: str) -> None:
    assert understand(LINE | {"subtype": subtype}, TEAM) == SAID


@pytest.mark.parametrize("text", [{"text": None}, {"text": ""}, {}])
def test_a_message_without_text_is_said_with_none(text: dict[str, Any]) -> None:
    event = {key: value for key, value in LINE.items() if key != "text"} | text

    heard = understand(event, TEAM)

    assert isinstance(heard, Said)
    assert heard.text == ""


@pytest.mark.parametrize(
    "subtype",
    ["channel_join", "channel_leave", "channel_topic", "channel_purpose", "channel_name",
     "channel_archive", "channel_unarchive", "channel_posting_permissions", "group_join",
     "pinned_item", "reminder_add", "ekm_access_denied", "bot_message", "message_replied",
     "slackbot_response", "assistant_app_thread"],
)  # fmt: skip
def test_what_nobody_typed_is_left_alone(subtype: str) -> None:
    assert understand(LINE | {"subtype": subtype}, TEAM) is None
    assert understand(changed(LINE | {"subtype": subtype, "edited": {"ts": "2.0"}}), TEAM) is None


@pytest.mark.parametrize("who", [{"bot_id": "B1"}, {"user": "USLACKBOT"}])
def test_programs_are_left_alone(who: dict[str, str]) -> None:
    assert understand(LINE | who, TEAM) is None
    assert understand(changed(LINE | who | {"edited": {"ts": "2.0"}}), TEAM) is None
    event = {"subtype": "message_deleted", "channel": "C1", "deleted_ts": "1.000100"}
    assert understand(event | {"previous_message": LINE | who}, TEAM) is None


def test_an_edit_carries_its_own_stamp_and_the_events() -> None:
    event = changed(LINE | {"text": "64p", "edited": {"user": "U1", "ts": "5.000000"}})
    event["ts"] = "6.000200"

    assert understand(event, TEAM) == Edited(
        Said(TEAM, "C1", "1.000100", "U1", "64p"), "5.000000/6.000200"
    )


@pytest.mark.parametrize("edited", [{}, {"edited": None}, {"edited": {}}])
def test_a_link_preview_is_no_edit(edited: dict[str, Any]) -> None:
    assert understand(changed(LINE | edited), TEAM) is None


def test_a_tombstone_is_a_deletion() -> None:
    stone = {"subtype": "tombstone", "user": "USLACKBOT", "ts": "1.000100", "thread_ts": "1.000100"}

    assert understand(changed(stone, previous_message=LINE), TEAM) == Deleted(SAID)


def test_a_deletion_in_the_short_form_names_the_message_alone() -> None:
    short = {"subtype": "message_deleted", "channel": "C1", "deleted_ts": "1.000100"}
    nothing = Deleted(Said(TEAM, "C1", "1.000100", "", ""))

    assert understand(short, TEAM) == nothing
    assert understand(short | {"previous_message": None}, TEAM) == nothing


def test_a_reply_knows_its_thread_and_a_parent_has_none() -> None:
    reply = understand(LINE | {"thread_ts": "0.000100"}, TEAM)
    parent = understand(LINE | {"thread_ts": "1.000100"}, TEAM)

    assert isinstance(reply, Said)
    assert reply.thread_ts == "0.000100"
    assert parent == SAID


@pytest.mark.parametrize(
    ("escaped", "typed"),
    [
        ("&lt;b&gt; &amp;", "<b> &"),
        ("&amp;lt;", "&lt;"),
        ("&amp;amp;", "&amp;"),
        ("<@U1>", "<@U1>"),
    ],
)
def test_slacks_three_escapes_are_undone_once(escaped: str, typed: str) -> None:
    assert unescape(escaped) == typed


@given(st.text(alphabet=st.characters(codec=None)))
def test_any_text_can_be_stored(text: str) -> None:
    kept = storable(text)

    assert "\0" not in kept
    assert kept.encode("utf-8").decode("utf-8") == kept


@given(st.text())
def test_a_text_of_whole_characters_is_kept_as_typed(text: str) -> None:
    assert storable(text) == text.replace("\0", "\ufffd")
