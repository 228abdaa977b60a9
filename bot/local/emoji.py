"""Emoji: the names that reactions may use, and the characters that Slack turns into names.

Both tables are of Slack's standard short names, from memory and far from all of them.
`Workspace.add_emoji` adds a name, as uploading a custom emoji does.
"""

import re
from importlib.resources import files
from typing import Final

_DATA: Final = files("bot.local")
_LINES: Final = _DATA.joinpath("emoji_characters.txt").read_text(encoding="utf-8").splitlines()

CHARACTERS: Final = dict(line.split() for line in _LINES)
STANDARD: Final = frozenset(_DATA.joinpath("emoji_names.txt").read_text().split()) | frozenset(
    CHARACTERS.values()
)

# Fitzpatrick modifiers follow the character; Slack counts them from 2 to 6.
PATTERN: Final = re.compile(f"({'|'.join(map(re.escape, CHARACTERS))})([🏻🏼🏽🏾🏿]?)")


def name_of(character: str) -> str:
    """Return Slack's name for an emoji of the table, without colons, with any skin tone."""
    found = PATTERN.fullmatch(character)
    if found is None:
        raise LookupError(f"{character!r} is not in the table of emoji")
    base, tone = CHARACTERS[found.group(1)], found.group(2)
    return f"{base}::skin-tone-{ord(tone) - ord('🏻') + 2}" if tone else base
