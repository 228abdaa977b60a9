"""Numbers paired with what they count, before it ("62 pitches") or after it ("pitches: 62").

A run is a stretch of numbers and nouns with only small words between them. In a run the pairing
is chosen that leaves the fewest numbers and nouns alone: "44 p 6 cb" pairs each number with the
noun after it, "p 44 cb 6" with the noun before it.
"""

from typing import NamedTuple

from core.reading.board import Board
from core.reading.entry import UnreadReason
from core.reading.groups import FIELDS, FILLERS, NOUNS, OTHER_NOUNS
from core.reading.innings import innings_outs

_LINKS = frozenset({"colon", "eq", "dash"})
_COUNTABLE = NOUNS | {"num", "frac"}
_JOINS = FILLERS | _LINKS | {"of"}
LONGEST_RUN = 60


class Pair(NamedTuple):
    """Places of a number and its noun, and of the whole stretch between them."""

    number: int
    noun: int


def pair_counts(board: Board) -> None:
    """Claim every number that stands with a noun."""
    for run in _runs(board):
        for pair in best_pairs(board, run):
            _claim(board, pair)


def _runs(board: Board) -> list[list[int]]:
    """Places of numbers and nouns, run by run."""
    runs: list[list[int]] = []
    run: list[int] = []
    for at, item in enumerate(board.items):
        free = board.free(at)
        if free and item.symbol in _COUNTABLE:
            run.append(at)
        elif free and item.symbol in _JOINS:
            continue
        if run and (not free or item.symbol not in _COUNTABLE or len(run) >= LONGEST_RUN):
            runs.append(run)
            run = []
    return [run for run in (*runs, run) if len(run) > 1]


def best_pairs(board: Board, run: list[int]) -> list[Pair]:
    """The pairing of neighbours that covers most; a noun after the number wins a tie."""
    noun_first = board.items[run[0]].symbol in NOUNS and board.items[run[-1]].symbol not in NOUNS
    best: list[tuple[int, list[Pair]]] = [(0, []), (0, [])]  # from the end: run[i:]
    for i in range(len(run) - 2, -1, -1):
        skip = best[0]
        choice = skip
        score = _score(board, run[i], run[i + 1])
        if score and noun_first and board.items[run[i]].symbol in NOUNS:
            score += 2  # "cb 8 ch 5 fb 31 total 44 ip 3"
        if score and best[1][0] + score >= skip[0]:
            left_is_noun = board.items[run[i]].symbol in NOUNS
            pair = Pair(run[i + 1], run[i]) if left_is_noun else Pair(run[i], run[i + 1])
            choice = (best[1][0] + score, [pair, *best[1][1]])
        best = [choice, best[0]]
    return best[0][1]


def _score(board: Board, left: int, right: int) -> int:
    """How well two neighbours pair: 0 not at all; a noun after its number a little better."""
    left_is_noun = board.items[left].symbol in NOUNS
    if left_is_noun == (board.items[right].symbol in NOUNS):
        return 0
    between = {board.items[i].symbol for i in range(left + 1, right)}
    if not left_is_noun and not between and board.items[right].symbol in OTHER_NOUNS:
        return 104
    if left_is_noun:
        return 103 if between & {"colon", "eq"} else 101
    return 0 if between & {"colon", "eq"} else 102


def _claim(board: Board, pair: Pair) -> None:
    first, after = min(pair.number, pair.noun), max(pair.number, pair.noun) + 1
    while first > 0 and board.free(first - 1) and board.items[first - 1].symbol == "about":
        first -= 1
    after = _with_ish(board, after)
    noun = board.items[pair.noun].symbol
    if board.items[pair.noun].text.lower() == "pitchers" and (board.whole(pair.number) or 0) > 14:
        noun = "pitches"  # no team has 46 pitchers
    if noun in OTHER_NOUNS:
        board.no_log(first, after, OTHER_NOUNS[noun])
    elif noun in FIELDS:
        claim_count(
            board, first, after, FIELDS[noun] if noun != "forstrikes" else noun, pair.number
        )
    else:
        board.unread(first, after, UnreadReason.UNKNOWN_PITCH)


def _is_whole_of_a_part(board: Board, first: int) -> bool:
    """As in "3 of Malik's 48 were curves": 48 is no count of curves."""
    at = first - 1
    while at > 0 and board.items[at].symbol in ("the", "hisher", "word", "i"):
        at -= 1
    part = board.items[at - 1] if at > 0 and board.items[at].symbol == "of" else None
    return part is not None and board.free(at - 1) and part.symbol in ("num", "frac", "pct")


def _with_ish(board: Board, after: int) -> int:
    """Past "ish" and "or so"; also past "about" when no number follows it."""
    while after < len(board.items) and board.free(after):
        follows = board.items[after + 1].symbol if after + 1 < len(board.items) else ""
        symbol = board.items[after].symbol
        if symbol != "ish" and not (symbol == "about" and follows not in ("num", "frac", "a")):
            break
        after += 1
    return after


def claim_count(board: Board, first: int, after: int, field: str, number: int) -> None:
    """Claim one count, or ask about it when the number is no such count."""
    item = board.items[number]
    symbols = {board.items[i].symbol for i in range(first, after)}
    value = innings_outs(item) if field == "outs" and "outs" not in symbols else item.whole
    before = board.items[first - 1].symbol if first else ""
    if _is_whole_of_a_part(board, first):
        board.unread(first, after, UnreadReason.TWO_READINGS)
        return
    if before == "over" and field != "outs":
        board.unread(first - 1, after, UnreadReason.VAGUE)
    elif value is None:
        board.unread(first, after, UnreadReason.IMPOSSIBLE)
    else:
        board.claim(first, after, field, value, about=bool(symbols & {"about", "ish"}))
