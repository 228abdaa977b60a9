"""The working table of one line: its items, and the claims that rules lay on them.

Every rule claims the items that it explains, and no item is claimed twice. What nobody claims
is looked at in the end: a number that is left over is asked about.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime

from core.reading.entry import UnreadReason
from core.reading.items import NUMERIC, Item
from core.reading.pattern import CLAIMED, FIRST_CODE, LazyPattern, code, mask
from core.reading.tokens import fold

NO_LOG = "no log"
COUNTS = frozenset(
    {"pitches", "breaking", "curve", "slider", "changeup", "fastball", "strikes",
     "breaking_strikes", "outs", "caught_outs", "effort"}
)  # fmt: skip
# What a claimed item looks like to later rules: a number after a name is a pitch count, say.
_SAID = {
    "who": "said_who",
    "day": "said_day",
    "opponent": "said_vs",
    "label": "said_label",
    "tired": "said_arm",
    "pain": "said_arm",
} | dict.fromkeys((*COUNTS, "forstrikes", "range"), "said_count")


@dataclass(slots=True)
class Claim:
    """A run of items and what they say: a field with its value, or a kind of "no log".

    `key` is an entry's field ("pitches"), a structural word ("who", "day", "label"), NO_LOG with
    the name of what it is as `value` ("score"), or "unread" with the reason as `value`.
    """

    first: int
    after: int
    key: str
    value: object = None
    about: bool = False
    weak: bool = False  # a bare number in the place of the pitch count


@dataclass(slots=True)
class Board:
    """Items, their symbols, clause numbers, and the claims so far."""

    text: str
    items: list[Item]
    posted: datetime
    author: str
    roster: tuple[str, ...]
    lang: str
    roster_starts: frozenset[str] = frozenset()
    claims: list[Claim] = field(default_factory=list)
    clause: list[int] = field(default_factory=list)
    sentence: list[int] = field(default_factory=list)
    piece: list[int] = field(default_factory=list)
    _codes: list[str] = field(default_factory=list)
    _free: list[bool] = field(default_factory=list)
    _line: str | None = None
    present: int = 0  # one bit for each symbol that the line holds or has held, for the rules
    symbols: frozenset[str] = frozenset()

    def __post_init__(self) -> None:
        symbols = [item.symbol for item in self.items]
        self._codes = list(map(code, symbols))
        if self.roster:
            self.roster_starts = frozenset(fold(name.split(" ")[0]) for name in self.roster)
        self.symbols = frozenset(symbols)
        self.present = mask(map(code, self.symbols))
        self._free = [True] * len(self.items)

    @property
    def line(self) -> str:
        """The symbols as one string, claimed items blanked out."""
        if self._line is None:
            self._line = "".join(self._codes)
        return self._line

    def claim(
        self,
        first: int,
        after: int,
        key: str,
        value: object = None,
        *,
        about: bool = False,
        weak: bool = False,
    ) -> None:
        """Lay a claim on items first..after-1."""
        self.claims.append(Claim(first, after, key, value, about, weak))
        said = code(_SAID.get(key, CLAIMED))
        self.present |= 1 << ord(said) - FIRST_CODE
        self._codes[first:after] = [said] * (after - first)
        self._free[first:after] = [False] * (after - first)
        self._line = None

    def release(self, claim: Claim) -> None:
        """Take a claim back: its items are unexplained again. Twice is as good as once."""
        if claim in self.claims:
            self.claims.remove(claim)
        self._free[claim.first : claim.after] = [True] * (claim.after - claim.first)

    def withdraw(self, first: int, after: int, key: str) -> None:
        """Turn claims with this key inside a run into no log."""
        for claim in self.claims:
            if claim.key == key and first <= claim.first < after:
                claim.key, claim.value = NO_LOG, key

    def no_log(self, first: int, after: int, what: str) -> None:
        """Claim items as something that is no part of a log."""
        self.claim(first, after, NO_LOG, what)

    def unread(self, first: int, after: int, reason: UnreadReason) -> None:
        """Claim items as something to ask about."""
        self.claim(first, after, "unread", reason)

    def still_reads(self, first: int, symbols: str) -> bool:
        """Whether nothing was claimed since these symbols were read."""
        return "".join(self._codes[first : first + len(symbols)]) == symbols

    def symbol_is(self, at: int, symbol: str) -> bool:
        """Whether the item is there, unclaimed, and has this symbol."""
        return 0 <= at < len(self.items) and self._free[at] and self.items[at].symbol == symbol

    def has(self, *symbols: str) -> bool:
        """Whether any item of the line has one of these symbols."""
        return not self.symbols.isdisjoint(symbols)

    def free(self, at: int) -> bool:
        """Whether the item is unclaimed."""
        return self._free[at]

    def free_numbers(self) -> list[int]:
        """Places of the unclaimed numbers."""
        return [i for i, item in enumerate(self.items) if item.symbol in NUMERIC and self.free(i)]

    def whole(self, at: int) -> int | None:
        """The item's value as a whole number."""
        return self.items[at].whole

    def quote(self, first: int, after: int) -> str:
        """The items as typed."""
        return self.text[self.items[first].start : self.items[after - 1].end]


Handler = Callable[[Board, re.Match[str]], None]


@dataclass(frozen=True, slots=True)
class Rule:
    """A pattern over symbols and what to do where it fits."""

    name: str
    pattern: LazyPattern
    apply: Handler


def rule(name: str, pattern: str, apply: Handler) -> Rule:
    """One row of a table of rules."""
    return Rule(name, LazyPattern(pattern), apply)


@dataclass(frozen=True, slots=True)
class _Table:
    """A table of rules with what a line must hold for each; 0 when a rule asks for nothing.

    Of each row's own needs the two rarest are looked at.
    """

    wanted: int
    rows: tuple[tuple[int, int, LazyPattern, Handler], ...]


_EVERY = -1  # shares a bit with every line that has items
_TABLES: dict[int, _Table] = {}  # by table: the tables are made once, at import


def _table(rules: tuple[Rule, ...]) -> _Table:
    rows = []
    for one in rules:
        first, second = (*map(mask, one.pattern.needs), _EVERY, _EVERY)[:2]
        rows.append((first, second, one.pattern, one.apply))
    wanted = 0
    for first, _, _, _ in rows:
        wanted |= first
    return _Table(0 if wanted == _EVERY else wanted, tuple(rows))


def run(board: Board, rules: tuple[Rule, ...]) -> None:
    """Apply each rule wherever it fits, in the order of the table."""
    table = _TABLES.get(id(rules))
    if table is None:
        table = _TABLES[id(rules)] = _table(rules)
    present = board.present or _EVERY
    if table.wanted and not table.wanted & present:
        return
    for first, second, pattern, apply in table.rows:
        if not first & present or not second & present:
            continue
        for match in pattern.compiled.finditer(board.line):
            if board.still_reads(match.start(), match.group()):
                apply(board, match)
                present = board.present or _EVERY


def says_no_log(what: str) -> Handler:
    """A handler that claims the whole match as no log."""

    def apply(board: Board, match: re.Match[str]) -> None:
        board.no_log(match.start(), match.end(), what)

    return apply


def says_unread(reason: UnreadReason) -> Handler:
    """A handler that claims the whole match as something to ask about."""

    def apply(board: Board, match: re.Match[str]) -> None:
        board.unread(match.start(), match.end(), reason)

    return apply
