"""Block Kit limits, as docs.slack.dev/reference/block-kit publishes them."""

from typing import Any

import pytest
from slack_sdk.errors import SlackObjectFormationError
from slack_sdk.models.blocks import Block

from bot.local.blockkit import check_message_blocks, check_view, with_block_ids
from bot.local.errors import ApiError
from bot.local.records import Json


def text(length: int, kind: str = "plain_text") -> Json:
    return {"type": kind, "text": "x" * length}


def button(**fields: Any) -> Json:
    return {"type": "button", "action_id": "a", "text": text(3)} | fields


def actions(*elements: Json) -> Json:
    return {"type": "actions", "elements": list(elements)}


def buttons(count: int) -> Json:
    return actions(*(button(action_id=str(n)) for n in range(count)))


def section(length: int) -> Json:
    return {"type": "section", "text": text(length, "mrkdwn")}


def fields(count: int, length: int) -> Json:
    return {"type": "section", "fields": [text(length, "mrkdwn")] * count}


def context(count: int) -> Json:
    return {"type": "context", "elements": [text(5, "mrkdwn")] * count}


def header(length: int) -> Json:
    return {"type": "header", "text": text(length)}


AT_THE_LIMIT = [
    [section(3000)],
    [fields(10, 1)],
    [fields(1, 2000)],
    [header(150)],
    [context(10)],
    [buttons(25)],
    [actions(button(text=text(75)))],
    [actions(button(value="v" * 2000))],
    [actions(button(action_id="a" * 255))],
    [section(1) | {"block_id": "b" * 255}],
    [{"type": "divider"}] * 50,
]
PAST_THE_LIMIT = [
    [section(3001)],
    [fields(11, 1)],
    [fields(1, 2001)],
    [header(151)],
    [context(11)],
    [buttons(26)],
    [actions(button(text=text(76)))],
    [actions(button(value="v" * 2001))],
    [actions(button(action_id="a" * 256))],
    [section(1) | {"block_id": "b" * 256}],
    [{"type": "divider"}] * 51,
]
# Limits that slack_sdk.models does not check.
UNKNOWN_TO_THE_SDK = [
    [fields(1, 2001)],
    [{"type": "divider"}] * 51,
]
MALFORMED = [
    [section(0)],
    [{"type": "section"}],
    [{"type": "heading", "text": text(3)}],
    [{"type": "header", "text": text(3, "mrkdwn")}],
    [actions(button(text=text(3, "mrkdwn")))],
    [actions(button(style="blue"))],
    [actions(button(), button())],
    [actions({"type": "knob", "action_id": "a"})],
    [section(1) | {"block_id": "b"}, section(2) | {"block_id": "b"}],
    [{"type": "image", "image_url": "https://example.org/x.png"}],
    ["section"],
]


@pytest.mark.parametrize("blocks", AT_THE_LIMIT)
def test_the_limit_itself_is_allowed(blocks: list[Json]) -> None:
    check_message_blocks(blocks)

    assert all(b["block_id"] for b in with_block_ids(blocks, lambda: "new"))


@pytest.mark.parametrize("blocks", [*PAST_THE_LIMIT, *MALFORMED])
def test_past_the_limit_or_malformed_is_invalid_blocks(blocks: list[Json]) -> None:
    with pytest.raises(ApiError) as caught:
        check_message_blocks(blocks)

    assert caught.value.code == "invalid_blocks"
    assert "json-pointer" in caught.value.extra["response_metadata"]["messages"][0]


def test_all_texts_together_have_a_limit_too() -> None:
    # Undocumented; public reports (slackapi/bolt-js 2509, 2867) put it at 12,000 to 13,200.
    with pytest.raises(ApiError, match="msg_blocks_too_long"):
        check_message_blocks([section(2700)] * 5)


@pytest.mark.parametrize("blocks", AT_THE_LIMIT)
def test_the_sdk_allows_the_limit_too(blocks: list[Json]) -> None:
    for block in blocks:
        parsed = Block.parse(block)
        assert parsed is not None
        assert parsed.to_dict()["type"] == block["type"]


@pytest.mark.parametrize("blocks", [b for b in PAST_THE_LIMIT if b not in UNKNOWN_TO_THE_SDK])
def test_the_sdk_refuses_the_same(blocks: list[Json]) -> None:
    parsed = Block.parse(blocks[0])
    assert parsed is not None

    with pytest.raises(SlackObjectFormationError):
        parsed.to_dict()


def test_a_view_may_hold_100_blocks_and_no_more() -> None:
    home = {"type": "home", "blocks": [{"type": "divider"}] * 100}

    check_view(home)

    with pytest.raises(ApiError, match="invalid_arguments"):
        check_view(home | {"blocks": [{"type": "divider"}] * 101})


def test_private_metadata_is_limited() -> None:
    modal = {"type": "modal", "title": text(24), "blocks": []}

    check_view(modal | {"private_metadata": "m" * 3000})

    with pytest.raises(ApiError, match="invalid_arguments"):
        check_view(modal | {"private_metadata": "m" * 3001})
