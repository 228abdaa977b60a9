"""Talk inside a line: plans, questions, other people's games, season totals. No log."""

from core.reading.board import Board
from core.reading.clauses import span
from core.reading.items import NUMERIC
from core.reading.pattern import code

_REACHES_ON = {"plan": "plan", "ask": "question", "other": "someone else's", "joke": "joke"}
_REACHES_CLAUSE = {"season": "total", "pastref": "earlier"}
_STOPS = frozenset({"but", "threw", "finish", "today", "went"})


def talk_scopes(board: Board) -> list[tuple[int, int, str]]:
    """Runs of items that are talk, each with the name of what it is."""
    scopes: list[tuple[int, int, str]] = []
    for at, item in enumerate(board.items):
        if not board.free(at):
            continue
        if item.symbol in _REACHES_ON:
            scopes.append((_back(board, at), _forward(board, at), _REACHES_ON[item.symbol]))
        elif item.symbol in _REACHES_CLAUSE:
            first, after = span(board.clause, at)
            scopes.append((first, after, _REACHES_CLAUSE[item.symbol]))
    return scopes


def claim_talk(board: Board) -> None:
    """Claim every number in talk as no log, and every other item too, so that it says nothing."""
    for first, after, what in talk_scopes(board):
        at = first
        while at < after:
            if board.free(at):
                board.no_log(at, at + 1, what)
            at += 1


def _forward(board: Board, at: int) -> int:
    """To the end of the sentence, or to where the line comes back to what was thrown."""
    _, end = span(board.sentence, at)
    hypothetical = board.items[at].symbol in ("other", "ask", "joke")
    for place in range(at + 1, end):
        symbol = board.items[place].symbol
        if symbol == "but" or (symbol in _STOPS and not hypothetical):
            return place
    return end


def _back(board: Board, at: int) -> int:
    """To the start of the clause, unless something was thrown between."""
    start, _ = span(board.clause, at)
    for place in range(at - 1, start - 1, -1):
        if board.items[place].symbol in _STOPS:
            return at
    return start


def numbers_in(board: Board, first: int, after: int) -> list[int]:
    """Places of the unclaimed numbers in a run."""
    return [i for i in range(first, after) if board.items[i].symbol in NUMERIC and board.free(i)]


__all__ = ["claim_talk", "code", "numbers_in", "talk_scopes"]
