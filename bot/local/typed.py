"""What Slack's composer makes of the characters that a person types."""

import re
from collections.abc import Callable
from typing import Final, Literal

from bot.local import emoji
from bot.local.records import Json

# A person picks these from a menu; Slack puts them into the text in this form.
_TOKEN: Final = (
    r"<(?:@[UW][A-Z0-9]+(?:\|[^<>]*)?|#[CG][A-Z0-9]+(?:\|[^<>]*)?"
    r"|!(?:channel|here|everyone)|!subteam\^[A-Z0-9]+(?:\|[^<>]*)?|https?://[^<>|]+(?:\|[^<>]*)?)>"
)


_EMOJI_ONLY: Final = re.compile(f"(?P<emoji>{emoji.PATTERN.pattern})")
_EVERYTHING: Final = re.compile(f"{_EMOJI_ONLY.pattern}|{_TOKEN}")

Kind = Literal["text", "token", "emoji"]


def escape(text: str) -> str:
    """Escape the three control characters (Slack: "Formatting message text")."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def message_text(typed: str, *, literal: bool = False) -> str:
    """Return the `text` field for typed characters.

    Mentions, channel links and URLs in Slack's angle-bracket form stay as they are, for
    a person picked them from a menu; with `literal` even those are plain characters.
    Emoji become their names between colons.
    """
    return "".join(_PUT[kind](part) for kind, part in _parts(typed, literal=literal))


def rich_text(typed: str, block_id: str, *, literal: bool = False) -> Json:
    """Return the `rich_text` block that Slack's own clients add to a typed message."""
    elements = [_ELEMENTS[kind](part) for kind, part in _parts(typed, literal=literal)]
    section = {"type": "rich_text_section", "elements": elements}
    return {"type": "rich_text", "block_id": block_id, "elements": [section]}


def _parts(typed: str, *, literal: bool) -> list[tuple[Kind, str]]:
    pattern = _EMOJI_ONLY if literal else _EVERYTHING
    parts: list[tuple[Kind, str]] = []
    start = 0
    for match in pattern.finditer(typed):
        kind: Kind = "emoji" if match.group("emoji") else "token"
        parts += [("text", typed[start : match.start()]), (kind, match.group())]
        start = match.end()
    parts.append(("text", typed[start:]))
    return [(kind, part) for kind, part in parts if part]


def _emoji(character: str) -> Json:
    code = "-".join(f"{ord(point):x}" for point in character)
    return {"type": "emoji", "name": emoji.name_of(character), "unicode": code}


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


_PUT: Final[dict[Kind, Callable[[str], str]]] = {
    "text": escape,
    "token": lambda token: token,
    "emoji": lambda character: f":{emoji.name_of(character)}:",
}
_ELEMENTS: Final[dict[Kind, Callable[[str], Json]]] = {
    "text": lambda part: {"type": "text", "text": part},
    "token": _element,
    "emoji": _emoji,
}
