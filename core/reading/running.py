"""Counts on the way: "at 45 after 3", "18 in the 3rd" are no count of the whole outing."""

import re

from core.reading import groups  # noqa: F401  declares the groups
from core.reading.bare import MOST_INNINGS, claim_total
from core.reading.board import Board, Rule, rule


def _running(board: Board, match: re.Match[str]) -> None:
    """As in "at 45 after 3", where 3 can be an inning."""
    if match.groupdict().get("k"):
        named = board.items[match.start("k")].symbol == "first"
        inning = 1 if named else board.whole(match.start("k"))
        if inning is None or inning > MOST_INNINGS:
            return
    numbers = [i for i in range(*match.span()) if board.items[i].symbol == "num"]
    if "catching" in [item.symbol for item in board.items[match.end() : match.end() + 2]]:
        return  # "3cb after 4 inn behind the plate"
    if board.has("neverin"):
        return  # "warmed up 25 pitches in the 6th but never went in"
    if any(board.whole(i) is None for i in numbers):
        return
    board.claim(match.start(), match.end(), "running")


def _on_the_way(board: Board, match: re.Match[str]) -> None:
    """As in "32 thru 2, 48 thru 3", where the line goes on to how it ended."""
    if any(item.symbol in ("finish", "total", "exit") for item in board.items[match.end() :]):
        _running(board, match)


def _one_by_one(board: Board, match: re.Match[str]) -> None:
    """As in "1st 22 ugh, 2nd 9": innings in order; days of a month seldom follow so."""
    places = [at for at in range(*match.span()) if board.items[at].symbol == "ord"]
    innings = [board.whole(at) or 0 for at in places]
    in_order = innings == list(range(innings[0], innings[0] + len(innings)))
    if not in_order or innings[-1] > MOST_INNINGS or board.has("month", "day", "bullpen", "catch"):
        return
    for at in places:
        board.claim(at, at + 2, "running")


def _got_through(board: Board, match: re.Match[str]) -> None:
    if board.items[match.start("v")].text.lower().startswith("got "):
        claim_total(board, match)


RUNNING_RULES: tuple[Rule, ...] = (
    rule(
        "1st 15, 2nd 16, 3rd 11",
        "(?<!month) ord num (pitches)? ((word|adj|adv|mark|and)* ord num (pitches)?)+"
        " (?! (fill|dash)* noun)",
        _one_by_one,
    ),
    rule(
        "18 in the 3rd",
        "(?<!finish) (about)? <n:num> (pitches)? in (the)? (ord|ordword) (innings)? | <m:num>"
        " (pitches)? ordword",
        _running,
    ),
    rule(
        "1st inning was 25 pitches",
        "((ord innings | ordword) (is|had|threw|colon|dash)+ |"
        " (^|newline|dot|comma) (ord innings | ordword)) (about)? <n:num> (pitches)?"
        " (?! (fill|dash|to)* (noun|num|percent|ord))",
        _running,
    ),
    rule("rain delay at 38", "delay (about)? <n:num> (pitches)?", _running),
    rule("9 pitch 1st inning", "<n:num> pitches (adj)* (ord (innings) | ordword)", _running),
    rule(
        "got through the 5th at 72",
        "<v:threw> (the)? (ord|ordword) (innings)? at (about)? <n:num>",
        _got_through,
    ),
    rule(
        "32 through 2, 48 through 3, ended at 66",
        "num (pitches)? through (the)? <k:num|ord> (innings)? (?= comma|and|then|dot|semi|but)",
        _on_the_way,
    ),
    rule(
        "at 45 after 3",
        "(?<!finish) (running|had|at)* (about|at|is)* num (unit)? said_day? after (the)?"
        " <k:num|ord|first> (innings)?",
        _running,
    ),
    rule(
        "was at 45 through 3",
        "(running|at)+ (about|at)* num (unit)? (adv)* (through|in) (the)? <k:num|ord> (innings)?",
        _running,
    ),
    rule(
        "through 3 at 41",
        "(after|through) (the)? <k:num|ord> (innings)? (comma|i|he)* (running|at|is|had)+ (at)* num"
        " (unit)?",
        _running,
    ),
)
