"""A roll of arms: under "Arm check:" a bare "good" beside a name is that pitcher's arm."""

from core.reading.board import Board
from core.reading.pattern import LazyPattern

_GOOD = LazyPattern(
    "said_who (is|feels|adv|dash|colon|total)* <g:good|goodadj>"
    " (?= comma|semi|newline|dot|stop|and|$)"
)


def read_arm_roll(board: Board) -> None:
    """Claim "no pain" for each name that is called good under a heading that names arms."""
    heading = _heading(board)
    if heading is None:
        return
    found = list(_GOOD.finditer(board.line))
    for match in found:
        if match.start() > heading:
            board.claim(match.start("g"), match.end("g"), "nopain")
    if found:
        board.no_log(heading, heading + 1, "heading")


def _heading(board: Board) -> int | None:
    """Where the arm stands in "Arms today: Leo good, Max sore elbow 2"."""
    if not board.has("colon") or not any(claim.key == "who" for claim in board.claims):
        return None
    colon = next(at for at, item in enumerate(board.items) if item.symbol == "colon")
    arms = [at for at in range(colon) if board.items[at].name == "arm" and board.free(at)]
    named = any(claim.key == "who" and claim.first < colon for claim in board.claims)
    return None if named or not arms else arms[0]
