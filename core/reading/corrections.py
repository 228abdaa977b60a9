"""Corrections in mid-line: "58 no wait 61" is 61."""

import re
from fractions import Fraction

from core.reading import groups
from core.reading.board import Board, Rule, rule
from core.reading.entry import UnreadReason
from core.reading.pairing import claim_count

COUNTS_OF_A_GAME = range(15, 121)  # pitches; common practice, no source


def _not_that(board: Board, match: re.Match[str]) -> None:
    """As in "61 not 58", "not 58, 61": what follows "not" goes."""
    found = match.groupdict()
    first = match.start("x") if found.get("x") else match.start()
    said = board.items[match.start() - 1].symbol if match.start() else ""
    if (
        board.lang == "es"
        and found.get("v")
        and not found.get("u")
        and said not in ("is", "correction")
    ):
        # "45 no 47 pitcheos" may be "45, not 47" or "45, no, 47"
        board.unread(match.start(), match.end(), UnreadReason.TWO_READINGS)
        return
    board.no_log(first, match.end(), "corrected")
    if found.get("v") and not found.get("u"):
        symbol = board.items[match.start("v")].symbol
        if symbol in groups.FIELDS:
            number = match.start("n")
            claim_count(board, number, number + 1, groups.FIELDS[symbol], number)
    elif found.get("x") and not found.get("u") and (said == "is" or _opens_line(board, match)):
        _claim_for_the_count(board, match.start("n"))


def _opens_line(board: Board, match: re.Match[str]) -> bool:
    """As in "ok so 33 not 38 my bad, pen tues": small words alone stand before it."""
    first = match.start()
    return all(i.symbol in ("adv", "word", "comma", "greeting") for i in board.items[:first])


def _named_count(board: Board, match: re.Match[str]) -> None:
    """As in "Leo 44 p, Drew 31 p 2 ip. Sorry, Drew was 33 not 31": the count told with his name."""
    name = next(c for c in board.claims if c.key == "who" and c.after == match.start("w") + 1)
    told = [c.after for c in board.claims if c.key == "who" and c.value == name.value]
    wrong, right = board.whole(match.start("x")), match.start("n")
    for start in told:
        stop = min([c.first for c in board.claims if c.key == "who" and c.first > start],
                   default=len(board.items))  # fmt: skip
        for at in range(start, min(stop, match.start()) - 1):
            noun = board.items[at + 1].symbol
            if board.symbol_is(at, "num") and board.whole(at) == wrong and noun in groups.FIELDS:
                board.no_log(at, at + 2, "corrected")
                board.no_log(right + 1, match.end(), "corrected")
                claim_count(board, right, right + 1, groups.FIELDS[noun], right)
                return


def _claim_for_the_count(board: Board, number: int) -> None:
    """As in "it was 48 not 45. vs Kettle Creek, 3 ip": of a game, and no pitches are counted."""
    value = board.whole(number)
    game = board.has("innings", "vs", "bullpen", "catch", "live") and not board.has(
        "win", "pitches", "strikes"
    )
    typed = any(item.symbol in groups.TYPES for item in board.items[:number])
    if value in COUNTS_OF_A_GAME and game and not typed:
        board.claim(number, number + 1, "pitches", value, weak=True)


def _corrected(board: Board, match: re.Match[str]) -> None:
    """As in "58 no wait 61 pitches": the first goes, with its noun if the second has one."""
    number, marker = match.start("n"), match.start("c")
    noun = next((i for i in range(number, marker) if board.items[i].symbol in groups.NOUNS), None)
    later = _noun_after(board, match.end())
    if noun is not None and later is not None and not _same_noun(board, noun, later):
        if _of_other_type(board, number, noun, match.end(), later):
            board.no_log(number, match.end(), "corrected")  # "8 curves i mean 8 sliders"
        return  # "62 pitches, sorry, 11 curves" corrects nothing
    if not _close(board.items[number].value, board.items[match.end()].value):
        return  # "8 cb, make that 47 for Ezra": too far apart to be one count put right
    board.no_log(number, number + 1, "corrected")
    board.no_log(marker, match.end(), "corrected")
    if noun is None and later is None and _in_pitch_place(board, number):
        _claim_bare(board, match)
    if noun is not None and later is None:
        _claim_corrected(board, match, noun)
    elif noun is not None:
        board.no_log(noun, noun + 1, "corrected")


def _of_other_type(board: Board, number: int, noun: int, meant: int, later: int) -> bool:
    """Whether the same count is told twice, of two types of pitch."""
    types = {board.items[noun].symbol, board.items[later].symbol} <= set(groups.TYPES)
    return types and noun == number + 1 and board.whole(number) == board.whole(meant)


def _claim_bare(board: Board, match: re.Match[str]) -> None:
    """As in "threw 58 no wait about 61"; "pitched 3, sorry 5 and a third" are no pitches."""
    at = match.end() + int(board.items[match.end()].symbol == "about")
    if (value := board.whole(at)) is not None:
        board.claim(match.end(), at + 1, "pitches", value, about=at > match.end(), weak=True)


def _a_little_off(board: Board, match: re.Match[str]) -> None:
    """As in "fifteen.. no sixteen curves": near enough to be one count put right."""
    first, second = board.items[match.start("n")].value, board.items[match.end()].value
    if first is None or second is None:
        return
    if abs(first - second) <= 3 or 5 * abs(first - second) <= first:
        _corrected(board, match)


def _afterwards(board: Board, match: re.Match[str]) -> None:
    """As in "8 curves, no 9 actually": the noun of the first number counts the second."""
    number, later = match.start("n"), match.end() - 2
    if _close(board.items[number].value, board.items[later].value):
        field = groups.FIELDS[board.items[match.start("v")].symbol]
        claim_count(board, later, later + 1, field, later)
        board.no_log(number, later, "corrected")
        board.no_log(later + 1, match.end(), "corrected")


def _no_that(board: Board, match: re.Match[str]) -> None:
    """As in "47 pitches, no 49"."""
    number, later = match.start("n"), match.start("w")
    if _close(board.items[number].value, board.items[later].value):
        field = groups.FIELDS[board.items[match.start("v")].symbol]
        claim_count(board, later, later + 1, field, later)
        board.no_log(number, later, "corrected")


def _starred(board: Board, match: re.Match[str]) -> None:
    """As in "40 throws *45", the way a chat puts a word right; "2*10" is no correction."""
    star = match.start("c")
    if not board.items[star].tight and board.items[star + 1].tight:
        _corrected(board, match)


def _other_noun(board: Board, match: re.Match[str]) -> None:
    """As in "9 benders, i mean curves": the second noun is what was counted."""
    number = match.start("n")
    field = groups.FIELDS[board.items[match.start("v")].symbol]
    claim_count(board, number, number + 1, field, number)
    board.no_log(match.start("u"), match.end(), "corrected")


def _corrected_before(board: Board, match: re.Match[str]) -> None:
    """The count of the same noun before the correction goes, if it is the only one so near."""
    noun = board.items[match.start("u")].symbol
    for at in range(match.start() - 1, 0, -1):
        if board.items[at].symbol in ("newline", "said_who"):
            return
        if any(c.key == "who" and c.first == at for c in board.claims):
            return
        counted = board.symbol_is(at, noun) and board.symbol_is(at - 1, "num")
        if counted and _close(board.items[at - 1].value, board.items[match.start("n")].value):
            board.no_log(at - 1, at + 1, "corrected")
            board.no_log(match.start(), match.start() + 1, "corrected")
            return


def _noun_first(board: Board, match: re.Match[str]) -> None:
    """As in "curves 8, wait no 9": the noun before the first number counts the second."""
    number = match.start("n")
    if _close(board.items[number].value, board.items[match.end()].value):
        field = groups.FIELDS[board.items[match.start("v")].symbol]
        claim_count(board, match.end(), match.end() + 1, field, match.end())
        board.no_log(match.start(), match.end(), "corrected")


def _told_and_threw(board: Board, match: re.Match[str]) -> None:
    """As in "coach said 45 but i only threw 41": the first was what he should throw."""
    only = any(board.items[i].text.lower() in ("only", "just") for i in range(*match.span()))
    said = board.items[match.start()].text.lower().endswith(("said", "says"))
    if only and said:
        threw = match.end() - 1
        board.no_log(match.start(), threw, "plan")


def _guessed(board: Board, match: re.Match[str]) -> None:
    """As in "guessed 55-60, clicker said 58": the one who counted is right."""
    book = board.items[match.end()].symbol == "book"
    if book or board.items[match.end() - 1].symbol == "but":
        board.no_log(match.start(), match.end(), "corrected")


def _given_up(board: Board, match: re.Match[str]) -> None:
    board.no_log(match.start(), match.end(), "corrected")


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
    if before > 0 and board.items[before].symbol == "is":
        before -= 1  # "Ty was 70, sorry 72"
        return any(claim.key == "who" and claim.after == before + 1 for claim in board.claims)
    told = before >= 0 and board.items[before].symbol in ("threw", "finish", *groups.KINDS)
    return told or any(claim.key == "who" and claim.after == before + 1 for claim in board.claims)


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
        "sorry, Drew was 33 not 31",
        "<w:said_who> (is|had|threw|at)+ <n:num> (comma)? (insteadof|nothing) <x:num>"
        " (?! fill* unit)",
        _named_count,
    ),
    rule(
        "61 not 58",
        "<n:num> (<u:noun>)? (for)? (said_who)? (today)? comma? (it|is|adv)*"
        " <x:insteadof|nothing> (about)? num (<v:noun>)? (?! comma num (?! fill* noun))",
        _not_that,
    ),
    rule(
        "40 (not 60 like coach said)",
        "(?<!^) insteadof num (pitches)? (about|adv|the|word)* book",
        _given_up,
    ),
    rule(
        "not 58, 61",
        "(^|comma|dot|dash|is|threw) (insteadof|nothing) num (noun)? (comma|dash|but)+"
        " (?= (about)? num)",
        _not_that,
    ),
    rule(
        "58 no wait 61",
        "<n:num> (fill|noun|mark|in|with|innings|bullpen|catch|live|none)* <c:correction>"
        " (correction|mark|is|the|i|he|it|threw|that)* (?= (about)? num)",
        _corrected,
    ),
    rule(
        "12 cb 5 ip, correction 13 cb",
        "<c:correction> (fill|mark|is|he|it)* <n:num> fill* <u:type|pitches|innings>",
        _corrected_before,
    ),
    rule(
        "68 no wait the book says 66",
        "<n:num> (pitches)? (comma)? <c:correction> (comma)? (?= book)",
        _given_up,
    ),
    rule(
        "guessed 55-60, clicker said 58",
        "(i)? guess (is|the|i|he|about|at|adv|threw|had)* num ((dash|to|or) num)? (ish)? (pitches)?"
        " (comma|dot|semi|dash|but|and)* (?= book (threw|had|is|feels|colon|at|the|he|i)* num)",
        _guessed,
    ),
    rule(
        "coach said 45 but i only threw 41",
        "book (adv|about)* num (unit)? (comma)? but (i|he|the)* adv+ threw (about)? (?= num)",
        _told_and_threw,
    ),
    rule(
        "9 benders, I mean curves",
        "<n:num> <u:type> (mark)* <c:correction> (mark|the|it|is)* <v:type> (?! (fill|colon)* num)",
        _other_noun,
    ),
    rule(
        "curves 8, wait no 9",
        "<v:type> (colon|dash|is)* <n:num> (mark)+ <c:correction> (mark|it|is|he)*"
        " (?= num (?! fill* noun))",
        _noun_first,
    ),
    rule("58 no 59", "(?<!noun) <n:num> <c:none> (?= num)", _corrected),
    rule("fifteen.. no sixteen curves", "(?<!noun) <n:num> dot <c:none> (?= num)", _a_little_off),
    rule("8 curves, no 9 actually", "<n:num> <v:unit> comma <c:none> num correction", _afterwards),
    rule(
        "47 pitches, no 49", "<n:num> <v:unit> comma <c:none> <w:num> (?! (fill)* noun)", _no_that
    ),
    rule(
        "40 throws *45",
        "<n:num> (fill|unit|said_vs|opponent|vs|word)* <c:star> (?= num (?! star))",
        _starred,
    ),
    rule("62, no, 63", "<n:num> (noun)? (mark)* <c:none|nothing> (mark)+ (?= num)", _corrected),
)
