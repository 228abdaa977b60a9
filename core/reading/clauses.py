"""Where a line's sentences and clauses begin: how far a word like "tomorrow" reaches."""

from core.reading.board import Board

_SENTENCE_ENDS = frozenset({"dot", "stop", "question", "newline", "semi"})
_CLAUSE_ENDS = frozenset({"comma", "open", "close", "but", "then", "arrow"})


def mark_clauses(board: Board) -> None:
    """Number every item's sentence and clause (an end mark belongs to what it ends)."""
    sentence = clause = 0
    previous = ""
    for item in board.items:
        if previous in _SENTENCE_ENDS and item.symbol not in _SENTENCE_ENDS:
            sentence, clause = sentence + 1, clause + 1
        elif previous in ("comma", "open", "close", "arrow") or item.symbol in ("but", "then", "open"):
            clause += 1
        board.sentence.append(sentence)
        board.clause.append(clause)
        previous = item.symbol


def span(numbers: list[int], at: int) -> tuple[int, int]:
    """First and after-last place that share the number at `at` (numbers never fall)."""
    first = after = at
    while first > 0 and numbers[first - 1] == numbers[at]:
        first -= 1
    while after < len(numbers) and numbers[after] == numbers[at]:
        after += 1
    return first, after
