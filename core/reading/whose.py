"""Counts in a sentence about somebody else that may be our own: asked, never dropped."""

from core.reading.board import Board
from core.reading.clauses import span
from core.reading.entry import UnreadReason
from core.reading.groups import FIELDS
from core.reading.items import NUMERIC

_ACTS = frozenset({"num", "threw", "had"})
_OF_HIS = ("his ", "her ", "su ")
_FEWEST_WORDS = 2  # after the other's name, for his clause to tell something of him


def ask_whose(board: Board, first: int, after: int, what: str) -> None:
    """Ask about a second name, or about counts after a clause that counts nothing."""
    if what != "someone else's":
        return
    other = next((i for i in range(first, after) if board.items[i].symbol == "other"), None)
    if other is None:
        return
    _second_name(board, other, after)
    _second_clause(board, other, after)


def _second_name(board: Board, other: int, after: int) -> None:
    """As in "their ace Max threw 70, then Owen 20": is Owen theirs too?"""
    for claim in board.claims:
        if claim.key != "who" or not other < claim.first < after:
            continue
        follows = board.items[claim.after].symbol if claim.after < len(board.items) else ""
        start, _ = span(board.piece, claim.first)
        theirs = any(item.symbol == "other" for item in board.items[start : claim.first])
        if follows in _ACTS and not theirs:
            claim.key, claim.value = "unread", UnreadReason.UNCLEAR_PERSON


def _second_clause(board: Board, other: int, after: int) -> None:
    """As in "their pitcher hit him, 40p 3ip though": whose are the counts?"""
    _, end = span(board.clause, other)
    told = board.items[other + 1 : end]
    if len(told) <= _FEWEST_WORDS or any(item.symbol in NUMERIC for item in told):
        return
    for at in range(end, after - 1):
        counted = board.items[at].symbol == "num" and board.items[at + 1].symbol in FIELDS
        start, stop = span(board.clause, at)
        others = any(item.symbol == "other" for item in board.items[start:stop])
        if counted and board.free(at) and not others:
            board.unread(at, at + 2, UnreadReason.UNCLEAR_PERSON)


def own_again(board: Board, at: int, place: int) -> bool:
    """As in "my brother threw 40 and I threw 30", "their ace threw 70 and our Leo 44".

    Where the others have names too, a further name may be theirs or ours.
    """
    item = board.items[place]
    if item.symbol == "i" or item.text.lower().startswith("ours"):
        return True
    if board.items[at].symbol != "other":
        return False
    if item.symbol == "he":
        own = board.author != "pitcher" and board.items[at].text.lower().startswith(_OF_HIS)
        return own or item.text.lower().startswith(("our ", "my "))
    counted = [one.symbol for one in board.items[place : place + 2]] == ["num", "for"]
    named = any(c.key == "who" and c.first == place + (2 if counted else 0) for c in board.claims)
    return named and not _rival_named(board, at)


def _rival_named(board: Board, at: int) -> bool:
    """As in "their ace Max threw 70, then Owen 20"."""
    return at + 1 < len(board.items) and board.items[at + 1].text[:1].isupper()


__all__ = ["ask_whose", "own_again"]
