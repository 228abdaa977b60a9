"""Counts that stand in a form of their own: sets, sums, ranges, vague amounts, none at all."""

import re

from core.reading import groups
from core.reading.board import Board, Rule, rule, says_no_log
from core.reading.entry import UnreadReason
from core.reading.innings import has_thirds, innings_outs

MOST_SETS = 10
FEWEST_OF_A_SET = 5  # "pen 12 x 3" may well be the other way round


def _of_them(board: Board, match: re.Match[str]) -> None:
    """As in "the curve was nasty, threw 14 of em": of what was named last."""
    value = board.whole(match.start("n"))
    named = [
        board.items[i].symbol for i in range(match.start()) if board.items[i].symbol in groups.TYPES
    ]
    if value is not None and named:
        board.claim(match.start(), match.end(), named[-1], value)


def _sets(board: Board, match: re.Match[str]) -> None:
    """As in "2 sets of 10 spins" are 20."""
    sets, each = board.whole(match.start("s")), board.whole(match.start("n"))
    if sets is not None and each is not None and sets <= MOST_SETS:
        field = groups.FIELDS[board.items[match.start("u")].symbol]
        board.claim(match.start(), match.end(), field, sets * each)


def _sets_and_total(board: Board, match: re.Match[str]) -> None:
    """As in "2 sets of 15, so 30 pitches": the product is told too."""
    sets, each, total = (board.whole(match.start(name)) or 0 for name in "snt")
    if sets * each == total:
        board.no_log(match.start(), match.start("t"), "sets")
        board.claim(match.start("t"), match.end(), "pitches", total)


def _sets_of_a_kind(board: Board, match: re.Match[str]) -> None:
    """As in "pen 3 sets of 12": of pitches, where the line tells a kind and counts nothing else."""
    sets, each = board.whole(match.start("s")), board.whole(match.start("n"))
    told = board.has("bullpen", "catch", "live", "side")
    alone = not board.has("pitches") and sum(i.symbol == "num" for i in board.items) == 2
    if sets is None or each is None:
        return
    totals = [
        board.whole(i)
        for i in range(len(board.items) - 1)
        if board.items[i + 1].symbol in ("total", "pitches")
    ]
    if sets * each in totals:
        board.no_log(match.start(), match.end(), "sets")  # "2 sets of 15 so 30 total"
        return
    if told and alone and sets <= MOST_SETS and each >= FEWEST_OF_A_SET:
        board.claim(match.start(), match.end(), "pitches", sets * each)
    elif told or board.items[match.start("u")].text.lower().startswith("ups"):
        board.unread(match.start(), match.end(), UnreadReason.TWO_READINGS)


def _none(board: Board, match: re.Match[str]) -> None:
    for at in range(*match.span()):
        noun = board.items[at].symbol
        if noun in groups.TYPES:
            board.claim(at, at + 1, noun, 0)
        else:
            board.no_log(at, at + 1, "none")


def _none_of_them(board: Board, match: re.Match[str]) -> None:
    if board.items[match.start("a")].text.lower().startswith("none"):
        board.claim(match.start(), match.end(), board.items[match.start("u")].symbol, 0)


def _sum(board: Board, match: re.Match[str]) -> None:
    """As in "15+18+12": the parts; their sum is the count when the line gives no other."""
    values = [board.whole(i) for i in range(*match.span()) if board.items[i].symbol == "num"]
    if all(value is not None for value in values):
        board.claim(match.start(), match.end(), "parts", tuple(values))


def _range(board: Board, match: re.Match[str]) -> None:
    """As in "60-65 pitches" is two readings, unless the line also states the result."""
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
        other = any(
            item.symbol == "num"
            and board.free(i)
            and i not in range(*match.span())
            and item.whole != value
            for i, item in enumerate(board.items)
            if _is_bare(board, i) and board.sentence[i] == board.sentence[match.start()]
        )
        board.claim(match.start(), match.end(), "book", value, weak=other)


def _is_bare(board: Board, at: int) -> bool:
    """Whether no noun follows the number there."""
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    return follows not in groups.NOUNS and board.sentence[at] == board.sentence[at - 1]


def _summed(board: Board, match: re.Match[str]) -> None:
    """As in "by inning 12 19 9 17, thats 57"."""
    total = board.whole(match.start("n"))
    parts = [board.whole(i) or 0 for i in range(match.start(), match.start("n"))
             if board.items[i].symbol == "num"]  # fmt: skip
    if total is not None and sum(parts) == total:
        board.no_log(match.start(), match.start("n"), "by inning")
        board.claim(match.start("n"), match.end(), "pitches", total)


def _letter_c(board: Board, match: re.Match[str]) -> None:
    """As in "47p 8c 5ch": curves, beside changeups, and where no other word counts curves."""
    value = board.whole(match.start("n"))
    tight = board.items[match.start("u")].tight
    if value is not None and tight and board.has("changeup") and not board.has("curve"):
        board.claim(match.start(), match.end(), "curve", value)


def _over(board: Board, match: re.Match[str]) -> None:
    """As in "over 60 pitches"; "59 pitches over four and a third" tells his innings."""
    number = next(i for i in range(*match.span()) if board.items[i].symbol == "num")
    if has_thirds(board.items[number]) and match.end() == number + 1 and board.has("pitches"):
        board.claim(match.start(), match.end(), "outs", innings_outs(board.items[number]))
    else:
        _vague(board, match)


def _too_many(board: Board, match: re.Match[str]) -> None:
    """As in "too many curves, 19 in 62 pitches"."""
    value = board.whole(match.start("n"))
    if value is not None:
        board.claim(match.start(), match.end(), board.items[match.start("u")].symbol, value)


def _vague(board: Board, match: re.Match[str]) -> None:
    board.unread(match.start(), match.end(), UnreadReason.VAGUE)


COUNT_RULES: tuple[Rule, ...] = (
    rule(
        "2 sets of 15, so 30 pitches",
        "<s:num> (adj)* times <n:num> (pitches)? (comma|dash|is|adv|for|of|with)*"
        " (total (of)?)? <t:num> (pitches|total)",
        _sets_and_total,
    ),
    rule("sets", "<s:num> (adj)* times <n:num> fill* <u:unit>", _sets),
    rule(
        "pen, 3 sets of 12",
        "<s:num> (adj)* <u:times|ups> (comma|of|at|with|colon|dash|about)* <n:num> (each)?"
        " (?! (fill|dash)* (noun|percent|mph|num|word))",
        _sets_of_a_kind,
    ),
    rule("4 of em in the dirt", "<n:num> them (is|adv)* outcome", says_no_log("outcome")),
    rule("of them", "<n:num> them (?! (fill|is|the)* (noun|num))", _of_them),
    rule(
        "22 + 15 + 12 = 49",
        "num (plus num)+ is <n:num> (?! (fill)* (type|innings|strikes))",
        _summed,
    ),
    rule("sum", "num (plus num)+", _sum),
    rule("too many curves, 19", "vague <u:type> (comma|dash|colon|open)+ <n:num>", _too_many),
    rule("12 19 9 17, thats 57", "byinning (colon)? num num+ (comma|is)+ <n:num>", _summed),
    rule(
        "22, 18, 15 = 55",
        "num (comma|plus|and)? num ((comma|plus|and)+ num | num)* (comma|byinning|pitches)*"
        " (is|total|for|adv)+ (about)? <n:num>"
        " (?! fill* (type|innings))",
        _summed,
    ),
    rule("range", "(between)? <n:num> (dash|to|or|and) <t:num> fill* <u:unit>", _range),
    rule(
        "bare range",
        "(threw|between) (about|between)* <n:num> (dash|to|or) <t:num> (?! (fill)* noun)"
        " (<u:unit>)?",
        _range,
    ),
    rule("between", "between <n:num> and <t:num> (<u:unit>)? (?! (fill)* noun)", _range),
    rule("none of them curves", "<a:all> (is)* <u:type> (?! (fill)* num)", _none_of_them),
    rule("8c", "<n:num> <u:letterc>", _letter_c),
    rule("vague", "(vague|something)+ (fill|of)* noun", _vague),
    rule("over", "(?<!pitches) over num fill* (unit|limit)? (?! innings)", _over),
    rule(
        "no curves",
        "(none|notthrown|notpitched|nothing) (fill|threw|vague|is)* type (((or|and|slash) |"
        " comma? none)+ fill* type)*",
        _none,
    ),
    rule(
        "book",
        "book (threw|had|is|feels|colon|at|the|he|i|for|finish)* <n:num> (pitches)?"
        " (?! fill* noun)",
        _book,
    ),
)
