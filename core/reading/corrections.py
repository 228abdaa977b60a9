"""Corrections in mid-line: "58 no wait 61" is 61."""

import re
from fractions import Fraction

from core.reading import groups
from core.reading.board import Board, Rule, rule
from core.reading.pairing import claim_count


def _not_that(board: Board, match: re.Match[str]) -> None:
    """As in "61 not 58", "not 58, 61": what follows "not" goes."""
    found = match.groupdict()
    first = match.start("x") if found.get("x") else match.start()
    board.no_log(first, match.end(), "corrected")
    if found.get("v") and not found.get("u"):
        symbol = board.items[match.start("v")].symbol
        if symbol in groups.FIELDS:
            number = match.start("n")
            claim_count(board, number, number + 1, groups.FIELDS[symbol], number)


def _corrected(board: Board, match: re.Match[str]) -> None:
    """As in "58 no wait 61 pitches": the first goes, with its noun if the second has one."""
    number, marker = match.start("n"), match.start("c")
    noun = next((i for i in range(number, marker) if board.items[i].symbol in groups.NOUNS), None)
    later = _noun_after(board, match.end())
    if noun is not None and later is not None and not _same_noun(board, noun, later):
        return  # "62 pitches, sorry, 11 curves" corrects nothing
    if not _close(board.items[number].value, board.items[match.end()].value):
        return  # "8 cb, make that 47 for Ezra": too far apart to be one count put right
    board.no_log(number, number + 1, "corrected")
    board.no_log(marker, match.end(), "corrected")
    if noun is None and later is None and _in_pitch_place(board, number):
        board.claim(match.end(), match.end() + 1, "pitches", board.whole(match.end()), weak=True)
    if noun is not None and later is None:
        _claim_corrected(board, match, noun)
    elif noun is not None:
        board.no_log(noun, noun + 1, "corrected")


def _close(one: Fraction | None, other: Fraction | None) -> bool:
    return one is None or other is None or (one <= 3 * other and other <= 3 * one)


def _noun_after(board: Board, at: int) -> int | None:
    """Place of the noun that follows the number at `at`, over small words only."""
    for place in range(at + 1, len(board.items)):
        symbol = board.items[place].symbol
        if symbol in groups.NOUNS and board.free(place):
            return place
        if symbol not in groups.FILLERS:
            return None
    return None


def _in_pitch_place(board: Board, number: int) -> bool:
    """Whether a bare number follows "threw" or "finished at", maybe with "about" between."""
    before = number - 1
    while before > 0 and board.items[before].symbol in ("about", "adv", "the", "a", "total"):
        before -= 1
    return before >= 0 and board.items[before].symbol in ("threw", "finish")


def _claim_corrected(board: Board, match: re.Match[str], noun: int) -> None:
    """The noun of the first number counts the second."""
    number = next(i for i in range(match.end(), len(board.items)) if board.items[i].symbol == "num")
    symbol = board.items[noun].symbol
    if symbol in groups.FIELDS:
        claim_count(board, number, number + 1, groups.FIELDS[symbol], number)
        board.no_log(noun, noun + 1, "corrected")


def _same_noun(board: Board, left: int, right: int) -> bool:
    return board.items[left].symbol == board.items[right].symbol


CORRECTION_RULES: tuple[Rule, ...] = (
    rule(
        "61 not 58",
        "<n:num> (<u:noun>)? (for)? (said_who)? comma? (it|is|adv)* <x:insteadof|nothing> (about)?"
        " num (<v:noun>)? (?! comma num (?! fill* noun))",
        _not_that,
    ),
    rule(
        "not 58, 61",
        "(^|comma|dot|dash|is|threw) (insteadof|nothing) num (noun)? (comma|dash|but)+"
        " (?= (about)? num)",
        _not_that,
    ),
    rule(
        "58 no wait 61",
        "<n:num> (fill|noun|mark|in|with|innings)* <c:correction>"
        " (correction|mark|is|the|i|he|it|threw|that)* (?= (about)? num)",
        _corrected,
    ),
    rule("62, no, 63", "<n:num> (noun)? (mark)* <c:none|nothing> (mark)+ (?= num)", _corrected),
)
