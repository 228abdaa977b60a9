"""Limits in a line: "limit 75", "hit his limit at 50", "had 35 available"."""

import re

from core.reading import groups  # noqa: F401  declares the groups
from core.reading.board import Board, Rule, rule, says_no_log
from core.reading.entry import UnreadReason


def _reached(board: Board, match: re.Match[str]) -> None:
    """As in "hit 50 in the 4th": a count on the way."""
    board.claim(match.start(), match.end(), "running")


def _at_limit(board: Board, match: re.Match[str]) -> None:
    """As in "hit his limit at 50": as many were thrown."""
    value = board.whole(match.start("n"))
    if value is not None and value >= 10:
        board.claim(match.start(), match.end(), "pitches", value, weak=True)


def _limit(board: Board, match: re.Match[str]) -> None:
    """A limit; but "Max: 2 ip" may be somebody called Max."""
    colon = (
        match.start() + 1 < len(board.items) and board.items[match.start() + 1].symbol == "colon"
    )
    if board.items[match.start()].text == "Max" and colon:
        board.unread(match.start(), match.end(), UnreadReason.UNCLEAR_PERSON)
    else:
        board.no_log(match.start(), match.end(), "limit")


def _available(board: Board, match: re.Match[str]) -> None:
    """As in "had 35 available", "had 20 left to throw"."""
    if board.items[match.end() - 1].text.lower() not in ("tomorrow", "next"):
        board.no_log(match.start(), match.end(), "limit")


AVAILABLE_RULES: tuple[Rule, ...] = (
    rule("had 35 available", "(had|with)+ num (unit)? (plan|remaining)", _available),
)

LIMIT_RULES: tuple[Rule, ...] = (
    rule(
        "hit his limit at 50",
        "(hit|radar|at|finish) (the|hisher|i)* limit (at|of|with|comma)* <n:num>"
        " (?! (fill|dash)* noun)",
        _at_limit,
    ),
    rule(
        "limit, number",
        "limit (for (hisher|the|a|i|he)* (hash|word)?)? (is|of|at|colon|the|was|to|today|adv)* num"
        " (unit|innings|game)?",
        _limit,
    ),
    rule(
        "number, limit",
        "num (unit|innings)? (dash)? limit",
        says_no_log("limit"),
    ),
    rule("on a 50 count", "on a num (pitches)? (countword|limit|pitches)", says_no_log("limit")),
    rule(
        "hit 50 in the 4th",
        "(hit|radar) num (pitches)? (in (the)? ord | ordword) (innings)?",
        _reached,
    ),
    rule("number max of type", "num fill* unit limit", says_no_log("limit")),
    rule(
        "no curves for two weeks",
        "(none|nothing) (fill|threw)* type ((or|and) type)? for"
        " ((a|the|about|adv|last|num|next)* thing | (a|the)* num age)",
        says_no_log("limit"),
    ),
    rule(
        "no curves until june",
        "(none|nothing) (fill|threw)* type ((or|and) type)? (for|to|said_who|he|i|them|word|in)*"
        " (before|by) (the|on|for)* (month|weekday|sat|ord|num|isodate|ratio|word|day|plan)",
        says_no_log("limit"),
    ),
)
