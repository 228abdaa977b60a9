"""What Slack's composer makes of the characters that a person types."""

import re
from typing import Final

from bot.local.records import Json

# A person picks these from a menu; Slack puts them into the text in this form.
_TOKEN: Final = re.compile(
    r"<(?:@[UW][A-Z0-9]+(?:\|[^<>]*)?|#[CG][A-Z0-9]+(?:\|[^<>]*)?"
    r"|!(?:channel|here|everyone)|!subteam\^[A-Z0-9]+(?:\|[^<>]*)?|https?://[^<>|]+(?:\|[^<>]*)?)>"
)


def escape(text: str) -> str:
    """Escape the three control characters (Slack: "Formatting message text")."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def message_text(typed: str, *, literal: bool = False) -> str:
    """Return the `text` field for typed characters.

    Mentions, channel links and URLs in Slack's angle-bracket form stay as they are, for
    a person picked them from a menu; with `literal` even those are plain characters.
    """
    return "".join(
        part if is_token and not literal else escape(part) for is_token, part in _parts(typed)
    )


def rich_text(typed: str, block_id: str, *, literal: bool = False) -> Json:
    """Return the `rich_text` block that Slack's own clients add to a typed message."""
    elements = [
        _element(part) if is_token and not literal else {"type": "text", "text": part}
        for is_token, part in _parts(typed)
    ]
    section = {"type": "rich_text_section", "elements": elements}
    return {"type": "rich_text", "block_id": block_id, "elements": [section]}


def _parts(typed: str) -> list[tuple[bool, str]]:
    parts, start = [], 0
    for match in _TOKEN.finditer(typed):
        parts += [(False, typed[start : match.start()]), (True, match.group())]
        start = match.end()
    parts.append((False, typed[start:]))
    return [(is_token, part) for is_token, part in parts if part]


def _element(token: str) -> Json:
    target = token[1:-1].split("|")[0]
    if target.startswith("@"):
        return {"type": "user", "user_id": target[1:]}
    if target.startswith("#"):
        return {"type": "channel", "channel_id": target[1:]}
    if target.startswith("!subteam^"):
        return {"type": "usergroup", "usergroup_id": target.removeprefix("!subteam^")}
    if target.startswith("!"):
        return {"type": "broadcast", "range": target[1:]}
    return {"type": "link", "url": target}
