"""Pain, soreness and tired arms: read before anything else, and never dropped."""

import re

from core.reading import groups  # noqa: F401  declares the groups
from core.reading.board import Board, Rule, rule, says_unread
from core.reading.clauses import span
from core.reading.entry import Pain, UnreadReason

WORST = 10
_SIDES = {"left": "left", "right": "right"}
_WHEN = {"during": "during", "after": "after", "nextday": "next day", "atrest": "at rest"}

GOOD_RULES: tuple[Rule, ...] = ()


def read_pain(board: Board) -> None:
    """Claim what the line says about pain, clause by clause."""
    _good_arm(board)
    _none(board)
    _painful(board)
    _tired(board)


def _pattern(source: str) -> re.Pattern[str]:
    return rule("", source, lambda board, match: None).pattern


_NO_PAIN = _pattern(
    "(none (the|adv|adj|throwing|site|a)* painful (or|and|comma) (none)? painful | none (the|adv|adj|throwing|site|a)* painful"
    " | nopain | painful (colon|is|dash|at|level|painscale)* (none|<z:num>)) (in|the|hisher|adv|at|after|during|with|site|nextday|all)*"
)
_GOOD_ARM = _pattern(
    "(the|hisher)? (left|right|throwing)* site (is|feels|adv|the|i|he|also)+ (no)? (good|adj|pct) "
    "| (the|hisher)? site (good|adj) | (feels|is)+ adv* (good|adj) (with|in) (the|hisher)? site"
)
_TIRED = _pattern(
    "site (is|feels|adv|a|the|he|i|got)* (tired) | (the|adv)? (tired) (adv|the|hisher)* site"
)
_UNTIRED = _pattern("site (is|feels|adv)* untired | untired | none tired")


def _good_arm(board: Board) -> None:
    for match in list(_GOOD_ARM.finditer(board.line)):
        board.claim(match.start(), match.end(), "nopain")


def _none(board: Board) -> None:
    for match in list(_NO_PAIN.finditer(board.line)):
        zero = match.groupdict().get("z")
        if zero and board.whole(match.start("z")) != 0:
            continue
        board.claim(match.start(), match.end(), "nopain")


def _tired(board: Board) -> None:
    for match in list(_UNTIRED.finditer(board.line)):
        board.claim(match.start(), match.end(), "tired", False)
    for match in list(_TIRED.finditer(board.line)):
        if all(board.free(i) for i in range(*match.span())):
            board.claim(match.start(), match.end(), "tired", True)


_SEVERITY = _pattern(
    "(about|a|is|at|level|painscale|colon|adv|of|open)* (<r:ratio> | <n:num> (of ten | painscale)? ) (painscale|close)*"
)


def _painful(board: Board) -> None:
    """Each pain word: the site and the severity of its clause, or a question."""
    for at, item in enumerate(board.items):
        if item.symbol in ("pain", "sore") and board.free(at):
            _one_pain(board, at)


def _one_pain(board: Board, at: int) -> None:
    first, after = span(board.clause, at)
    sites = [i for i in range(first, after) if board.symbol_is(i, "site")]
    if not sites:
        first, after = span(board.sentence, at)
        sites = [i for i in range(first, after) if board.symbol_is(i, "site")]
    severities = _severities(board, first, after, at)
    if not sites:
        board.unread(at, at + 1, UnreadReason.UNCLEAR_PAIN)
        return
    level = severities[0][1] if severities else None
    if (level is not None and level > WORST) or len(severities) > 1:
        board.unread(severities[0][0], severities[0][0] + 1, UnreadReason.IMPOSSIBLE)
        level = None
    elif severities:
        board.claim(severities[0][0], severities[0][0] + 1, "severity")
    pains = tuple(_pain(board, first, after, place, level, at) for place in sites)
    for place in sites:
        board.claim(place, place + 1, "site")
    board.claim(at, at + 1, "pain", pains)


def _severities(board: Board, first: int, after: int, at: int) -> list[tuple[int, int]]:
    found = []
    for i in range(first, after):
        item = board.items[i]
        if not board.free(i):
            continue
        if item.symbol == "ratio" and item.pair and item.pair[1] == WORST:
            found.append((i, item.pair[0]))
        elif item.symbol == "num" and (value := item.whole) is not None:
            near = board.items[i - 1].symbol if i else ""
            scale = i + 1 < len(board.items) and board.items[i + 1].symbol == "painscale"
            if scale or near in ("about", "a", "painscale", "colon", "pain", "sore", "site", "is"):
                found.append((i, value))
    return found


def _pain(board: Board, first: int, after: int, place: int, level: int | None, at: int) -> Pain:
    symbols = [item.symbol for item in board.items[first:after]]
    side = _SIDES.get(board.items[place - 1].symbol) if place else None
    when = next((_WHEN[symbol] for symbol in symbols if symbol in _WHEN), None)
    sore = board.items[at].symbol == "sore"
    return Pain(board.items[place].name, level, side, when, sore)


PAIN_RULES: tuple[Rule, ...] = (rule("unsure", "unsure", says_unread(UnreadReason.UNCLEAR_PAIN)),)
