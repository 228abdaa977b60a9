"""Counts that stand in a form of their own: corrections, shares, sets, pairs, ranges, none."""

import re
from fractions import Fraction

from core.reading import groups
from core.reading.board import Board, Rule, rule
from core.reading.clauses import span
from core.reading.entry import UnreadReason
from core.reading.pairing import claim_count

MOST_SETS = 10


def _corrected(board: Board, match: re.Match[str]) -> None:
    """ "58 no wait 61 pitches": the first number goes, and its noun when the second has one."""
    number, marker = match.start("n"), match.start("c")
    noun = next((i for i in range(number, marker) if board.items[i].symbol in groups.NOUNS), None)
    later = _noun_after(board, match.end())
    if noun is not None and later is not None and not _same_noun(board, noun, later):
        return  # "62 pitches, sorry, 11 curves" corrects nothing
    board.no_log(number, number + 1, "corrected")
    board.no_log(marker, match.end(), "corrected")
    if noun is None and later is None and _in_pitch_place(board, number):
        board.claim(match.end(), match.end() + 1, "pitches", board.whole(match.end()), weak=True)
    if noun is not None and later is None:
        _claim_corrected(board, match, noun)
    elif noun is not None:
        board.no_log(noun, noun + 1, "corrected")


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


def _share(board: Board, match: re.Match[str]) -> None:
    """ "15% curves of 60": a share becomes a count, if it is a whole one."""
    item, total = board.items[match.start("n")], board.whole(match.start("t"))
    share = (item.value or Fraction(0)) / (100 if item.symbol == "pct" else 1)
    if total is None or (share * total).denominator != 1:
        board.unread(match.start(), match.end(), UnreadReason.UNKNOWN_NUMBER)
        return
    noun = board.items[match.start("u")].symbol
    board.claim(match.start("t"), match.end("t"), "pitches", total)
    _claim_rest(board, match, groups.FIELDS[noun], (share * total).numerator)


def _share_of_stated(board: Board, match: re.Match[str]) -> None:
    """ "45 pitches, a third curves": kept as a share until the pitches are known."""
    item = board.items[match.start("n")]
    share = (item.value or Fraction(0)) / (100 if item.symbol == "pct" else 1)
    noun = board.items[match.start("u")].symbol
    board.claim(match.start(), match.end(), "share", (groups.FIELDS[noun], share))


def _part_of(board: Board, match: re.Match[str]) -> None:
    """ "14 of my 60 were curves", "13 curves out of 58", "threw 11 curves of 53"."""
    part, total = board.whole(match.start("n")), board.whole(match.start("t"))
    if part is None or total is None:
        return
    noun = board.items[match.start("u")].symbol
    board.claim(match.start("t"), match.end("t"), "pitches", total)
    _claim_rest(board, match, groups.FIELDS[noun], part)


def _claim_rest(board: Board, match: re.Match[str], field: str, value: int) -> None:
    first = match.start("n")
    board.claim(first, first + 1, field, value)
    for at in range(*match.span()):
        if board.free(at):
            board.no_log(at, at + 1, "part of a count")


def _ratio_part(board: Board, match: re.Match[str]) -> None:
    """ "12/65 were curves"."""
    pair = board.items[match.start("r")].pair
    assert pair is not None
    board.claim(match.start(), match.start() + 1, "pitches", max(pair))
    board.claim(match.start() + 1, match.end(), board.items[match.start("u")].symbol, min(pair))


def _type_strikes_of(board: Board, match: re.Match[str]) -> None:
    """ "4 of 9 curves for strikes"."""
    part, total = board.whole(match.start("n")), board.whole(match.start("t"))
    if part is None or total is None:
        return
    board.claim(match.start("t"), match.end("t"), board.items[match.start("u")].symbol, total)
    _claim_rest(board, match, "breaking_strikes", part)


def _type_strikes(board: Board, match: re.Match[str]) -> None:
    value = board.whole(match.start("n"))
    if value is not None:
        board.claim(match.start(), match.end(), "breaking_strikes", value)


def _pitches_and_strikes(board: Board, match: re.Match[str]) -> None:
    """ "62/38 strikes", "38/62 strikes", "62/38 pitches/strikes": the smaller are the strikes."""
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


def _of_them(board: Board, match: re.Match[str]) -> None:
    """ "the curve was nasty, threw 14 of em": of what was named last."""
    value = board.whole(match.start("n"))
    named = [
        board.items[i].symbol for i in range(match.start()) if board.items[i].symbol in groups.TYPES
    ]
    if value is not None and named:
        board.claim(match.start(), match.end(), named[-1], value)


def _bracketed_strikes(board: Board, match: re.Match[str]) -> None:
    """ "7 curves (3 strikes)": strikes of the breaking balls."""
    value = board.whole(match.start("n"))
    if value is not None:
        board.claim(match.start("n"), match.end(), "breaking_strikes", value)


def _all_of_type(board: Board, match: re.Match[str]) -> None:
    field = groups.FIELDS[board.items[match.start("u")].symbol]
    board.claim(match.start(), match.end(), "share", (field, Fraction(1)))


def _strike_share(board: Board, match: re.Match[str]) -> None:
    """ "60% strikes on 55 pitches" are 33, if it is a whole number."""
    share, total = board.items[match.start("n")].value, board.whole(match.start("t"))
    if share is None or total is None:
        return
    strikes = share * total / 100
    board.claim(match.start("t"), match.end(), "pitches", total)
    if strikes.denominator == 1:
        board.claim(match.start(), match.start("t"), "strikes", strikes.numerator)
    else:
        board.no_log(match.start(), match.start("t"), "rate")


def _of_total(board: Board, match: re.Match[str]) -> None:
    """ "the curve was good, threw 11 of 53"."""
    symbols = [board.items[i].symbol for i in range(match.start())]
    named = [symbol for symbol in symbols if symbol in groups.TYPES]
    part, total = board.whole(match.start("n")), board.whole(match.start("t"))
    if named and "forstrikes" not in symbols and part is not None and total is not None:
        board.claim(match.start("n"), match.start("n") + 1, named[-1], part)
        board.claim(match.start("n") + 1, match.end(), "pitches", total)


def _type_and_strikes(board: Board, match: re.Match[str]) -> None:
    """ "curve: 9 thrown 4 strikes"."""
    total, strikes = board.whole(match.start("t")), board.whole(match.start("n"))
    if total is None or strikes is None:
        return
    board.claim(match.start(), match.end("t"), board.items[match.start("u")].symbol, total)
    board.claim(match.end("t"), match.end(), "breaking_strikes", strikes)


def _sets(board: Board, match: re.Match[str]) -> None:
    """ "2 sets of 10 spins" are 20."""
    sets, each = board.whole(match.start("s")), board.whole(match.start("n"))
    if sets is not None and each is not None and sets <= MOST_SETS:
        field = groups.FIELDS[board.items[match.start("u")].symbol]
        board.claim(match.start(), match.end(), field, sets * each)


def _none(board: Board, match: re.Match[str]) -> None:
    for at in range(*match.span()):
        noun = board.items[at].symbol
        if noun in groups.TYPES:
            board.claim(at, at + 1, noun, 0)
        else:
            board.no_log(at, at + 1, "none")


def _sum(board: Board, match: re.Match[str]) -> None:
    """ "15+18+12": the parts; their sum is the count when the line gives no other."""
    values = [board.whole(i) for i in range(*match.span()) if board.items[i].symbol == "num"]
    if all(value is not None for value in values):
        board.claim(match.start(), match.end(), "parts", tuple(values))


def _range(board: Board, match: re.Match[str]) -> None:
    """ "60-65 pitches" is two readings, unless the line also states the result."""
    low, high = board.whole(match.start("n")), board.whole(match.start("t"))
    noun = board.items[match.start("u")].symbol if match.group("u") else "pitches"
    if low is not None and high is not None and low < high and _is_range(board, match):
        board.claim(match.start(), match.end(), "range", (groups.FIELDS.get(noun, ""), low, high))


def _is_range(board: Board, match: re.Match[str]) -> bool:
    """A hyphen makes a range only without spaces: "32 - 20 fb 12 cb" is a total and its parts."""
    middle = match.start("n") + 1
    return board.items[middle].symbol != "dash" or board.items[middle].tight


def _book(board: Board, match: re.Match[str]) -> None:
    value = board.whole(match.start("n"))
    if value is not None:
        board.claim(match.start(), match.end(), "book", value)


def _vague(board: Board, match: re.Match[str]) -> None:
    board.unread(match.start(), match.end(), UnreadReason.VAGUE)


_DET = "(the|hisher|a|i|he|said_who|allof|quote)*"
_NO_NOUN = "(?! (fill|dash)* noun)"

CORRECTION_RULES: tuple[Rule, ...] = (
    rule(
        "61 not 58",
        "num (noun)? (for)? (said_who)? comma? (it|is|adv)* <x:insteadof|nothing> (about)? num (noun)? (?! comma num)",
        lambda b, m: b.no_log(m.start("x"), m.end(), "corrected"),
    ),
    rule(
        "not 58, 61",
        "(^|comma|dot|dash|is|threw) (insteadof|nothing) num (noun)? (comma|dash|but)+ (?= (about)? num)",
        lambda b, m: b.no_log(m.start(), m.end(), "corrected"),
    ),
    rule(
        "58 no wait 61",
        "<n:num> (fill|noun|mark|in|with|innings)* <c:correction> (correction|mark|is|the|i|he|it|threw|that)* (?= (about)? num)",
        _corrected,
    ),
    rule("62, no, 63", "<n:num> (noun)? (mark)* <c:none|nothing> (mark)+ (?= num)", _corrected),
)

COUNT_RULES: tuple[Rule, ...] = (
    rule("sets", "<s:num> (adj)* times <n:num> fill* <u:unit>", _sets),
    rule(
        "share of",
        f"<n:pct|frac> (fill|of|them|is)* <u:type> (of|in|on|out|is)+ {_DET} <t:num> (pitches|total)*",
        _share,
    ),
    rule(
        "share of all",
        f"<n:pct|frac> (of|in) {_DET} <t:num> (pitches|is|adv|total)* <u:type>",
        _share,
    ),
    rule("share of those", "<n:pct|frac> (fill|of|them|is)* <u:type|strikes>", _share_of_stated),
    rule(
        "strikes in brackets",
        "((breakingtype (colon|is|dash)* num) | (num fill* breakingtype)) open <n:num>"
        " (is|them|went|of|for|the)* (strikes|forstrikes) (close)?",
        _bracketed_strikes,
    ),
    rule("every one a slider", "everyone_of (is|a)* <u:type>", _all_of_type),
    rule(
        "strike share",
        f"<n:pct> (the|adv)* (strikes|forstrikes) (of|in|on|out)+ {_DET} <t:num> (pitches|total)*",
        _strike_share,
    ),
    rule(
        "curve: thrown, strikes",
        "<u:breakingtype> colon <t:num> (threw|comma|total|and|with)* <n:num> (forstrikes|strikes)",
        _type_and_strikes,
    ),
    rule("of them", "<n:num> them (?! (fill|is|the)* (noun|num))", _of_them),
    rule(
        "strikes of curves",
        f"<n:num> of {_DET} <t:num> fill* <u:breakingtype> (is|in|went|threw|the)* (forstrikes|strikes)",
        _type_strikes_of,
    ),
    rule(
        "curves for strikes",
        f"<n:num> (of)? {_DET} <u:breakingtype> (is|in|went|threw|the)* forstrikes",
        _type_strikes,
    ),
    rule(
        "strikes with the curve",
        f"<n:num> strikes (in|with|of|for) {_DET} <u:breakingtype>",
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
    rule(
        "pitches / strikes",
        "<n:num> slash <t:num> (pitches (slash|and)? )? <u:strikes|forstrikes>",
        _spaced_pair,
    ),
    rule(
        "strikes of pitches",
        f"<t:num> (strikes)? of {_DET} <n:num> (pitches)? <u:forstrikes|strikes>",
        _spaced_pair,
    ),
    rule(
        "strikes out of",
        f"<t:num> (strikes|forstrikes) (of|in|on) {_DET} <n:num> (total|pitches)* {_NO_NOUN}",
        _spaced_pair,
    ),
    rule(
        "part of",
        f"<n:num> of {_DET} <t:num> (pitches|is|total|adv)* (is|adv|threw)* <u:type>",
        _part_of,
    ),
    rule(
        "part out of",
        f"<n:num> fill* <u:type> (of) {_DET} <t:num> (?! (fill|dash)* (type|strikes|innings|forstrikes)) (total|pitches)*",
        _part_of,
    ),
    rule("of so many", "threw (about|adv)* <n:num> of <t:num> (?! (fill|dash)* noun)", _of_total),
    rule("part / total", "<r:ratio> (fill|is|of|them)* <u:type>", _ratio_part),
    rule("sum", "num (plus num)+", _sum),
    rule("range", "(between)? <n:num> (dash|to|or|and) <t:num> fill* <u:unit>", _range),
    rule(
        "bare range",
        "(threw|between) (about|between)* <n:num> (dash|to|or) <t:num> (?! (fill)* noun) (<u:unit>)?",
        _range,
    ),
    rule("vague", "(vague)+ (fill|of)* noun", _vague),
    rule("over", "over num fill* (unit|limit)? (?! innings)", _vague),
    rule(
        "no curves",
        "(none|notthrown|notpitched|nothing) (fill|threw|vague)* type (((or|and|slash) | comma? none)+ fill* type)*",
        _none,
    ),
    rule(
        "book",
        "book (threw|had|is|feels|colon|at|the|he|i|for)* <n:num> (pitches)? (?! fill* noun)",
        _book,
    ),
)

_SLOT = "(about|adv|the|with|at|of|is|a|colon|comma|dash|only|total|for|newline|up_to|on)*"
_AFTER = f"(ish)? (?! (fill|dash|slash)* (noun|percent|num|daysago|mph|pct|to|or) | of (the|hisher|a)* num)"


def _pitches(board: Board, match: re.Match[str]) -> None:
    """A number in the place of the pitch count."""
    at = match.start("n")
    value = board.whole(at)
    if at and board.items[at - 1].symbol == "at" and value is not None and value <= 12:
        return  # "tryout at 6"
    if value is not None and value >= 5:
        first = (
            at - 1 if at and board.free(at - 1) and board.items[at - 1].symbol == "about" else at
        )
        over = at and board.items[at - 1].symbol == "over"
        if over:
            board.unread(at - 1, at + 1, UnreadReason.VAGUE)
            return
        after = match.end() if board.items[match.end() - 1].symbol == "ish" else at + 1
        about = any(board.items[i].symbol in ("about", "ish") for i in range(first, after))
        if _unpaired_type_before(board, at):
            board.unread(first, after, UnreadReason.TWO_READINGS)  # "my spins ... 12 in catch play"
        else:
            board.claim(first, after, "pitches", value, about=about, weak=True)


def _total(board: Board, match: re.Match[str]) -> None:
    """A number called the total is as good as one called pitches."""
    _pitches(board, match)
    if board.claims and board.claims[-1].key == "pitches":
        board.claims[-1].weak = False


def _unpaired_type_before(board: Board, at: int) -> bool:
    """Whether a pitch type without a number stands before this number in its clause."""
    first, _ = span(board.clause, at)
    return any(board.symbol_is(i, name) for i in range(first, at) for name in groups.TYPES)


def _running(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "running")


RUNNING_RULES: tuple[Rule, ...] = (
    rule(
        "18 in the 3rd",
        "(about)? <n:num> (pitches)? in (the)? (ord|ordword) (innings)? | <m:num> (pitches)? ordword",
        _running,
    ),
    rule(
        "at 45 after 3",
        "(running|had|at)* (about|at|is)* num (unit)? after (the)? (num|ord) (innings)?",
        _running,
    ),
    rule(
        "was at 45 through 3",
        "(running|at)+ (about|at)* num (unit)? (through|in) (the)? (num|ord) (innings)?",
        _running,
    ),
    rule(
        "through 3 at 41",
        "(after|through) (the)? (num|ord) (innings)? (comma|i|he)* (running|at|is|had)+ (at)* num"
        " (unit)?",
        _running,
    ),
)

BARE_RULES: tuple[Rule, ...] = (
    rule("total", "<n:num> (ish)? (pitches)? total", _total),
    rule("total before", f"total (of|colon|is|pitches|about)* <n:num> {_AFTER}", _pitches),
    rule(
        "finished at",
        f"finish (at|with|about|the|is|adv|colon|of|on|i|he)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule("threw", f"threw (about|adv|the|with|a|total|of|i|he|over)* <n:num> {_AFTER}", _pitches),
    rule(
        "kind, number",
        f"kind (of|colon|comma|dash|is|adv|about|at|the|with|newline|done|i|he|threw|today)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule(
        "in all",
        f"said_count (comma|dash|dot)* adv* is (adv|about|the|total)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule("number, game", "<n:num> (ish)? (in|the|of|for)* said_label", _pitches),
    rule(
        "game, number",
        f"said_label (colon|dash|with|threw|is|comma|about)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule(
        "number, kind",
        f"<n:num> (ish)? (in|the|hisher|a|adj|at|adv|dash|of|for|good|i|on|with)* (bullpen|catch|live|game|warm|side)",
        _pitches,
    ),
    rule(
        "name, number",
        f"said_who (threw|went|with|at|is|about|colon|dash|dot|adv|had|for|to|a|the)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule(
        "number for a name",
        f"<n:num> (ish)? (for|of)? (the)? said_who (?! (colon|dash)* (num|said_count))",
        _pitches,
    ),
    rule("number on a day", f"<n:num> (ish)? (in|for|the|of)* said_day", _pitches),
    rule(
        "number, breakdown",
        f"<n:num> (ish)? (with|open|colon|dash|comma|and|adv)+ (about|adv|the)* said_count",
        _pitches,
    ),
    rule(
        "outs on so many",
        f"said_count (in|on|of|with|threw|about|adv|for|a|the)+ <n:num> {_AFTER}",
        _pitches,
    ),
    rule("number against", f"<n:num> (ish)? (in|on|the|adv)* said_vs", _pitches),
    rule(
        "everyone", f"everyone (threw|with|at|is|about|colon|dash|adv)* <n:num> {_AFTER}", _pitches
    ),
)
