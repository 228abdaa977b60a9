"""The claims that say something, cut into pieces that each speak of one outing."""

from collections.abc import Iterator

from core.reading.board import COUNTS, NO_LOG, Board, Claim

Piece = list[Claim]


def pieces(board: Board) -> list[Piece]:
    """The claims that say something, piece by piece; a piece with two of one marker is cut."""
    found: list[Piece] = []
    last = -1
    for claim in sorted(board.claims, key=lambda one: (one.first, one.after)):
        if claim.key == NO_LOG:
            continue
        if board.piece[claim.first] != last or claim.key == "all":
            found.append([])
            last = board.piece[claim.first]
        found[-1].append(claim)
    return [part for piece in found for part in _cut(piece)]


def _cut(piece: Piece) -> Iterator[Piece]:
    """Cut "mon pen 20 wed pen 25" before each marker, "20 monday 25 tuesday" after each."""
    for key in ("who", "day", "label", "kind"):
        marks = [i for i, claim in enumerate(piece) if claim.key == key]
        values = {str(piece[i].value) for i in marks}
        if len(values) < 2 or not any(claim.key in COUNTS for claim in piece):
            continue
        if _adjacent(marks):
            continue
        counts_first = next(c.key for c in piece if c.key == key or c.key in COUNTS) in COUNTS
        cuts = [i + 1 for i in marks[:-1]] if counts_first else marks[1:]
        for first, after in zip([0, *cuts], [*cuts, len(piece)], strict=True):
            yield from _cut(piece[first:after])
        return
    yield piece


def _adjacent(marks: list[int]) -> bool:
    """Whether the markers stand side by side ("mon wed fri"): a list, not two outings."""
    return marks == list(range(marks[0], marks[0] + len(marks)))
