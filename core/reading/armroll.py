"""A roll of arms: under "Arm check:" a bare "good" beside a name is that pitcher's arm, and under
"Pain:" a bare number is how bad it is.
"""

import re

from core.reading.board import Board
from core.reading.entry import Pain, UnreadReason
from core.reading.pattern import LazyPattern
from core.reading.severity import WORST

_GOOD = LazyPattern(
    "said_who (is|feels|adv|dash|colon|total)* <g:good|goodadj>"
    " (?= comma|semi|newline|dot|stop|and|$)"
)
_TIRED = LazyPattern(
    "said_who (is|feels|adv|a|dash|colon)* <t:tired> (?= comma|semi|newline|dot|stop|and|$)"
)
_END = "(?= comma|semi|newline|dot|stop|and|$)"
_LEVEL = LazyPattern(
    "said_who (is|colon|dash|had|at|with)* <side:left|right>? <site:site>? (is|colon|dash|at|a)*"
    f" (<n:num> | <r:ratio> | <none:none|nothing|good|goodadj|nopain>) {_END}"
)


def read_arm_roll(board: Board) -> None:
    """Claim "no pain" for each name that is called good under a heading that names arms, and
    the pain of each name under a heading that names pain.
    """
    heading = _heading(board)
    if heading is not None:
        found = [m for m in _GOOD.finditer(board.line) if m.start() > heading]
        for match in found:
            board.claim(match.start("g"), match.end("g"), "nopain")
        tired = [m for m in _TIRED.finditer(board.line) if m.start() > heading]
        for match in tired:
            board.claim(match.start("t"), match.end("t"), "tired", True)
        for match in list(_LEVEL.finditer(board.line)) if found or tired else ():
            _claim_level(board, match, "", sore=False)
        if found or tired:
            board.no_log(heading, heading + 1, "heading")
    if board.has("pain", "sore", "painscale"):
        _read_levels(board)


def _heading(board: Board) -> int | None:
    """Where the arm stands in "Arms today: Leo good, Max sore elbow 2"."""
    if not board.has("colon") or not any(claim.key == "who" for claim in board.claims):
        return None
    colon = next(at for at, item in enumerate(board.items) if item.symbol == "colon")
    arms = [at for at in range(colon) if board.items[at].name == "arm" and board.free(at)]
    named = any(claim.key == "who" and claim.first < colon for claim in board.claims)
    return None if named or not arms else arms[0]


def _read_levels(board: Board) -> None:
    """As in "Pain: Leo elbow 3, Max 0, Sam shoulder 4": two rows or more under such a heading."""
    names = [claim.first for claim in board.claims if claim.key == "who"]
    if len(names) < 2:
        return
    head = board.items[: min(names)]
    painful = [at for at, i in enumerate(head) if i.symbol in ("pain", "sore", "painscale")]
    ended = head[-1:] and head[-1].symbol in ("colon", "newline", "dash")
    if not painful or not ended or any(item.value is not None for item in head):
        return
    found = list(_LEVEL.finditer(board.line))
    if len(found) < 2:
        return
    sore = all(head[at].symbol == "sore" for at in painful)
    headed = [item.name for item in head if item.symbol == "site"]
    for at, item in enumerate(head):
        if item.symbol in ("pain", "sore", "painscale", "site"):
            board.no_log(at, at + 1, "heading")
    for match in found:
        _claim_level(board, match, headed[0] if len(headed) == 1 else "", sore=sore)


def _claim_level(board: Board, match: re.Match[str], headed: str, *, sore: bool) -> None:
    """Claim what follows a name; `headed` is the site that the heading names."""
    start = match.start() + 1
    site = board.items[match.start("site")].name if match.group("site") else headed
    side = board.items[match.start("side")].symbol if match.group("side") else None
    pair = board.items[match.start("r")].pair if match.group("r") else None
    number = board.whole(match.start("n")) if match.group("n") else (pair or (None,))[0]
    scaled = pair is None or pair[1] == WORST
    if match.group("none") or number == 0:
        board.claim(start, match.end(), "nopain")
    elif site and number is not None and number <= WORST and scaled:
        board.claim(start, match.end(), "pain", (Pain(site, number, side, sore=sore),))
    else:
        board.unread(start, match.end(), UnreadReason.UNCLEAR_PAIN)
