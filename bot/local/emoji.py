"""Emoji names that reactions may use.

The short names in `emoji_names.txt` are those of Slack's standard set, from memory and far
from all of it; `Workspace.add_emoji` adds one, as uploading a custom emoji does.
"""

from importlib.resources import files
from typing import Final

STANDARD: Final = frozenset(files("bot.local").joinpath("emoji_names.txt").read_text().split())
