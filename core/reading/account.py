"""The account of a line: what became of each of its numbers."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.reading.board import NO_LOG, Board, Claim
from core.reading.items import NUMERIC


@dataclass(frozen=True, slots=True)
class Accounted:
    """A number as typed, its place in the line, and its use: a field, what it is, or"
    " "left over".
    """

    text: str
    start: int
    end: int
    use: str


LEFT_OVER = "left over"


def account(board: Board) -> tuple[Accounted, ...]:
    """Every number of the line with its use; the board must have been worked through."""
    return tuple(
        Accounted(item.text, item.start, item.end, _use(board.claims, at))
        for at, item in enumerate(board.items)
        if item.symbol in NUMERIC or item.digits
    )


def _use(claims: Sequence[Claim], at: int) -> str:
    own = [claim for claim in claims if claim.first <= at < claim.after]
    if not own:
        return LEFT_OVER
    return str(own[-1].value) if own[-1].key in (NO_LOG, "unread") else own[-1].key


__all__ = ["LEFT_OVER", "Accounted", "account"]
