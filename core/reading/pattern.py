"""Patterns over symbols: "num adj* curve" instead of regular expressions over letters.

Each item of a line has one symbol; a line of items is a string of one character per item, and a
pattern is a regular expression over those characters, written with the symbols' names. Groups
(several symbols under one name) are declared once, here or by the caller.
"""

import re
from collections.abc import Iterable, Iterator
from functools import cached_property

CLAIMED = "claimed"  # the symbol of an item that a rule has already used

# What most lines hold, or hold once their counts are claimed.
_EVERYDAY = ("num", "comma", "dot", "the", "is", "a", "of", "into", "on", "adv", "pitches", "threw",
             CLAIMED, "said_count", "said_who")  # fmt: skip
_FIRST_CODE = 0xE000  # the private use area of Unicode
_GROUPS: dict[str, str] = {}


class _Codes(dict[str, str]):
    """The characters of symbols; a symbol gets the next one when it is first asked for."""

    def __missing__(self, symbol: str) -> str:
        found = self[symbol] = chr(_FIRST_CODE + len(self))
        return found


_CODES = _Codes()


def code(symbol: str) -> str:
    """The character that stands for a symbol."""
    return _CODES[symbol]


def codes(symbols: list[str]) -> list[str]:
    """The characters that stand for the symbols of a line."""
    return [_CODES[symbol] for symbol in symbols]


def group(name: str, symbols: Iterable[str]) -> None:
    """Declare a name for several symbols (or groups)."""
    _GROUPS[name] = "".join(_members(symbol) for symbol in symbols)


def compile_pattern(source: str) -> re.Pattern[str]:
    """Compile a pattern as `translated` writes it."""
    return re.compile(translated(source))


def translated(source: str) -> str:
    """Write "<n:num> adj* <u:unit>" for `re`: names are symbols or groups, `|()?*+` as there.

    `<n:num>` captures one item as n; `^` and `$` are the ends of the line; `any` is any item.
    """
    source = re.sub(r"\(([a-z_]+(?:\|[a-z_]+)+)\)", lambda m: f"{_choice(m[1])}", source)
    source = re.sub(r"<(\w+):([\w|]+)>", lambda m: f"(?P<§{m[1]}§>{_choice(m[2])})", source)
    source = re.sub(r"(?<![§\w])([a-z_]+)(?![§\w])", lambda m: f"[{_members(m[1])}]", source)
    return re.sub(r"[§\s]", "", source)


class LazyPattern:
    """A pattern that is compiled when a line first holds what it needs: the start stays quick."""

    def __init__(self, source: str) -> None:
        self.source = source

    @cached_property
    def compiled(self) -> re.Pattern[str]:
        """The pattern itself."""
        return compile_pattern(self.source)

    @cached_property
    def needs(self) -> tuple[frozenset[str], ...]:
        """Sets of symbols, rarest first: a line must hold one of each; none if it asks for none."""
        return needed_symbols(translated(self.source))

    def finditer(self, line: str) -> Iterator[re.Match[str]]:
        """Every place in the line where the pattern fits."""
        for needed in self.needs:
            if needed.isdisjoint(line):
                return iter(())
        return self.compiled.finditer(line)


def needed_symbols(pattern: str) -> tuple[frozenset[str], ...]:
    """Sets of symbols, rarest first, of each of which any match must hold at least one.

    A quick way to pass a rule by: most lines lack one of them.
    """
    needed, _ = _needed(pattern, 0)
    return tuple(sorted(set(needed), key=_rarity))


def _needed(pattern: str, at: int) -> tuple[list[frozenset[str]], int]:
    """For the alternatives from `at` to the closing bracket: what they need, and the end."""
    branches: list[list[frozenset[str]]] = [[]]
    while at < len(pattern) and pattern[at] != ")":
        symbols: list[frozenset[str]] = []
        if pattern[at] == "|":
            branches.append([])
            at += 1
            continue
        forbids = pattern.startswith(("(?!", "(?<!"), at)
        if pattern[at] == "[":
            end = pattern.index("]", at)
            inside, at = pattern[at + 1 : end], end + 1
            symbols = [] if "-" in inside else [frozenset(inside)]  # a span is any item
        elif pattern[at] == "(":
            start = pattern.index(">", at) if pattern.startswith("(?P<", at) else at
            symbols, at = _needed(pattern, start + 1)
            at += 1
        else:
            at += 1
        optional = at < len(pattern) and pattern[at] in "?*"
        if not forbids and not optional:
            branches[-1] += symbols
    if len(branches) == 1:
        return branches[0], at
    if not all(branches):
        return [], at
    return [frozenset().union(*(min(branch, key=_rarity) for branch in branches))], at


def _rarity(symbols: frozenset[str]) -> tuple[int, int, str]:
    """Least for symbols that few lines hold: most lines hold a number or a comma."""
    everyday = {code(name) for name in _EVERYDAY}
    return len(symbols & everyday), len(symbols), min(symbols)


def _choice(names: str) -> str:
    return "[" + "".join(_members(name) for name in names.split("|")) + "]"


def _members(name: str) -> str:
    if name == "any":
        return "\ue000-\uefff"
    return _GROUPS.get(name) or code(name)
