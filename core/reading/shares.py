"""Shares and parts: "15% curves of 60", "14 of my 60 were curves", "13 curves out of 58"."""

import re
from fractions import Fraction

from core.reading import groups
from core.reading.board import Board, Rule, rule
from core.reading.entry import UnreadReason

MOST_OF_A_SHARE = 11  # "1 in 5" is a share; "3 in 52" are 3 of 52
LEAST_TOTAL = 6  # "1/4 curves" is a share; "4/20 curves" are 4 of 20


def _share(board: Board, match: re.Match[str]) -> None:
    """As in "15% curves of 60": a share becomes a count, if it is a whole one."""
    item, total = board.items[match.start("n")], board.whole(match.start("t"))
    share = (item.value or Fraction(0)) / (100 if item.symbol == "pct" else 1)
    if total is None or (share * total).denominator != 1:
        board.unread(match.start(), match.end(), UnreadReason.UNKNOWN_NUMBER)
        return
    noun = board.items[match.start("u")].symbol
    board.claim(match.start("t"), match.end("t"), "pitches", total)
    claim_rest(board, match, groups.FIELDS[noun], (share * total).numerator)


def _share_of_stated(board: Board, match: re.Match[str]) -> None:
    """As in "45 pitches, a third curves": kept as a share until the pitches are known."""
    item = board.items[match.start("n")]
    share = (item.value or Fraction(0)) / (100 if item.symbol == "pct" else 1)
    noun = board.items[match.start("u")].symbol
    board.claim(match.start(), match.end(), "share", (groups.FIELDS[noun], share))


def _share_of_kind(board: Board, match: re.Match[str]) -> None:
    """As in "half of my pen was curves, 24 pitches": the kind still tells the kind."""
    item, at = board.items[match.start("n")], match.start("u")
    share = (item.value or Fraction(0)) / (100 if item.symbol == "pct" else 1)
    board.claim(at, at + 1, "share", (groups.FIELDS[board.items[at].symbol], share))
    board.no_log(match.start("n"), match.start("n") + 1, "part of a count")


def _part_of(board: Board, match: re.Match[str]) -> None:
    """As in "14 of my 60 were curves", "13 curves out of 58", "threw 11 curves of 53"."""
    part, total = board.whole(match.start("n")), board.whole(match.start("t"))
    if part is None or total is None:
        return
    noun = board.items[match.start("u")].symbol
    board.claim(match.start("t"), match.end("t"), "pitches", total)
    about = board.symbol_is(match.start("n") - 1, "about")
    if about:
        board.claim(match.start("n") - 1, match.end("n"), groups.FIELDS[noun], part, about=True)
    claim_rest(board, match, groups.FIELDS[noun], part, counted=about)


def claim_rest(
    board: Board, match: re.Match[str], field: str, value: int, *, counted: bool = False
) -> None:
    """Claim the number n as a count (unless it is), and what else the match holds as part of it.

    A kind inside it still tells the kind ("half of my 40 in the pen were curves").
    """
    first = match.start("n")
    if not counted:
        board.claim(first, first + 1, field, value)
    for at in range(*match.span()):
        if board.free(at) and board.items[at].symbol not in groups.KINDS:
            board.no_log(at, at + 1, "part of a count")


def _ratio_part(board: Board, match: re.Match[str]) -> None:
    """As in "12/65 were curves"."""
    pair = board.items[match.start("r")].pair
    assert pair is not None
    if pair[0] < pair[1] < LEAST_TOTAL:
        field = board.items[match.start("u")].symbol
        board.claim(match.start(), match.end(), "share", (field, Fraction(*pair)))
        return
    board.claim(match.start(), match.start() + 1, "pitches", max(pair))
    board.claim(match.start() + 1, match.end(), board.items[match.start("u")].symbol, min(pair))


def _one_in(board: Board, match: re.Match[str]) -> None:
    """As in "1 in 5 was a curve": a share of the pitches."""
    part, whole = board.whole(match.start("n")) or 0, board.whole(match.start("t")) or 0
    if 0 < part < whole < MOST_OF_A_SHARE:
        field = board.items[match.start("u")].symbol
        board.claim(match.start(), match.end(), "share", (field, Fraction(part, whole)))


def _all_of_type(board: Board, match: re.Match[str]) -> None:
    field = groups.FIELDS[board.items[match.start("u")].symbol]
    board.claim(match.start(), match.end(), "share", (field, Fraction(1)))


def _rest_of(board: Board, match: re.Match[str]) -> None:
    """As in "25 pitches, 5 changeups, the rest fastballs": kept until the others are known."""
    field = board.items[match.start("u")].symbol
    board.claim(match.start(), match.end(), "restof", field)


def _all_plain(board: Board, match: re.Match[str]) -> None:
    """As in "22 pitches all fastballs": are the breaking balls counted as none?"""
    field = board.items[match.start("u")].symbol
    first, after = match.start(), match.end()
    if any(c.key in groups.BREAKING_TYPES and c.value == 0 for c in board.claims) or any(
        board.items[i].symbol == "none" and board.items[i + 1].symbol in groups.BREAKING_TYPES
        for i in range(len(board.items) - 1)
    ):
        board.claim(first, after, "share", (field, Fraction(1)))
    else:
        board.unread(first, after, UnreadReason.TWO_READINGS)


def _of_total(board: Board, match: re.Match[str]) -> None:
    """As in "the curve was good, threw 11 of 53"."""
    symbols = [board.items[i].symbol for i in range(match.start())]
    named = [symbol for symbol in symbols if symbol in groups.TYPES]
    part, total = board.whole(match.start("n")), board.whole(match.start("t"))
    if named and "forstrikes" not in symbols and part is not None and total is not None:
        board.claim(match.start("n"), match.start("n") + 1, named[-1], part)
        board.claim(match.start("n") + 1, match.end(), "pitches", total)


DET = "(the|hisher|a|i|he|said_who|allof|quote)*"

SHARE_RULES: tuple[Rule, ...] = (
    rule(
        "share of",
        f"<n:pct|frac> (fill|of|them|is)* <u:type> (of|in|on|out|is)+ {DET} <t:num>"
        f" (pitches|total)*",
        _share,
    ),
    rule(
        "share of all",
        f"<n:pct|frac> ((of|in) {DET} | (the|hisher)) <t:num> (pitches|total)*"
        " ((in|of|from) (the|hisher|a)* kind)? (is|adv)* <u:type|strikes>",
        _share,
    ),
    rule(
        "half of my pen was curves",
        "<n:pct|frac> of (the|hisher|a)* kind (is|adv)* <u:type>",
        _share_of_kind,
    ),
    rule(
        "share of those",
        "<n:pct|frac> (fill|of|them|is)* (pitches (is|adv)+)? <u:type|strikes>",
        _share_of_stated,
    ),
    rule(
        "every one a slider",
        "(everyone_of|allof) (is|a)* <u:breakingtype> (?! (and|comma|slash) type)",
        _all_of_type,
    ),
    rule("the rest fastballs", "(rest|others) (is|of|the|them|adv|allof)* <u:type>", _rest_of),
    rule(
        "all fastballs",
        "(everyone_of|allof) (is|a|the)* <u:fastball|changeup> (?! fill* (and|comma|slash|num))",
        _all_plain,
    ),
    rule(
        "part of",
        f"<n:num> of {DET} <t:num> (pitches|is|total|adv)* (is|adv|threw)* <u:type>",
        _part_of,
    ),
    rule(
        "part out of",
        f"<n:num> fill* <u:type> (of) {DET} <t:num> (?! (fill|dash)*"
        f" (type|strikes|innings|forstrikes)) (total|pitches)*",
        _part_of,
    ),
    rule("of so many", "threw (about|adv)* <n:num> of <t:num> (?! (fill|dash)* noun)", _of_total),
    rule("one in five", "<n:num> in <t:num> (pitches)? is (adv)* (a)? <u:type>", _one_in),
    rule("part / total", "<r:ratio> (fill|is|of|them)* <u:type>", _ratio_part),
)
