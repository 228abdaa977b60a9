"""Counts: numbers bound to what they count, before it or after it."""

import re
from fractions import Fraction

from core.reading import groups
from core.reading.board import Board, Handler, Rule, rule, says_no_log, says_unread
from core.reading.entry import UnreadReason


def _count(board: Board, match: re.Match[str]) -> None:
    """ "62 pitches", "curves: 6"."""
    at = match.start("n")
    field = board.items[match.start("u")].symbol
    _claim_count(board, match, field, at)


def _claim_count(board: Board, match: re.Match[str], field: str, at: int) -> None:
    value = board.whole(at)
    if value is None:
        board.unread(match.start(), match.end(), UnreadReason.UNKNOWN_NUMBER)
        return
    about = any(board.items[i].symbol in ("about", "ish") for i in range(*match.span()))
    board.claim(match.start(), match.end(), field, value, about=about)


def _none(board: Board, match: re.Match[str]) -> None:
    for i in range(*match.span()):
        field = board.items[i].symbol
        if field in groups.TYPES or field == "pitches":
            board.claim(i, i + 1, field, 0)


def _pitches(board: Board, match: re.Match[str]) -> None:
    _claim_count(board, match, "pitches", match.start("n"))


def _sets(board: Board, match: re.Match[str]) -> None:
    sets, each = board.whole(match.start("s")), board.whole(match.start("n"))
    if sets is None or each is None:
        return
    field = board.items[match.start("u")].symbol
    board.claim(match.start(), match.end(), field, sets * each)


def _share(board: Board, match: re.Match[str]) -> None:
    share, total = board.items[match.start("n")].value, board.whole(match.start("t"))
    assert share is not None
    if total is None:
        return
    count = share * total / 100 if board.items[match.start("n")].symbol == "pct" else share * total
    if count.denominator != 1:
        board.unread(match.start(), match.end(), UnreadReason.UNKNOWN_NUMBER)
        return
    field = board.items[match.start("u")].symbol
    board.claim(match.start(), match.end(), "pitches", total)
    board.claim(match.start("u"), match.start("u") + 1, field, count.numerator)


def _part_of(board: Board, match: re.Match[str]) -> None:
    """ "14 of my 60 were curves", "13 curves out of 58"."""
    part, total = board.whole(match.start("n")), board.whole(match.start("t"))
    if part is None or total is None:
        return
    field = board.items[match.start("u")].symbol
    board.claim(match.start(), match.end(), "pitches", total)
    board.claim(match.start("u"), match.start("u") + 1, field, part)


def outs(value: Fraction) -> int | None:
    """Outs of innings pitched: 4.1 and 4 1/3 are 13; None when it is no such number (4.5)."""
    whole, rest = divmod(value, 1)
    thirds = {
        Fraction(0): 0,
        Fraction(1, 10): 1,
        Fraction(2, 10): 2,
        Fraction(1, 3): 1,
        Fraction(2, 3): 2,
    }
    return None if rest not in thirds else int(whole) * 3 + thirds[rest]


def _innings(board: Board, match: re.Match[str]) -> None:
    value = board.items[match.start("n")].value
    found = outs(value) if value is not None else None
    if found is None:
        board.unread(match.start(), match.end(), UnreadReason.IMPOSSIBLE)
    else:
        field = "caught_outs" if "c" in match.groupdict() else "outs"
        board.claim(match.start(), match.end(), field, found)


def _outs(board: Board, match: re.Match[str]) -> None:
    value = board.whole(match.start("n"))
    if value is not None:
        board.claim(match.start(), match.end(), "outs", value)


def _effort(board: Board, match: re.Match[str]) -> None:
    value = board.whole(match.start("n"))
    if value is not None and value <= 100:
        board.claim(match.start(), match.end(), "effort", value)
    else:
        board.unread(match.start(), match.end(), UnreadReason.IMPOSSIBLE)


def _fixed_effort(percent: int) -> Handler:
    def apply(board: Board, match: re.Match[str]) -> None:
        board.claim(match.start(), match.end(), "effort", percent)

    return apply


def _corrected(board: Board, match: re.Match[str]) -> None:
    board.no_log(match.start("n"), match.end("n"), "corrected")
    board.no_log(match.start("c"), match.end("c"), "corrected")


def _breaking_strikes(board: Board, match: re.Match[str]) -> None:
    _claim_count(board, match, "breaking_strikes", match.start("n"))


CORRECTION_RULES: tuple[Rule, ...] = (
    rule(
        "58 no wait 61",
        "<n:num> (dash|comma|dot|unit|innings)* <c:correction> (dash|comma|dot|it|is|the)* (?= (about)? num)",
        _corrected,
    ),
)

INNINGS_RULES: tuple[Rule, ...] = (
    rule(
        "innings caught",
        "<c:catching> (the|for|adj|about|last|colon)* <n:num> (adj)* innings",
        _innings,
    ),
    rule(
        "innings caught after", "<n:num> (adj)* innings (in|the|at|adv|of)* <c:catching>", _innings
    ),
    rule(
        "innings in the field",
        "(after|before|ord) <n:num> adj* innings | num adj* innings (in|the|at|of)* fielding",
        says_no_log("innings"),
    ),
    rule("length of a game", "num innings game", says_no_log("innings")),
    rule("an inning's part", "<n:num|frac> (ofinning|innings)", _innings),
    rule("innings", "<n:num> (adj|total|full|of)* innings", _innings),
    rule("innings before", "innings (colon|is|dash)* <n:num|frac>", _innings),
    rule("went four", "went <n:num> (?! fill* (unit|percent))", _innings),
    rule("outs", "<n:num> outs", _outs),
)
EFFORT_RULES: tuple[Rule, ...] = (
    rule("half speed", "halfspeed", _fixed_effort(50)),
    rule("three quarters", "threequarter (speed)?", _fixed_effort(75)),
    rule("quarter", "quarterspeed", _fixed_effort(25)),
    rule("all out", "fullspeed", _fixed_effort(100)),
    rule(
        "effort range",
        "(num|pct) (dash|to) (pct | num percent) speed?",
        says_unread(UnreadReason.TWO_READINGS),
    ),
    rule("effort", "(at|about|the|is)* <n:pct> (speed)?", _effort),
    rule("effort in words", "(at|about|the)* <n:num> percent (speed)?", _effort),
    rule("effort before", "speed (colon|is|at|about)* <n:num|pct>", _effort),
)
COUNT_RULES: tuple[Rule, ...] = (
    rule("range", "(num (dash|to|or) num) fill* unit", says_unread(UnreadReason.TWO_READINGS)),
    rule("sets", "<s:num> (times|the)+ <n:num> fill* <u:unit>", _sets),
    rule(
        "share",
        "<n:pct|frac> (of|the|hisher|them|is)* <u:type> (of|in|on|out|the|hisher)+ <t:num> (pitches)?",
        _share,
    ),
    rule("share of", "<n:pct|frac> of (the|hisher)* <t:num> (pitches|is)* <u:type>", _share),
    rule(
        "part of",
        "<n:num> (of|the|hisher)+ <t:num> (pitches|is|total|adv)* <u:type|strikes>",
        _part_of,
    ),
    rule(
        "part out of",
        "<n:num> fill* <u:type|strikes> (of|the|hisher)+ <t:num> (?! fill* (breaking|curve|slider|changeup|fastball|strikes|innings)) (total|pitches)*",
        _part_of,
    ),
    rule("breaking strikes", "<n:num> (of|them)* forstrikes", _breaking_strikes),
    rule("prefix", "<u:unit> (colon|eq) (about)? <n:num>", _count),
    rule(
        "postfix",
        "(about)* <n:num> (adj|the|hisher|total|adv|ish|ball|about|them|is)* <u:unit>",
        _count,
    ),
    rule("prefix loose", "<u:unit> (colon|is|dash|total|at)* (about)? <n:num> (ish)?", _count),
    rule("no curves", "none fill* unit ((and|or|comma) (none)? fill* unit)*", _none),
    rule("total", "<n:num> ish? total", _pitches),
    rule("total before", "total (of|colon|is)* <n:num>", _pitches),
    rule("threw", "(threw|finish) (about|adv|the|with)* <n:num> (ish)?", _pitches),
    rule(
        "with kind",
        "(bullpen|catch|live|game|warm|everyone) (of|colon|comma|dash|is|adv)* (about)? <n:num> (ish)?",
        _pitches,
    ),
    rule(
        "in kind",
        "<n:num> (ish)? (in|the|hisher|a|adj|of|at|adv|dash)* (bullpen|catch|live|game|warm)",
        _pitches,
    ),
    rule("with breakdown", "<n:num> (ish)? with (?= claimed)", _pitches),
)
