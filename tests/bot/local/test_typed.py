from html import unescape

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.local.emoji import PATTERN
from bot.local.typed import message_text, rich_text


@settings(max_examples=100)
@given(st.text(max_size=60).filter(lambda typed: not PATTERN.search(typed)))
def test_typed_characters_survive_escaping(typed: str) -> None:
    # "Formatting message text" (docs.slack.dev): &, < and > alone are escaped.
    text = message_text(typed, literal=True)

    restored = text.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
    assert restored == typed
    assert "<" not in text
    assert ">" not in text


@pytest.mark.parametrize(
    "token", ["<@U0001>", "<#C0001|log>", "<!here>", "<https://example.org|rules>"]
)
def test_what_was_picked_from_a_menu_stays_in_brackets(token: str) -> None:
    assert message_text(f"5 < 6 & {token}") == f"5 &lt; 6 &amp; {token}"


def test_the_same_characters_typed_by_hand_are_escaped() -> None:
    assert message_text("<!channel>", literal=True) == "&lt;!channel&gt;"


def test_the_rich_text_block_holds_the_raw_characters() -> None:
    block = rich_text("7 & 8 <@U0001>", "b1")

    section = block["elements"][0]
    assert section["elements"] == [
        {"type": "text", "text": "7 & 8 "},
        {"type": "user", "user_id": "U0001"},
    ]
    assert unescape(message_text("7 & 8 ")) == section["elements"][0]["text"]


@pytest.mark.parametrize(
    ("typed", "text"),
    [("62p ⚾", "62p :baseball:"), ("👍🏽!", ":+1::skin-tone-4:!"), ("❤️", ":heart:")],
)
def test_emoji_come_back_as_names(typed: str, text: str) -> None:
    # Slack's short names, from memory.
    assert message_text(typed) == message_text(typed, literal=True) == text


def test_an_emoji_is_an_element_of_its_own() -> None:
    (section,) = rich_text("ok ⚾", "b1")["elements"]

    assert section["elements"][1] == {"type": "emoji", "name": "baseball", "unicode": "26be"}
