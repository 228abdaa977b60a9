"""Counts whose noun was said with the first name: "Leo 41 with 6 curves, Max 28 with 2"."""

import re

from core.reading import groups
from core.reading.board import Board, Rule, rule


def _as_the_first(board: Board, match: re.Match[str]) -> None:
    """The number counts the type that the line counts of others, if it is the only one."""
    at, whole = match.start("n"), match.start("p")
    types = {claim.key for claim in board.claims if claim.key in groups.TYPES}
    names = {claim.value for claim in board.claims if claim.key == "who" and claim.first < at}
    value = 0 if board.items[at].symbol == "none" else board.whole(at)
    pitches = _pitches(board, whole)
    if len(types) != 1 or len(names) < 2 or value is None or pitches is None or value > pitches:
        return
    if board.free(whole):
        board.claim(whole, whole + 1, "pitches", pitches, weak=True)
    board.claim(at, at + 1, types.pop(), value)


def _pitches(board: Board, at: int) -> int | None:
    """The bare number there, or the count of pitches that ends there."""
    if board.free(at):
        return board.whole(at)
    told = (c.value for c in board.claims if c.key == "pitches" and c.first <= at < c.after)
    value = next(told, None)
    return value if isinstance(value, int) else None


_TAIL = "(with|open)+ <n:num|none> (close)? (?= comma|semi|newline|dot|and|stop|$)"

ELLIPSIS_RULES: tuple[Rule, ...] = (
    rule(
        "Will 9 out of 31",
        "(?<=said_who) (colon|dash|threw|had|with|at)* <n:num> of <p:num> (?! fill* noun)",
        _as_the_first,
    ),
    rule(
        "Max 28 with 2",
        f"(?<=said_who) (colon|dash|threw|had|with|at)* <p:num> {_TAIL}",
        _as_the_first,
    ),
    rule("Max 28 pitches with 2", f"<p:said_count> {_TAIL}", _as_the_first),
)
