"""Slack's message text as rich text: *bold*, mentions, links, emoji, escapes.

After Slack's "Formatting text for app surfaces" (docs.slack.dev), as far as messages of
this workspace use it.
"""

import re
from collections.abc import Callable

from rich.emoji import Emoji
from rich.text import Text

from bot.listeners.events import unescape
from bot.local.emoji import CHARACTERS

#: Gives the name of a user or channel id, or the id itself for a stranger.
NameOf = Callable[[str], str]

_TOKEN = re.compile(r"<(?P<inside>[@#!]?[^<>\s][^<>]*)>")
_EMOJI = re.compile(r":(?P<name>[a-z0-9_+-]+):")
# A mark opens at the start of a word and closes at the end of one.
_STYLED = re.compile(
    r"(?<![\w*_~`])(?P<mark>[*_~`])(?=\S)(?P<inside>[^\n]+?)(?<=\S)(?P=mark)(?![\w*_~`])"
)
_PICTURES = {name: picture for picture, name in CHARACTERS.items()}
_STYLES = {"*": "bold", "_": "italic", "~": "strike", "`": "cyan"}


def as_text(message: str, name_of: NameOf) -> Text:
    """A message's `text` as Slack shows it."""
    shown = Text()
    start = 0
    for found in _STYLED.finditer(message):
        shown.append(_plain(message[start : found.start()], name_of))
        mark, inside = found["mark"], found["inside"]
        words = inside if mark == "`" else _plain(inside, name_of)
        shown.append(unescape(words) if mark == "`" else words, style=_STYLES[mark])
        start = found.end()
    shown.append(_plain(message[start:], name_of))
    return shown


def emoji(name: str) -> str:
    """The picture of an emoji by its name without colons; the name in colons if unknown."""
    return _PICTURES.get(name) or Emoji.replace(f":{name}:")


def _plain(text: str, name_of: NameOf) -> str:
    spelt = _TOKEN.sub(lambda found: _target(found["inside"], name_of), text)
    return unescape(_EMOJI.sub(lambda found: emoji(found["name"]), spelt))


def _target(inside: str, name_of: NameOf) -> str:
    target, _, label = inside.partition("|")
    match target[0]:
        case "@":
            return f"@{label or name_of(target[1:])}"
        case "#":
            return f"#{label or name_of(target[1:])}"
        case "!":
            return label or f"@{target[1:]}"
        case _:
            return f"{label} ({target})" if label and label != target else target
