"""Names: those of the roster, and common given names."""

from core.reading.board import Board
from core.reading.tokens import fold
from core.reading.vocabulary import given_names

_LONGEST_NAME = 3  # words


def as_typed(board: Board, first: int, after: int) -> str:
    """The name without a possessive ending."""
    quote = board.quote(first, after)
    return quote[:-2] if quote.lower().endswith(("'s", "’s")) else quote


def listed(board: Board, at: int) -> int:
    """Size of the roster name that begins here; the longest wins."""
    if (
        not board.roster
        or bare(fold(board.items[at].text.split(" ")[0])) not in board.roster_starts
    ):
        return 0
    for size in range(min(_LONGEST_NAME, len(board.items) - at), 0, -1):
        if as_typed(board, at, at + size).casefold() in board.roster:
            return size
    return 0


def is_known(board: Board, norm: str) -> bool:
    """Whether a word is a common given name, or begins a name of the roster."""
    name = bare(norm)
    return name in given_names() or name in board.roster_starts


def is_plain_word(board: Board, at: int) -> bool:
    """A quick look: without a capital or a roster, only what spells a given name can be one."""
    item = board.items[at]
    if board.roster or item.text[:1].isupper() or item.symbol in ("mention", "month"):
        return False
    return not item.name.endswith("s") and bare(item.name) not in given_names()


def bare(norm: str) -> str:
    """A word without the ending of possession."""
    return norm.removesuffix("'s")
