"""Innings: 4.1, 4 1/3 and "four and a third" are thirteen outs."""

import re
from fractions import Fraction

from core.reading import groups
from core.reading.board import Board, Rule, rule, says_no_log
from core.reading.clauses import span
from core.reading.entry import UnreadReason
from core.reading.items import Item

_TENTHS = {Fraction(1, 10): 1, Fraction(2, 10): 2}
_THIRDS = {Fraction(1, 3): 1, Fraction(2, 3): 2}
_LOG_WORDS = (*groups.FIELDS, *groups.KINDS, "threw", "went", "vs", "finish")
_SCORELESS = ("scoreless", "scorless", "shutout", "perfect", "no hit", "hitless")
LONGEST_OUTING = 12 * 3  # outs


def innings_outs(item: Item) -> int | None:
    """Outs of innings; None for what innings cannot be (4.5, 9.4, 4.25, and over twelve)."""
    if item.value is None:
        return None
    if item.value.denominator == 1:
        outs = item.value.numerator * 3
        return outs if outs <= LONGEST_OUTING else None
    whole, rest = divmod(item.value, 1)
    written_in_tenths = "." in item.text and len(item.text.rsplit(".", 1)[1]) == 1
    thirds = _TENTHS if written_in_tenths else _THIRDS
    if rest not in thirds:
        return None
    outs = int(whole) * 3 + thirds[rest]
    return outs if outs <= LONGEST_OUTING else None


def has_thirds(item: Item) -> bool:
    """Whether a number can hardly be anything but innings: "4.1", "5 1/3"."""
    if item.value is None or innings_outs(item) is None:
        return False
    return item.value.denominator != 1 or item.text.endswith(".0")


def _innings(board: Board, match: re.Match[str]) -> None:
    _claim(board, match, "outs")


def _caught(board: Board, match: re.Match[str]) -> None:
    _claim(board, match, "caught_outs")


def _claim(board: Board, match: re.Match[str], field: str) -> None:
    outs = innings_outs(board.items[match.start("n")])
    if outs is None:
        board.unread(match.start(), match.end(), UnreadReason.IMPOSSIBLE)
    else:
        board.claim(match.start(), match.end(), field, outs)


def _claim_place(board: Board, at: int) -> None:
    outs = innings_outs(board.items[at])
    if outs is not None:
        board.claim(at, at + 1, "outs", outs)


def _bare(board: Board, match: re.Match[str]) -> None:
    """A bare number in thirds: nothing else is written so."""
    if has_thirds(board.items[match.start("n")]) and board.has(*_LOG_WORDS):
        _claim(board, match, "outs")


def _inning(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "outs", 3)


def _only_inning(board: Board, match: re.Match[str]) -> None:
    """As in "in his only inning"; "in just innings" counts nothing."""
    only = any(board.items[i].text.lower() == "only" for i in range(*match.span()))
    if only and board.items[match.end() - 1].text.lower() == "inning":
        _inning(board, match)


def _inning_and_part(board: Board, match: re.Match[str]) -> None:
    part = board.items[match.start("n")].value or Fraction(0)
    if part in _THIRDS:
        board.claim(match.start(), match.end(), "outs", 3 + _THIRDS[part])


def _innings_and_out(board: Board, match: re.Match[str]) -> None:
    whole = board.whole(match.start("w"))
    if whole is not None:
        board.claim(match.start(), match.end(), "outs", whole * 3 + 1)


def _innings_and_outs(board: Board, match: re.Match[str]) -> None:
    whole, outs = board.whole(match.start("w")), board.whole(match.start("n"))
    if whole is not None and outs in (0, 1, 2):
        board.claim(match.start(), match.end(), "outs", whole * 3 + (outs or 0))


def _innings_and_part(board: Board, match: re.Match[str]) -> None:
    whole, part = board.whole(match.start("w")), board.items[match.start("n")].value
    if whole is not None and part in _THIRDS:
        board.claim(match.start(), match.end(), "outs", whole * 3 + _THIRDS[part])


def _part(board: Board, match: re.Match[str]) -> None:
    part = board.items[match.start("n")].value or Fraction(0)
    if part in _THIRDS:
        board.claim(match.start(), match.end(), "outs", _THIRDS[part])


def _third_inning_or_part(board: Board, match: re.Match[str]) -> None:
    """As in "1/3 inning"; "a third inning homer" tells when."""
    if board.items[match.start()].text.lower() in ("a third", "a 3rd"):
        board.no_log(match.start(), match.end(), "inning")
    else:
        _part(board, match)


def _per_inning(board: Board, match: re.Match[str]) -> None:
    """As in "averaged 14 pitches an inning"; without that word it could be the count."""
    if board.has("radar"):
        board.no_log(match.start(), match.end(), "by inning")
    else:
        board.unread(match.start(), match.end(), UnreadReason.TWO_READINGS)


def _outs_of_inning(board: Board, match: re.Match[str]) -> None:
    """As in "out in the 4th with 62 pitches and 2 outs": got by him, or when he left?"""
    first, _ = span(board.sentence, match.start())
    inning = any(board.items[i].symbol in ("ord", "ordword") for i in range(first, match.start()))
    if inning and board.whole(match.start("n")) in (0, 1, 2):
        board.unread(match.start("n"), match.end(), UnreadReason.TWO_READINGS)


def _one_out(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "outs", 1)


def _small(board: Board, match: re.Match[str]) -> None:
    """As in "pitched two", "went 4": innings when small, unless the noun follows."""
    item = board.items[match.start("n")]
    if item.value is not None and item.value < 10 and item.text.lower() != "one":
        _claim(board, match, "outs")


def _small_beside(board: Board, match: re.Match[str]) -> None:
    """As in "pitched 2, 30 p", "caught 4 innings then pitched 2": of the kind beside them."""
    first, end = span(board.sentence, match.start())
    caught = any(c.key == "caught_outs" and first <= c.first < end for c in board.claims)
    if caught or any(board.symbol_is(i, "pitches") for i in range(match.end(), end)):
        _small(board, match)


def _as_beside(board: Board, match: re.Match[str]) -> None:
    """As in "Noah 3.2 62p, Sam 2 27p": innings, where another's stand between name and pitches."""
    innings, pitches = board.whole(match.start("n")), board.whole(match.start("n") + 1)
    names = {claim.after for claim in board.claims if claim.key == "who"}
    beside = any(c.key == "outs" and c.first in names for c in board.claims) or any(
        at in names and has_thirds(item) for at, item in enumerate(board.items)
    )
    if beside and innings and pitches and 7 * innings <= pitches <= 45 * innings:
        _claim_place(board, match.start("n"))


def _through(board: Board, match: re.Match[str]) -> None:
    """As in "75 pitches thru 6": the whole outing, if no later count is given."""
    counts = sum(item.symbol == "pitches" for item in board.items)
    value = board.items[match.start("n")].value
    if (
        counts == 1
        and not board.has("finish", "total", "running")
        and value is not None
        and value < 10
    ):
        at = match.start("n")
        outs = innings_outs(board.items[at])
        if outs is not None:
            board.claim(at, at + 1, "outs", outs)


def _bare_through(board: Board, match: re.Match[str]) -> None:
    """As in "Leo 58 thru 4": pitches, and the innings of his outing."""
    pitches, innings = board.whole(match.start("p")), board.whole(match.start("n"))
    if pitches is None or innings is None or pitches < 10 or innings > 9 or board.has("running"):
        return
    board.claim(match.start("p"), match.end("p"), "pitches", pitches, weak=True)
    board.claim(match.start("n"), match.end(), "outs", innings * 3)


def _small_after(board: Board, match: re.Match[str]) -> None:
    """As in "55 tonight, 8 sliders, through 4"."""
    value = board.whole(match.start("n"))
    if value is not None and value < 10 and not board.has("innings", "running"):
        _claim_place(board, match.start("n"))


def _in_so_many(board: Board, match: re.Match[str]) -> None:
    """As in "threw 33 with 4 cb in 2": innings, when a count of the clause is as many innings'."""
    innings = board.whole(match.start("n"))
    first, after = span(board.clause, match.start())
    counts = [board.whole(i) or 0 for i in range(first, after) if board.items[i].symbol == "num"]
    if innings and any(7 * innings <= count <= 45 * innings for count in counts):
        _claim_place(board, match.start("n"))


def _pulled_after(board: Board, match: re.Match[str]) -> None:
    """As in "pulled after 2, 31 pitches"."""
    innings = board.whole(match.start("n"))
    after = board.items[match.start()].text.lower().endswith("after")
    if after and innings is not None and innings < 10:
        _claim_place(board, match.start("n"))


def _first_innings(board: Board, match: re.Match[str]) -> None:
    """As in "pitched the 1st 2 innings"; "threw the 3rd 2 innings later" is asked."""
    if board.items[match.start("o")].whole == 1:
        _claim_place(board, match.start("n"))
        board.no_log(match.end() - 1, match.end(), "inning")


def _pulled_at(board: Board, match: re.Match[str]) -> None:
    """As in "pulled me at 53 after 4 innings": his last pitch, and his innings."""
    _claim_place(board, match.start("n"))
    board.no_log(match.end() - 1, match.end(), "inning")


def _length_of_game(board: Board, match: re.Match[str]) -> None:
    """As in "a 6 inning game"; "3ip game" are the innings pitched."""
    if board.items[match.start() + 1].text.lower() != "ip":
        board.no_log(match.start(), match.end(), "length of game")


def _scoreless(board: Board, match: re.Match[str]) -> None:
    """As in "4 scoreless vs Mossy Creek"."""
    if board.items[match.end() - 1].text.lower() in _SCORELESS:
        _small(board, match)


def _caught_small(board: Board, match: re.Match[str]) -> None:
    value = board.items[match.start("n")].value
    if value is not None and value < 10:
        _claim(board, match, "caught_outs")


_NOT_COUNTED = "(?! (fill|dash)* (noun|percent|num))"


def read_catchers(board: Board) -> None:
    """As in "Catchers today: Nico 4 inn, Sam 3 inn": all innings under that heading are caught."""
    if not board.has("catching"):
        return
    for at in range(len(board.items)):
        if not board.symbol_is(at, "catching"):
            continue
        first, after = span(board.sentence, at)
        told = next((i for i in range(at, after) if board.items[i].symbol == "colon"), at)
        if any(board.items[i].symbol in ("threw", "went") for i in range(at, told)):
            continue  # "caught game 1, pitched game 2: 45p 3ip"
        opens = at == first or not any(board.items[i].value is not None for i in range(first, at))
        headed = any(board.items[i].symbol == "colon" for i in range(at, after))
        for claim in board.claims:
            if opens and headed and claim.key == "outs" and at < claim.first < after:
                claim.key = "caught_outs"


INNINGS_RULES: tuple[Rule, ...] = (
    rule(
        "caught",
        "catching (the|for|adj|about|last|first|colon|allof|comma|game|said_label|in)* <n:num>"
        " adj* innings",
        _caught,
    ),
    rule(
        "innings behind the plate", "<n:num> adj* innings (in|the|at|adv|of|for)* catching", _caught
    ),
    rule("with 2 outs", "(?<!innings) with (num outs | oneout)", says_no_log("inning")),
    rule("62 pitches and 2 outs", "pitches (and|with|comma)+ <n:num> outs", _outs_of_inning),
    rule("got one out", "had (the|adv)* oneout", _one_out),
    rule("caught five", "catching (the|adj|last|allof)* <n:num> " + _NOT_COUNTED, _caught_small),
    rule("in the field", "num adj* innings (in|the|at|of)* fielding", says_no_log("fielding")),
    rule(
        "in the field, before",
        "fielding (for|the|word|adj|allof|last)* num (innings | " + _NOT_COUNTED + ")",
        says_no_log("fielding"),
    ),
    rule(
        "pulled me at 53 after 4 innings",
        "finish (about|at)* num (pitches)? after <n:num> innings",
        _pulled_at,
    ),
    rule(
        "pitched the 1st 2 innings",
        "(threw|went|had) (the)? <o:ord> <n:num> adj* innings",
        _first_innings,
    ),
    rule("after three innings", "(after|before|ord) num adj* innings", says_no_log("inning")),
    rule("inning three", "half num", says_no_log("inning")),
    rule("innings 3 and 4", "innings num (and|dash|to|comma) num", says_no_log("inning")),
    rule("14 pitches an inning", "num unit a innings (?! and)", _per_inning),
    rule("62 pitches over 5", "pitches over <n:num> " + _NOT_COUNTED, _through),
    rule("length of a game", "num innings game", _length_of_game),
    rule("the last two", "threw (the|hisher)* last <n:num> " + _NOT_COUNTED, _small),
    rule("four scoreless", "<n:num> (adj|goodadj) (?! (fill|dash)* (noun|percent))", _scoreless),
    rule("gave em five solid", "went them <n:num> (adj|goodadj)? " + _NOT_COUNTED, _small),
    rule(
        "per inning",
        "num ((comma|and|slash|dash|plus)* num)* (unit)? byinning",
        says_no_log("by inning"),
    ),
    rule("catch five innings", "catch (the|adj|allof)* <n:num> adj* innings", _caught),
    rule("one inning plus one out", "<w:num> innings (and|with|plus)* oneout", _innings_and_out),
    rule("innings and outs", "<w:num> innings (and|with|plus)+ <n:num> outs", _innings_and_outs),
    rule("four innings and a third", "<w:num> innings and <n:frac|num>", _innings_and_part),
    rule("an inning and a third", "(a)? innings and <n:frac>", _inning_and_part),
    rule("his only inning", "(in|for|threw|had)? (hisher|the|i) adv+ innings", _only_inning),
    rule(
        "an inning",
        "(threw|had|went|for|in|and|comma|dot|newline|semi|^) (adv|about)* a adj* innings",
        _inning,
    ),
    rule("75 pitches thru 6", "num (pitches) (through) (the)? <n:num> " + _NOT_COUNTED, _through),
    rule(
        "4 cb in 2",
        "(num fill* (type|pitches|innings) | (finish|threw) (with|about|at)* num) (in|into)"
        " <n:num> " + _NOT_COUNTED,
        _in_so_many,
    ),
    rule(
        "pulled after 2, 31 pitches",
        "finish <n:num> (comma)+ (?= num (pitches))",
        _pulled_after,
    ),
    rule(
        "8 sliders, through 4",
        "num fill* (type|pitches) (comma)? through <n:num> " + _NOT_COUNTED,
        _small_after,
    ),
    rule(
        "Leo 58 thru 4",
        "(said_who|threw|finish|with|^) (about)? <p:num> through (the)? <n:num> " + _NOT_COUNTED,
        _bare_through,
    ),
    rule("part of an inning", "<n:frac|num> ofinning", _part),
    rule("third of an inning", "<n:frac> innings", _third_inning_or_part),
    rule("Noah 3.2 62p, Sam 2 27p", "said_who <n:num> (?= <p:num> pitches)", _as_beside),
    rule(
        "in five and a third",
        "(?<!innings) (?<!innings colon) (in|went|through|had|threw|for|comma)* <n:num>"
        " (?! (fill|dash)* (noun|percent))",
        _bare,
    ),
    rule(
        "pitched two of a count",
        "threw (adv|about|the|adj|last)* <n:num> " + _NOT_COUNTED,
        _small_beside,
    ),
    rule("pitched two", "(went) (adv|about|the|adj|last)* <n:num> " + _NOT_COUNTED, _small),
)
