"""Patterns over symbols: "num adj* curve" instead of regular expressions over letters.

Each item of a line has one symbol; a line of items is a string of one character per item, and a
pattern is a regular expression over those characters, written with the symbols' names. Groups
(several symbols under one name) are declared once, here or by the caller.
"""

import re
from collections.abc import Iterable

CLAIMED = "claimed"  # the symbol of an item that a rule has already used

_CODES: dict[str, str] = {}
_GROUPS: dict[str, str] = {}


def code(symbol: str) -> str:
    """The character that stands for a symbol."""
    found = _CODES.get(symbol)
    if found is None:
        found = _CODES[symbol] = chr(0xE000 + len(_CODES))
    return found


def group(name: str, symbols: Iterable[str]) -> None:
    """Declare a name for several symbols (or groups)."""
    _GROUPS[name] = "".join(_members(symbol) for symbol in symbols)


def compile_pattern(source: str) -> re.Pattern[str]:
    """Compile "<n:num> adj* <u:unit>": names are symbols or groups, `|()?*+` as in `re`.

    `<n:num>` captures one item as n; `^` and `$` are the ends of the line; `any` is any item.
    """
    source = re.sub(r"\(([a-z_]+(?:\|[a-z_]+)+)\)", lambda m: f"{_choice(m[1])}", source)
    source = re.sub(r"<(\w+):([\w|]+)>", lambda m: f"(?P<§{m[1]}§>{_choice(m[2])})", source)
    source = re.sub(r"(?<![§\w])([a-z_]+)(?![§\w])", lambda m: f"[{_members(m[1])}]", source)
    return re.compile(re.sub(r"[§\s]", "", source))


def _choice(names: str) -> str:
    return "[" + "".join(_members(name) for name in names.split("|")) + "]"


def _members(name: str) -> str:
    if name == "any":
        return "\ue000-\uefff"
    return _GROUPS.get(name) or code(name)
