"""Numbers said once for several outings: lists in their order, and totals over all of them."""

import re
from dataclasses import replace

from core.reading import groups
from core.reading.board import COUNTS, Board, Claim, Rule, rule
from core.reading.draft import Draft
from core.reading.innings import innings_outs
from core.reading.pieces import Piece

FEWEST = 5  # pitches; a smaller bare number is more likely something else
_TOTAL = ("total", "combined")


def _list(board: Board, match: re.Match[str]) -> None:
    """As in "curves 7, 5 and 8" beside three names, "52, 31 and 14 pitches respectively"."""
    places = [i for i in range(*match.span()) if board.items[i].symbol == "num"]
    field = groups.FIELDS[board.items[match.start("u")].symbol]
    values = tuple(
        innings_outs(board.items[i]) if field == "outs" else board.whole(i) for i in places
    )
    outings = [{str(c.value) for c in board.claims if c.key == key} for key in ("who", "label")]
    if None not in values and any(len(one) == len(values) for one in outings):
        board.claim(match.start(), match.end(), "list", (field, values))


def _bare_list(board: Board, match: re.Match[str]) -> None:
    """Pitches of the names just before, when there are as many names as numbers."""
    first = match.start("b")
    values = tuple(
        board.whole(i) for i in range(first, match.end()) if board.items[i].value is not None
    )
    names = [c for c in board.claims if c.key == "who" and c.first < first]
    clauses = board.sentence[first]
    beside = {str(c.value) for c in names if board.sentence[c.first] == clauses}
    if len(beside) == len(values) and all(v is not None and v >= FEWEST for v in values):
        board.claim(first, match.end(), "list", ("pitches", values))


LIST_RULES: tuple[Rule, ...] = (
    rule(
        "curves 7, 5 and 8",
        "<u:unit|innings> (colon|is|dash)* num ((comma|and)+ num)+ (?! (fill|dash|slash)*"
        " (noun|num|percent|mph))",
        _list,
    ),
    rule(
        "Finn, Cole and Theo threw 25, 30 and 28",
        "said_who (threw|went|had|with|at|colon|dash|kind|in|the|comma)+ <b:num>"
        " ((comma|and)+ num)+"
        " (?! (fill|dash|slash)* (noun|num|percent|mph))",
        _bare_list,
    ),
    rule(
        "52, 31 and 14 pitches respectively",
        "num ((comma|and)+ num)+ fill* <u:unit|innings> (?= inorder)",
        _list,
    ),
)


def in_order(drafts: list[Draft], claim: Claim) -> bool:
    """Give each draft its number of a list; False when the numbers fit no drafts."""
    assert isinstance(claim.value, tuple)
    field, values = claim.value
    last = drafts[-1] if drafts else Draft()
    if len(last.who) == len(values) and field not in last.counts:
        drafts[-1:] = [
            replace(last, who=(name,), counts=last.counts | {field: value}, pains=list(last.pains))
            for name, value in zip(last.who, values, strict=True)
        ]
        return True
    outings = [draft for draft in drafts if draft.has_outing()]
    if len(outings) != len(values) or any(field in draft.counts for draft in outings):
        return False
    for draft, value in zip(outings, values, strict=True):
        draft.counts[field] = value
    return True


def sums_over_all(board: Board, drafts: list[Draft], piece: Piece) -> bool | None:
    """Whether a total is the sum over several outings; None when the piece is no such total.

    As in "22 game 1, 31 game 2, 53 total" (True), "... 9 curves total" (False: of which?).
    """
    if len(drafts) < 2:
        return None
    counts = [claim for claim in piece if claim.key in COUNTS]
    outings = [draft for draft in drafts if draft.counts]
    markers = {"who", "label", "day", "each", "all"} & {claim.key for claim in piece}
    if len(outings) < 2 or len(counts) != 1 or markers or not _is_total(board, counts[0]):
        return None
    field, value = counts[0].key, counts[0].value
    told = [draft.counts[field] for draft in outings if field in draft.counts]
    if told and field not in outings[-1].counts:
        return None  # "Leo 25 pitches, Max 12 fb 6 cb, 18 total": his own
    return len(told) == len(outings) and sum(told) == value


def _is_total(board: Board, claim: Claim) -> bool:
    near = range(max(0, claim.first - 2), min(len(board.items), claim.after + 2))
    return any(
        board.items[i].symbol in _TOTAL and board.clause[i] == board.clause[claim.first]
        for i in near
    )
