"""A text as a Slack message: the whole text for screen readers, the same text as blocks."""

from slack_sdk.models.blocks import MarkdownTextObject, SectionBlock

from bot.outbox.rendered import Words

#: Slack's limit for the text of a section block, characters (docs.slack.dev, block reference).
SECTION_LIMIT = 3_000


def as_message(text: str) -> Words:
    """The message for a text; paragraphs stay whole where they fit into a block."""
    sections = [
        SectionBlock(text=MarkdownTextObject(text=part, verbatim=True)).to_dict()
        for part in _parts(text)
    ]
    return Words(text, tuple(sections))


def _parts(text: str) -> list[str]:
    parts = [""]
    for line in text.split("\n"):
        for piece in _pieces(line):
            if len(parts[-1]) + len(piece) + 1 > SECTION_LIMIT:
                parts.append("")
            parts[-1] += ("\n" if parts[-1] else "") + piece
    return [part for part in parts if part.strip()]


def _pieces(line: str) -> list[str]:
    return [line[i : i + SECTION_LIMIT] for i in range(0, len(line), SECTION_LIMIT)] or [""]
