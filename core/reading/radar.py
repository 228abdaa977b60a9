"""What a radar gun showed: "sat 70-72", "fb 68, curve 58 mph" are speeds, no counts."""

import re

from core.reading import groups
from core.reading.board import Board, Rule, rule, says_no_log
from core.reading.entry import UnreadReason

SPEEDS = range(35, 110)  # miles an hour that a radar gun shows in this sport, in either units' use


def _radar(board: Board, match: re.Match[str]) -> None:
    """Claim only if every number could be a speed."""
    values = [board.whole(i) for i in _numbers(board, match)]
    if all(value is not None and value in SPEEDS for value in values):
        board.no_log(match.start(), match.end(), "radar")


def _sat(board: Board, match: re.Match[str]) -> None:
    """As in "45 pitches, sat 70"; with no count beside it "sat 62" may be Saturday's."""
    numbers = _numbers(board, match)
    before = board.items[match.start() - 1].symbol if match.start() else ""
    if before in groups.KINDS and match.end() == match.start() + 2:
        return  # "pen fri 22, game sat 55"
    if len(numbers) > 1 or board.has("pitches", "radar", "mph"):
        _radar(board, match)
    elif board.whole(numbers[0]) in SPEEDS:
        board.unread(match.start(), match.end(), UnreadReason.TWO_READINGS)


def _numbers(board: Board, match: re.Match[str]) -> list[int]:
    return [i for i in range(*match.span()) if board.items[i].value is not None]


def _speed_of_pitch(board: Board, match: re.Match[str]) -> None:
    """As in "fb 70-72": both could be speeds, and are too high for counts of one type."""
    values = [board.whole(i) for i in _numbers(board, match)]
    if all(value is not None and 50 <= value <= 110 for value in values):
        board.no_log(match.start(), match.end(), "radar")


def _speed_at(board: Board, match: re.Match[str]) -> None:
    """As in "fb at 70"; Spanish "8 curvas al 60" tells the effort."""
    percent = board.lang == "es" and (board.whole(match.start("n")) or 1) % 5 == 0
    if not (percent and board.items[match.start("n") - 1].text.lower() == "al"):
        _speed_of_pitch(board, match)


def _speed_or_count(board: Board, match: re.Match[str]) -> None:
    """As in "touched 74"; a coach's "Leo and Max both hit 60 today" may be their counts."""
    named = any(claim.key == "who" and claim.after <= match.start() for claim in board.claims)
    hit = board.items[match.start()].symbol == "hit"
    told = board.has(*groups.FIELDS, "radar", "mph", "spectacle")
    value = board.whole(match.start("n"))
    if hit and named and not told and board.author != "pitcher" and value in SPEEDS:
        board.unread(match.start(), match.end(), UnreadReason.TWO_READINGS)
    else:
        _radar(board, match)


RADAR_RULES: tuple[Rule, ...] = (
    rule(
        "hit 74 on the gun",
        "(hit|radar) (at|in|up_to|about|the|adv|a|with|as)* num ((dash|to) num)? mph",
        says_no_log("radar"),
    ),
    rule("sat 70-72 mph", "sat (at|about|in|up_to)* num (dash num)? mph", says_no_log("radar")),
    rule(
        "fastball 70 curve 58 mph",
        "type (is|at|about)* num ((comma|and|the|hisher|dot)* type (is|at|about)* num)+ mph",
        _speed_of_pitch,
    ),
    rule("radar, unit", "(num (dash|to|or|slash) )? <n:num> mph", says_no_log("radar")),
    rule(
        "fb 70-72 and curve 61",
        "type (is|at|about|in|the|colon)* num dash num"
        " ((and|comma)+ (the|hisher)* type (is|at|about|colon)* num (dash num)? (?! fill* unit))+",
        _speed_of_pitch,
    ),
    rule(
        "75-76 today, touched 78",
        "(?<!sat) num dash num (comma|today|adv|and)* radar (at|about|the|a)* num"
        " (?! (fill|dash)* unit)",
        _radar,
    ),
    rule(
        "radar, verb",
        "(radar|hit|fastball|curve|changeup|slider|breaking)"
        " (at|is|in|up_to|radar|colon|about|dash|the|adv|had|i|he|said_who|book)*"
        " <n:num> ((dash|to|slash|comma|and)? num)+ (?! fill* (unit|innings|percent))",
        _radar,
    ),
    rule(
        "radar, verb and one number",
        "(radar|hit)"
        " (at|is|in|up_to|radar|hit|colon|about|the|adv|a|with|said_who|had|book|feels)* <n:num>"
        " (?! (dash|fill)* (unit|innings|percent|times))",
        _speed_or_count,
    ),
    rule(
        "the fastball reached 74",
        "fastball (adv|the)* finish <n:num> (?! (dash|fill)* (unit|innings|percent))",
        _radar,
    ),
    rule(
        "sat 70",
        "sat (at|about|in|up_to)* num (dash num)? (?! (dash|fill)* noun)",
        _sat,
    ),
)

# Read after scores: "fb 70-72" is one only where a type stands before it.
SPEED_OF_A_PITCH_RULES: tuple[Rule, ...] = (
    rule("speed of a pitch", "type (is|at|about|in)* num dash num", _speed_of_pitch),
    rule("speed of a pitch, at", "type (is)* at <n:num> (?! (fill)* percent)", _speed_at),
    rule("mph of a pitch", "mph (on|of|the|is|for|at|type)* num", says_no_log("radar")),
)
