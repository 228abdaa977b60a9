"""Effort in percent: "75%", "half speed", "at 80 percent effort"."""

import re

from core.reading import groups
from core.reading.board import Board, Handler, Rule, rule, says_unread
from core.reading.entry import UnreadReason

LEAST_EFFORT = 30  # percent; nobody asks for less


def _effort(board: Board, match: re.Match[str]) -> None:
    value = board.whole(match.start("n"))
    if value == 100 and any(c.key == "nopain" and c.after == match.start() for c in board.claims):
        board.no_log(match.start(), match.end(), "feeling")  # "arm feels great 100%"
    elif value is not None and value <= 100:
        board.claim(match.start(), match.end(), "effort", value)
    else:
        board.unread(match.start(), match.end(), UnreadReason.IMPOSSIBLE)


def _strike_share(board: Board, match: re.Match[str]) -> None:
    """As in "60 pitches 65% strikes": kept as a share until the pitches are known."""
    number = match.start("n") if match.group("n") else match.start("m")
    share = board.items[number].value
    if match.group("f") or share is None:
        board.no_log(match.start(), match.end(), "rate")
    else:
        board.claim(match.start(), match.end(), "share", ("strikes", share / 100))


def _rate_of_strikes(board: Board, match: re.Match[str]) -> None:
    """As in "41 pitches 27 strikes (66%)": the share of the two counts, or else unclear."""
    at = match.start("n") if match.group("n") else match.start("m")
    percent = board.items[at].value
    strikes, pitches = (_counted(board, symbol) for symbol in ("strikes", "pitches"))
    agrees = strikes and pitches and percent and abs(100 * strikes / pitches - percent) <= 1
    if agrees:
        board.no_log(at, match.end(), "rate")
    elif not (strikes and pitches):
        board.unread(at, match.end(), UnreadReason.TWO_READINGS)


def _counted(board: Board, symbol: str) -> int | None:
    """The number right before the noun, when the line holds it once."""
    places = [i for i, item in enumerate(board.items) if item.symbol == symbol and i]
    return board.whole(places[0] - 1) if len(places) == 1 else None


def _out_of_ten(board: Board, match: re.Match[str]) -> None:
    """Effort of 8/10 is 80 percent."""
    pair = board.items[match.start("r")].pair
    if pair is not None and pair[1] == 10 and pair[0] <= 10:
        board.claim(match.start(), match.end(), "effort", pair[0] * 10)


def _bare_percent(board: Board, match: re.Match[str]) -> None:
    """As in Spanish "35 tiros al 50": percent, for a distance would be "a 50 pies"."""
    at = match.start("n")
    value = board.whole(at)
    told = any(item.symbol in groups.NOUNS | groups.KINDS for item in board.items[: match.start()])
    if board.items[at - 1].text.lower() != "al" or value is None or not told:
        return
    if value in range(LEAST_EFFORT, 101, 5):
        board.claim(match.start(), match.end(), "effort", value)


def _of_ten_or_percent(board: Board, match: re.Match[str]) -> None:
    """As in "effort 7": of ten, or percent?"""
    value = board.items[match.start("n")]
    if value.symbol == "num" and (value.whole or 0) <= 10 and not match.group("p"):
        board.unread(match.start(), match.end(), UnreadReason.TWO_READINGS)
    else:
        _effort(board, match)


def _fixed(percent: int) -> Handler:
    def apply(board: Board, match: re.Match[str]) -> None:
        board.claim(match.start(), match.end(), "effort", percent)

    return apply


_NO_SHARE = (
    "(?! (fill|of|them|is|in)* (noun|firstpitch|first|word stat)"
    " | (fill|them|is)* (of|in) (fill)* num)"
)
_LEAD = "(at|about|the|is|adv|with|in|a)*"

EFFORT_RULES: tuple[Rule, ...] = (
    rule("i'm at 80%", "i (is|at|feels)+ pct", says_unread(UnreadReason.TWO_READINGS)),
    rule("half speed", f"{_LEAD} halfspeed", _fixed(50)),
    rule("three quarters", f"{_LEAD} threequarter", _fixed(75)),
    rule("quarter", f"{_LEAD} quarterspeed", _fixed(25)),
    rule("all out", f"{_LEAD} fullspeed", _fixed(100)),
    rule(
        "27 strikes (66%)",
        "(strikes|forstrikes) (comma|open|colon|dash|is|at|about)* (<n:pct> | <m:num> percent)"
        " (?! (fill)* (speed|strikes|forstrikes|type))",
        _rate_of_strikes,
    ),
    rule(
        "strike share",
        "(<n:pct> | <m:num> percent) (the|adv|fill)* (strikes|forstrikes|<f:firstpitch>)"
        " (?! (of|in|on)+ det* num)",
        _strike_share,
    ),
    rule(
        "range",
        "(num|pct) (dash|to|or) (pct | num percent) speed?",
        says_unread(UnreadReason.TWO_READINGS),
    ),
    rule("effort", f"{_LEAD} <n:pct> ((the|adv|of)* speed | {_NO_SHARE})", _effort),
    rule(
        "effort in words", f"{_LEAD} <n:num> percent ((the|adv|of)* speed | {_NO_SHARE})", _effort
    ),
    rule(
        "effort first",
        "speed (colon|is|at|about)* <n:num|pct> <p:percent>? (?! (fill|dash)* noun)",
        _of_ten_or_percent,
    ),
    rule(  # how hard it felt, which is no share of full effort
        "rpe 7",
        "rpe (colon|is|of|at|about|a|the)* (ratio|num|pct) (painscale)? | (ratio|num) rpe",
        says_unread(UnreadReason.TWO_READINGS),
    ),
    rule("effort without a sign", "at <n:num> (?! (fill|dash)* (noun|percent|num))", _bare_percent),
    rule("effort of ten, first", "speed (colon|is|at|about)* <r:ratio>", _out_of_ten),
    rule("effort of ten", f"{_LEAD} <r:ratio> speed", _out_of_ten),
)
