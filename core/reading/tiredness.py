"""A tired arm, or one that is told not to be."""

import re

from core.reading import groups  # noqa: F401  declares the groups
from core.reading.board import Board
from core.reading.clauses import span
from core.reading.entry import UnreadReason
from core.reading.pattern import LazyPattern

_NEAR = 4  # words between a "no" and what it denies
_TIRED = LazyPattern(
    "site (is|feels|adv|a|the|he|i|had|colon|about)* tired"
    " | (adv|a)* tired (adv|the|hisher|of|in|into)* site"
)
_UNTIRED = LazyPattern(
    "(site (is|feels|adv|colon)*)? (untired (adv|total)* | negation (adv|the|hisher)*"
    " tired | negation (the|hisher|i|he|had)* site tired)"
)


def read_tiredness(board: Board) -> None:
    """Claim what the line says of a tired arm."""
    for pattern, tired in ((_UNTIRED, False), (_TIRED, True)):
        for match in list(pattern.finditer(board.line)):
            if not all(board.free(i) for i in range(*match.span())):
                continue
            if tired and _is_perhaps_denied(board, match.start()):
                board.unread(*match.span(), UnreadReason.UNCLEAR_PAIN)
            elif _of_the_arm(board, match):
                _claim_without_sites(board, match, "tired", tired)


def _is_perhaps_denied(board: Board, at: int) -> bool:
    """As in "ya no teng el brazo cansado": a "no" before it, and a word that is not known."""
    first, _ = span(board.clause, at)
    before = range(max(first, at - _NEAR), at)
    denied = [i for i in before if board.symbol_is(i, "nothing")]
    return bool(denied) and any(board.symbol_is(i, "word") for i in range(denied[0], at))


def _of_the_arm(board: Board, match: re.Match[str]) -> bool:
    """Tired legs are no tired arm."""
    named = {board.items[i].name for i in range(*match.span()) if board.items[i].symbol == "site"}
    return not named or bool(named & {"arm", "shoulder", "elbow", "forearm"})


def _claim_without_sites(board: Board, match: re.Match[str], key: str, value: object) -> None:
    """Claim a match but leave its body site free: "arm is tired and sore" needs it again."""
    for at in range(*match.span()):
        if board.items[at].symbol in ("tired", "untired"):
            board.claim(at, at + 1, key, value)
        elif board.items[at].symbol in ("insteadof", "none", "nothing"):
            board.no_log(at, at + 1, "tiredness")


__all__ = ["read_tiredness"]
