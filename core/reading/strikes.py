"""Strikes: of all pitches ("62/38 strikes") and of the breaking balls ("7 curves (3 strikes)")."""

import re

from core.reading import groups
from core.reading.board import Board, Rule, rule
from core.reading.groups import LAST_OF_MONTH
from core.reading.shares import DET, claim_rest

MONTHS = 12


def _type_strikes_of(board: Board, match: re.Match[str]) -> None:
    """As in "4 of 9 curves for strikes"."""
    part, total = board.whole(match.start("n")), board.whole(match.start("t"))
    if part is None or total is None:
        return
    board.claim(match.start("t"), match.end("t"), board.items[match.start("u")].symbol, total)
    claim_rest(board, match, "breaking_strikes", part)


def _strikes(board: Board, match: re.Match[str]) -> None:
    """As in "71 P (45 S)", the way of box scores."""
    value = board.whole(match.start("n"))
    if value is not None:
        board.claim(match.start("n"), match.end(), "strikes", value)


def _type_strikes(board: Board, match: re.Match[str]) -> None:
    value = board.whole(match.start("n"))
    if value is not None:
        board.claim(match.start(), match.end(), "breaking_strikes", value)


def _pitches_and_strikes(board: Board, match: re.Match[str]) -> None:
    """As in "62/38 strikes", "62/38 pitches/strikes": the smaller are the strikes."""
    pair = board.items[match.start("r")].pair
    assert pair is not None
    at = match.start("r")
    board.claim(at, at + 1, "pitches", max(pair))
    board.claim(match.start("u"), match.end("u"), "strikes", min(pair))
    for place in range(*match.span()):
        if board.free(place):
            board.no_log(place, place + 1, "part of a count")


def _spaced_pair(board: Board, match: re.Match[str]) -> None:
    left, right = board.whole(match.start("n")), board.whole(match.start("t"))
    if left is None or right is None:
        return
    board.claim(match.start("n"), match.end("n"), "pitches", max(left, right))
    _claim_tail(board, match, min(left, right))


def _claim_tail(board: Board, match: re.Match[str], strikes: int) -> None:
    board.claim(match.start("t"), match.end("t"), "strikes", strikes)
    for at in range(*match.span()):
        if board.free(at):
            board.no_log(at, at + 1, "part of a count")


def _bracketed_strikes(board: Board, match: re.Match[str]) -> None:
    """As in "7 curves (3 strikes)": strikes of the breaking balls."""
    value = board.whole(match.start("n"))
    if value is not None:
        board.claim(match.start("n"), match.end(), "breaking_strikes", value)


def _strike_share(board: Board, match: re.Match[str]) -> None:
    """As in "60% strikes on 55 pitches" are 33, if it is a whole number."""
    share, total = board.items[match.start("n")].value, board.whole(match.start("t"))
    if share is None or total is None:
        return
    strikes = share * total / 100
    board.claim(match.start("t"), match.end(), "pitches", total)
    if strikes.denominator == 1:
        board.claim(match.start(), match.start("t"), "strikes", strikes.numerator)
    else:
        board.no_log(match.start(), match.start("t"), "rate")


def _type_and_strikes(board: Board, match: re.Match[str]) -> None:
    """As in "curve: 9 thrown 4 strikes"."""
    noun, number, part = ("u", "t", "n") if match.group("u") else ("v", "w", "m")
    total, strikes = board.whole(match.start(number)), board.whole(match.start(part))
    if total is None or strikes is None:
        return
    board.claim(match.start(), match.end(number), board.items[match.start(noun)].symbol, total)
    board.claim(match.end(number), match.end(), "breaking_strikes", strikes)


def _type_over_strikes(board: Board, match: re.Match[str]) -> None:
    pair = board.items[match.start("r")].pair
    if pair is not None:
        at = match.start("r")
        board.claim(match.start(), at + 1, board.items[match.start("u")].symbol, max(pair))
        board.claim(at + 1, match.end(), "breaking_strikes", min(pair))


def _type_over_strikes_after(board: Board, match: re.Match[str]) -> None:
    """As in "7/9 curves for strikes"."""
    pair, at = board.items[match.start("r")].pair, match.start("r")
    if pair is not None:
        board.claim(at, match.end("u"), board.items[match.start("u")].symbol, max(pair))
        board.claim(match.end("u"), match.end(), "breaking_strikes", min(pair))


def _bare_pair(board: Board, match: re.Match[str]) -> None:
    """As in "52/33 8cb 3.2ip": too large for a day, and as many strikes as are usual."""
    pair = board.items[match.start("r")].pair
    at = match.start("r")
    if pair is None or board.has("pitches", "strikes", "forstrikes"):
        return
    no_date = pair[0] > LAST_OF_MONTH or min(pair) > MONTHS
    if no_date and 2 * pair[0] <= 5 * pair[1] <= 4 * pair[0]:
        board.claim(at, at + 1, "pitches", pair[0])
        board.claim(at, at + 1, "strikes", pair[1])


def _of_those(board: Board, match: re.Match[str]) -> None:
    """As in "9 curves, 4 of those were strikes": of the noun before, if it is a breaking type."""
    nouns = [
        item.symbol
        for item in board.items[: match.start()]
        if item.symbol in groups.TYPES or item.symbol == "pitches"
    ]
    value = board.whole(match.start("n"))
    if value is not None and nouns and nouns[-1] in groups.BREAKING_TYPES:
        board.claim(match.start(), match.end(), "breaking_strikes", value)


def _strikes_after(board: Board, match: re.Match[str]) -> None:
    """As in "40 p, 26 s"."""
    value = board.whole(match.start("n"))
    if value is not None:
        board.claim(match.start("n"), match.end(), "strikes", value)


_NO_NOUN = "(?! (fill|dash)* noun)"

STRIKE_RULES: tuple[Rule, ...] = (
    rule("9 curves, 4 of them strikes", "<n:num> them (is|adv)* (strikes|forstrikes)", _of_those),
    rule(
        "curve strikes, 6 of 10",
        "<u:breakingtype> strikes (is|colon|dash)* <n:num> of <t:num>",
        _type_strikes_of,
    ),
    rule(
        "71 P (45 S)",
        "(?<=pitches) (open|slash|comma|semi|dash)* <n:num> plural (close)?",
        _strikes,
    ),
    rule(
        "strikes in brackets",
        "((breakingtype (colon|is|dash)* num) | (num fill* breakingtype)) open <n:num>"
        " (is|them|went|of|for|the)* (strikes|forstrikes) (close)?",
        _bracketed_strikes,
    ),
    rule(
        "strike share",
        f"<n:pct> (the|adv)* (strikes|forstrikes) (of|in|on|out)+ {DET} <t:num> (pitches|total)*",
        _strike_share,
    ),
    rule(
        "curve: thrown, strikes",
        "<u:breakingtype> colon <t:num> (threw|comma|total|and|with)* <n:num> (forstrikes|strikes)"
        " | <v:breakingtype> <w:num> threw (comma|total|and|with)* <m:num> (forstrikes|strikes)",
        _type_and_strikes,
    ),
    rule(
        "curves 11/6 thrown/strikes",
        "<u:breakingtype> (colon)? <r:ratio> (threw (slash)?)? (strikes|forstrikes)",
        _type_over_strikes,
    ),
    rule(
        "7/9 curves for strikes",
        "<r:ratio> fill* <u:breakingtype> (is|went|in|the)* (strikes|forstrikes)",
        _type_over_strikes_after,
    ),
    rule(
        "landed 5 of 9 curves",
        f"forstrikes <n:num> of {DET} <t:num> fill* <u:breakingtype>",
        _type_strikes_of,
    ),
    rule(
        "52/33 8 cb",
        "(^|newline|said_who|threw|colon|kind|said_label) <r:ratio> (comma|dash)*"
        " (?= num fill* (type|innings))",
        _bare_pair,
    ),
    rule(
        "40 p, 26 s", "num pitches (comma|semi|slash|dash|newline)+ <n:num> plural", _strikes_after
    ),
    rule(
        "strikes of curves",
        f"<n:num> of {DET} <t:num> fill* <u:breakingtype> (is|in|went|threw|the)*"
        f" (forstrikes|strikes)",
        _type_strikes_of,
    ),
    rule(
        "curves for strikes",
        f"<n:num> (of)? {DET} <u:breakingtype> (is|in|went|threw|the)* forstrikes",
        _type_strikes,
    ),
    rule(
        "strikes with the curve",
        f"<n:num> strikes (in|with|of|for) {DET} <u:breakingtype>",
        _type_strikes,
    ),
    rule("curve strikes", "<n:num> <u:breakingtype> strikes", _type_strikes),
    rule(
        "curve strikes, before", "<u:breakingtype> strikes (is|colon|dash)* <n:num>", _type_strikes
    ),
    rule(
        "pitches and strikes",
        "<r:ratio> (pitches (slash|and|dash|adv)? )? <u:strikes|forstrikes>",
        _pitches_and_strikes,
    ),
    rule("48/29 p/s", "<r:ratio> pitches slash <u:plural>", _pitches_and_strikes),
    rule(
        "pitches / strikes",
        "<n:num> slash <t:num> (pitches (slash|and)? )? <u:strikes|forstrikes>",
        _spaced_pair,
    ),
    rule(
        "strikes of pitches",
        f"<t:num> (strikes)? of {DET} <n:num> (pitches)? <u:forstrikes|strikes>",
        _spaced_pair,
    ),
    rule(
        "strikes out of",
        f"<t:num> (strikes|forstrikes) (of|in|on) {DET} <n:num> (total|pitches)* {_NO_NOUN}",
        _spaced_pair,
    ),
)
