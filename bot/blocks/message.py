"""Parts of a message as a Slack message: all the text for screen readers, the same as blocks."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from slack_sdk.models.blocks import (
    ActionsBlock,
    ButtonElement,
    MarkdownTextObject,
    PlainTextObject,
    SectionBlock,
)

from bot.outbox.rendered import Words

#: Slack's limits, characters and elements (docs.slack.dev, Block Kit reference).
SECTION_LIMIT = 3_000
LABEL_LIMIT = 75
BUTTONS_IN_A_ROW = 25


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
    """The message for these parts; paragraphs stay whole where they fit into a block."""
    told = [part for part in parts if part.text or part.buttons]
    text = "\n\n".join(part.text for part in told if part.text)
    blocks: list[dict[str, Any]] = []
    for place, part in enumerate(told):
        blocks += [_section(piece) for piece in _pieces_of(part.text)]
        if part.buttons:
            blocks.append(_row(place, part.buttons[:BUTTONS_IN_A_ROW]))
    return Words(text, tuple(blocks))


def _section(text: str) -> dict[str, Any]:
    return SectionBlock(text=MarkdownTextObject(text=text, verbatim=True)).to_dict()


def _row(place: int, buttons: Sequence[Button]) -> dict[str, Any]:
    elements = [
        ButtonElement(
            text=PlainTextObject(text=_short(button.label), emoji=False),
            action_id=f"{button.action}.{number}",
            value=json.dumps(dict(button.value), sort_keys=True),
            style="primary" if button.main else None,
        )
        for number, button in enumerate(buttons)
    ]
    return ActionsBlock(block_id=f"row.{place}", elements=elements).to_dict()


def _short(label: str) -> str:
    return label if len(label) <= LABEL_LIMIT else label[: LABEL_LIMIT - 1] + "…"


def _pieces_of(text: str) -> list[str]:
    pieces = [""]
    for line in text.split("\n"):
        for piece in _cut(line):
            if len(pieces[-1]) + len(piece) + 1 > SECTION_LIMIT:
                pieces.append("")
            pieces[-1] += ("\n" if pieces[-1] else "") + piece
    return [piece for piece in pieces if piece.strip()]


def _cut(line: str) -> list[str]:
    return [line[i : i + SECTION_LIMIT] for i in range(0, len(line), SECTION_LIMIT)] or [""]
