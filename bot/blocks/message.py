"""Parts of a message as a Slack message: all the text for screen readers, the same as blocks."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from slack_sdk.models.blocks import (
    ActionsBlock,
    ButtonElement,
    MarkdownTextObject,
    PlainTextObject,
    SectionBlock,
)

from bot.cut import cut, length, pieces
from bot.outbox.rendered import Words
from bot.wording.words import left_out

#: Slack's limits, characters and elements (docs.slack.dev, Block Kit reference).
SECTION_LIMIT = 3_000
LABEL_LIMIT = 75
BUTTONS_IN_A_ROW = 25
MOST_BLOCKS = 50
#: All text of a message's blocks; undocumented, reported at 12,000 to 13,200 characters
#: (slackapi/bolt-js, issues 2509 and 2867).
MOST_TEXT = 11_500


@dataclass(frozen=True, slots=True)
class Button:
    """A button: `action` says which listener takes it, `value` what it carries.

    Whatever it carries can be seen and changed on its way, so the listener checks it again.
    """

    label: str
    action: str
    value: Mapping[str, Any]
    main: bool = False


@dataclass(frozen=True, slots=True)
class Part:
    """A paragraph with the buttons that belong to it."""

    text: str
    buttons: tuple[Button, ...] = ()


def as_message(parts: Sequence[Part]) -> Words:
    """The message for these parts; paragraphs stay whole where they fit into a block.

    What is more than one message holds is left out, and the message says how much.
    """
    told = [part for part in parts if part.text or part.buttons]
    buttons = 0
    texts: list[str] = []
    blocks: list[dict[str, Any]] = []
    for place, part in enumerate(told):
        text = part.text if texts else cut(part.text, MOST_TEXT)
        own = _blocks_of(place, buttons, replace(part, text=text))
        size = sum(map(length, texts)) + length(text)
        if size > MOST_TEXT or len(blocks) + len(own) >= MOST_BLOCKS:
            texts.append(left_out(len(told) - place))
            blocks.append(_section(texts[-1]))
            break
        blocks += own
        buttons += len(part.buttons)
        texts += [text] if text else []
    return Words("\n\n".join(texts), tuple(blocks))


def _blocks_of(place: int, first: int, part: Part) -> list[dict[str, Any]]:
    sections = [_section(piece) for piece in _pieces_of(part.text)]
    row = [_row(place, first, part.buttons[:BUTTONS_IN_A_ROW])] if part.buttons else []
    return sections + row


def _section(text: str) -> dict[str, Any]:
    return SectionBlock(text=MarkdownTextObject(text=text, verbatim=True)).to_dict()


def _row(place: int, first: int, buttons: Sequence[Button]) -> dict[str, Any]:
    elements = [
        ButtonElement(
            text=PlainTextObject(text=cut(button.label, LABEL_LIMIT), emoji=False),
            action_id=f"{button.action}.{number}",
            value=json.dumps(dict(button.value), sort_keys=True),
            style="primary" if button.main else None,
        )
        # Unique in the whole message, so that a press names one button without its row.
        for number, button in enumerate(buttons, start=first)
    ]
    return ActionsBlock(block_id=f"row.{place}", elements=elements).to_dict()


def _pieces_of(text: str) -> list[str]:
    found = [""]
    for line in text.split("\n"):
        for piece in pieces(line, SECTION_LIMIT):
            if length(found[-1]) + length(piece) + 1 > SECTION_LIMIT:
                found.append("")
            found[-1] += ("\n" if found[-1] else "") + piece
    return [piece for piece in found if piece.strip()]
