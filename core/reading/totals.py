"""How far "this season" reaches: the counts beside it are totals of many outings."""

from core.reading.board import Board
from core.reading.clauses import span
from core.reading.groups import FILLERS, NOUNS
from core.reading.items import NUMERIC

MOST_PITCHES = 200  # of one outing
_NOW = frozenset({"today", "yesterday", "weekday", "sat"})


def beside(board: Board, at: int) -> tuple[int, int]:
    """The counts right before the marker, or else right after it, within its clause."""
    first, after = span(board.clause, at)
    if any(board.items[i].symbol == "total" for i in range(first, after)):
        return first, after
    whole = span(board.sentence, at)
    many = any((board.whole(i) or 0) > MOST_PITCHES for i in range(first, after))
    counted_before = any(
        board.items[i].symbol == "num" and board.items[i + 1].symbol == "pitches"
        for i in range(whole[0], first - 1)
    )  # "45 pitches vs Oaks, thats 310 on the year"
    if (
        many
        and not counted_before
        and not any(board.items[i].symbol in _NOW for i in range(*whole))
    ):
        return whole  # "612 pitches and 88 curves this season, 38 innings"
    before = _counts_towards(board, range(at - 1, first - 1, -1))
    if before is not None:
        own = [i for i in range(at + 1, after) if board.items[i].symbol == "with"]
        stop = own[0] if own else after  # "52 on the week with the 22 she threw tonight"
        return before, _parts_after(board, 1 + (_counts_towards(board, range(at + 1, stop)) or at))
    behind = _counts_towards(board, range(at + 1, after))
    return at, at + 1 if behind is None else behind + 1


def _parts_after(board: Board, after: int) -> int:
    """Past the parts of a total: "530 pitches since March, 92 of them curves"."""
    symbols = [item.symbol for item in board.items[after : after + 4]]
    if symbols[:3] == ["comma", "num", "them"] and len(symbols) == 4 and symbols[3] in NOUNS:
        return after + 4
    return after


_BETWEEN = FILLERS | {
    "in",
    "for",
    "on",
    "of",
    "at",
    "colon",
    "i",
    "he",
    "up_to",
    "dash",
    "hash",
    "with",
    "and",
    "season",
}
_COUNTED = (NOUNS | NUMERIC | {"ord"}) - {"clock"}


def _counts_towards(board: Board, places: range) -> int | None:
    """The far end of the stretch of counts that begins next to the marker."""
    end = None
    for place in places:
        symbol = board.items[place].symbol
        if symbol in _COUNTED:
            end = place
        elif symbol not in _BETWEEN:
            break
    return end


def with_todays(board: Board, marker: int, now: int) -> int:
    """Back over the count of today: "threw 80 last week only 45 today", after last week's own."""
    first, _ = span(board.clause, marker)
    if not any(board.items[i].symbol == "num" for i in range(first, marker)):
        return now
    place = now
    while place - 1 > marker and board.items[place - 1].symbol in (
        "num",
        "pitches",
        "adv",
        "about",
    ):
        place -= 1
    return place


__all__ = ["beside", "with_todays"]
