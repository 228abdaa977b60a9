"""Where a line's sentences, clauses and pieces begin: how far a word like "tomorrow" reaches."""

from bisect import bisect_left, bisect_right

from core.reading.board import Board

_SENTENCE_ENDS = frozenset({"dot", "stop", "question", "newline", "semi"})
_CLAUSE_ENDS = frozenset({"comma", "open", "close", "arrow"})
_CLAUSE_STARTS = frozenset({"but", "then", "open"})
_PIECE_STARTS = frozenset({"and"})


def mark_clauses(board: Board) -> None:
    """Number every item's sentence, clause and piece (an end mark belongs to what it ends).

    A sentence ends at a full stop or a new line, a clause also at a comma, bracket or "but",
    a piece also at "and".
    """
    sentence = clause = piece = 0
    previous = ""
    sentences, clauses, pieces = board.sentence, board.clause, board.piece
    for at, item in enumerate(board.items):
        symbol = item.symbol
        if previous in _SENTENCE_ENDS and symbol not in _SENTENCE_ENDS:
            sentence += 1
            clause += 1
            piece += 1
        elif previous in _CLAUSE_ENDS or symbol in _CLAUSE_STARTS:
            clause += 1
            piece += 1
        elif symbol in _PIECE_STARTS:
            piece += 1
        sentences.append(sentence)
        clauses.append(clause)
        pieces.append(piece)
        previous = "semi" if symbol == "slash" and _parts(board, at) else symbol


def _parts(board: Board, at: int) -> bool:
    """Whether a slash stands between spaces and words: "leo pen 30 / max pen 24"."""
    following = board.items[at + 1] if at + 1 < len(board.items) else None
    if following is None or board.items[at].tight or following.tight:
        return False
    return following.text[:1].isalpha() and board.items[at - 1].symbol != "num"


def span(numbers: list[int], at: int) -> tuple[int, int]:
    """First and after-last place that share the number at `at` (numbers never fall)."""
    return bisect_left(numbers, numbers[at]), bisect_right(numbers, numbers[at])
