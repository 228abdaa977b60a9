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
from core.reading.pattern import CLAIMED, LazyPattern, code, codes
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
    "running": "said_running",
    "tired": "said_arm",
    "pain": "said_arm",
} | dict.fromkeys((*COUNTS, "forstrikes", "range"), "said_count")
_SAID_CODES = {key: code(symbol) for key, symbol in _SAID.items()}
_CLAIMED_CODE = code(CLAIMED)


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
    symbols: frozenset[str] = frozenset()
    _held: set[str] = field(default_factory=set)  # codes of symbols, those since claimed too
    _meets: int = 0  # the needs of rows that the line meets, and
    _of_rows: int = 0  # of how many rows

    def __post_init__(self) -> None:
        symbols = [item.symbol for item in self.items]
        self._codes = codes(symbols)
        if self.roster:
            self.roster_starts = frozenset(fold(name.split(" ")[0]) for name in self.roster)
        self.symbols = frozenset(symbols)
        self._held = set(self._codes)
        self._free = [True] * len(self.items)

    @property
    def line(self) -> str:
        """The symbols as one string, claimed items blanked out."""
        if self._line is None:
            self._line = "".join(self._codes)
        return self._line

    def look_again(self) -> None:
        """Pass by the rows that need what is claimed by now."""
        self._held = set(self._codes)
        self._of_rows = 0

    def fitting_rows(self) -> int:
        """The rows of all tables that may fit the line, one bit for each."""
        if self._of_rows != len(_INDEX.rows):  # a table was taken up since
            self._meets, self._of_rows = _INDEX.free, len(_INDEX.rows)
            for symbol in self._held:
                self._meets |= _INDEX.met.get(symbol, 0)
        met = self._meets
        return met & met >> MOST_ROWS & met >> 2 * MOST_ROWS

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
        said = _SAID_CODES.get(key, _CLAIMED_CODE)
        if said not in self._held:
            self._held.add(said)
            self._meets |= _INDEX.met.get(said, 0)
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
        return [i for i, free in enumerate(self._free) if free and self.items[i].symbol in NUMERIC]

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


LOOKED_AT = 3  # needs of a row
MOST_ROWS = 1000  # of all tables; the bits of each need stand so far apart


class _Index:
    """Which rows of the tables can fit a line, by the symbols that it holds or has held.

    A set of rows is a number with one bit for each row; so is, for each of a row's three rarest
    needs, the set of rows whose need is met. A row is looked at when the line holds one symbol of
    each; all are found by one look-up a symbol.
    """

    def __init__(self) -> None:
        self.rows: list[tuple[LazyPattern, Handler]] = []
        self.tables: dict[int, int] = {}  # by the table's id, its rows: tables are never dropped
        self.met: dict[str, int] = {}  # by symbol: the needs that it meets
        self.free = 0  # needs that are none

    def table(self, rules: tuple[Rule, ...]) -> int:
        """The rows of a table, which is taken up when it is first asked for."""
        found = self.tables.get(id(rules))
        if found is None:
            first = len(self.rows)
            for one in rules:
                self._take_up(one)
            found = self.tables[id(rules)] = (1 << len(self.rows)) - (1 << first)
        return found

    def _take_up(self, one: Rule) -> None:
        row = len(self.rows)
        assert row < MOST_ROWS
        self.rows.append((one.pattern, one.apply))
        needs = one.pattern.needs[:LOOKED_AT]
        for place, symbols in enumerate(needs):
            for symbol in symbols:
                self.met[symbol] = self.met.get(symbol, 0) | 1 << row + place * MOST_ROWS
        for place in range(len(needs), LOOKED_AT):
            self.free |= 1 << row + place * MOST_ROWS


_INDEX = _Index()


def run(board: Board, rules: tuple[Rule, ...]) -> None:
    """Apply each rule wherever it fits, in the order of the table."""
    table = _INDEX.table(rules)
    left = board.fitting_rows() & table
    while left:
        row = left & -left
        pattern, apply = _INDEX.rows[row.bit_length() - 1]
        line, applied = board.line, False
        for match in pattern.compiled.finditer(line):
            if board.line is line or board.still_reads(match.start(), match.group()):
                apply(board, match)
                applied = True
        left ^= row
        if applied:  # what was said may make later rows fit
            left = board.fitting_rows() & table & -(row << 1)


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
