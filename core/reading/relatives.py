"""Clauses about somebody or some day named before them: "Leo, who threw 40", no questions."""

from core.reading.board import Board


def is_relative(board: Board, at: int) -> bool:
    """Whether "who" or "when" stands there and opens such a clause."""
    return _is_relative(board, at) or is_when(board, at)


def _is_relative(board: Board, at: int) -> bool:
    """As in "except Bodhi who did 15", "Leo, who threw 40": no question."""
    before = at - 2 if at > 1 and board.items[at - 1].symbol == "comma" else at - 1
    if board.items[at].text.lower() != "who" or at == 0:
        return False
    noun = board.items[at - 1].symbol in ("word", "title", "other", "he", "catching")
    inside = board.clause[at] == board.clause[at - 1] and not board.has("question")
    named = any(c.key in ("who", "except") and c.first <= before < c.after for c in board.claims)
    return named or (noun and inside)


def is_when(board: Board, at: int) -> bool:
    """As in "nothing since Saturday when he threw 61": of a day that is past."""
    if board.items[at].text.lower() != "when" or not at:
        return False
    day = board.items[at - 1].symbol in ("weekday", "sat", "yesterday", "daybefore", "ord")
    return day and any(item.symbol in ("threw", "went") for item in board.items[at + 1 : at + 3])


__all__ = ["is_relative", "is_when"]
