"""How far a pain report reaches: a sentence, or one person's part of it."""

from collections.abc import Iterator
from itertools import pairwise

from core.reading.board import Board
from core.reading.clauses import span


def stretches(board: Board) -> Iterator[tuple[int, int]]:
    """First and after-last places, in order.

    In "Leo elbow 3/10, Max 25p no pain, Sam shoulder sore" each person's clauses are a stretch of
    their own, so that nobody gets the pain of another.
    """
    first = 0
    while first < len(board.items):
        _, after = span(board.sentence, first)
        edges = [first, *_cuts(board, first, after), after]
        yield from pairwise(edges)
        first = after


def _cuts(board: Board, first: int, after: int) -> list[int]:
    """Where the clauses of the second and later persons begin."""
    named = {
        board.clause[claim.first]
        for claim in board.claims
        if claim.key == "who" and first <= claim.first < after
    }
    starts = sorted(span(board.clause, at)[0] for at in range(first, after)
                    if board.clause[at] in named)  # fmt: skip
    return [at for at in dict.fromkeys(starts[1:]) if first < at < after and at != starts[0]]
