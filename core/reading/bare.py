"""Bare numbers where a pitch count stands: "threw 45", "pen 25", "Leo 30 with 6 curves".

They are weak: a number that says "pitches" in the same outing takes precedence.
"""

import re

from core.reading import groups
from core.reading.board import Board, Rule, rule
from core.reading.clauses import span
from core.reading.entry import UnreadReason
from core.reading.items import Item
from core.reading.radar import SPEEDS

MOST_INNINGS = 12  # of one outing
FEWEST_OF_AN_OUTING = 8  # pitches; common practice, no source
FEWEST = 5  # a smaller bare number is more likely something else


def _pitches(board: Board, match: re.Match[str]) -> None:
    """A number in the place of the pitch count."""
    at = match.start("n")
    value = board.whole(at)
    before = board.items[at - 1] if at else None
    if before is not None and value is not None and _is_hour_or_age(before, value):
        return
    if value in SPEEDS and _is_about_radar(board):
        board.no_log(at, at + 1, "radar")  # "radar today Eli 74 Noah 71"
        return
    if value is not None and value >= FEWEST:
        first = (
            at - 1 if at and board.free(at - 1) and board.items[at - 1].symbol == "about" else at
        )
        over = at and board.items[at - 1].symbol == "over"
        if over:
            board.unread(at - 1, at + 1, UnreadReason.VAGUE)
            return
        after = at + 2 if board.symbol_is(at + 1, "ish") else at + 1
        about = any(board.items[i].symbol in ("about", "ish") for i in range(first, after))
        if _unpaired_type_before(board, at):
            board.unread(first, after, UnreadReason.TWO_READINGS)  # "my spins ... 12 in catch play"
        else:
            board.claim(first, after, "pitches", value, about=about, weak=True)


def _is_about_radar(board: Board) -> bool:
    """Whether the line tells of speeds and counts nothing."""
    return board.has("radar") and not board.has(*groups.FIELDS, *groups.KINDS, "threw")


def _is_hour_or_age(before: Item, value: int) -> bool:
    """As in "tryout at 6", "Leo is 13"."""
    return (before.symbol == "at" and value <= 12) or (before.name in ("is", "es") and value < 20)


def _each(board: Board, match: re.Match[str]) -> None:
    """As in "pens today, 25 each"; "split 12 ways = 20 each" has no kind and no name."""
    if any(claim.key == "who" for claim in board.claims) or board.has(*groups.KINDS):
        _pitches(board, match)


def _on_days(board: Board, match: re.Match[str]) -> None:
    """As in "pens: mon 20, wed 25": beside one day alone the number may be its date."""
    days = {claim.value for claim in board.claims if claim.key == "day"}
    if days == {board.posted.date()} and any(c.value == "earlier" for c in board.claims):
        _pitches(board, match)  # "last week 80, today 45"
        return
    if len(days) > 1 and board.has("bullpen", "catch", "live"):
        _pitches(board, match)


def _alone(board: Board, match: re.Match[str]) -> None:
    """As in "pen. 22. 5 curves": a number that is a sentence of a log."""
    if board.has(*groups.TYPES) and board.has(*groups.KINDS, "innings", "vs"):
        _pitches(board, match)


def _beside_innings(board: Board, match: re.Match[str]) -> None:
    """As in "34 in 1 inning", "Leo 3 IP 48": a count that fits so many innings."""
    value, at = board.whole(match.start("n")), match.start("c")
    outs = next((c.value for c in board.claims if c.key == "outs" and c.first <= at < c.after), 0)
    fits = isinstance(outs, int) and 7 * outs <= 3 * (value or 0) <= 45 * outs
    if outs and fits and (value or 0) >= FEWEST_OF_AN_OUTING:
        _pitches(board, match)


def _thrown(board: Board, match: re.Match[str]) -> None:
    if board.items[match.end() - 1].text.lower() in ("thrown", "lanzadas", "tiradas"):
        _pitches(board, match)


def _of_the_same(board: Board, match: re.Match[str]) -> None:
    """The second number counts what the first counted."""
    at, first = match.start("n"), match.start("c")
    key = next((c.key for c in board.claims if c.first <= first < c.after), "")
    value = board.whole(at)
    if key in groups.FIELDS.values() and key != "outs" and value is not None:
        board.claim(at, at + 1, key, value)


def claim_total(board: Board, match: re.Match[str]) -> None:
    """A number called the total is as good as one called pitches."""
    _pitches(board, match)
    if board.claims and board.claims[-1].key == "pitches":
        board.claims[-1].weak = False


def _came_out(board: Board, match: re.Match[str]) -> None:
    """As in "44 when he came out"; a parent's "35 when I left for work" was on the way."""
    if board.author != "pitcher" and board.items[match.end() - 1].text.lower().startswith(
        "when i "
    ):
        board.claim(match.start(), match.end(), "running")
    else:
        claim_total(board, match)


def _is_number(board: Board, at: int) -> bool:
    return board.items[at].symbol == "num"


def _sum_of_innings(board: Board, match: re.Match[str]) -> None:
    """As in "12 in the first, 19 in the second, 16 in the third = 47"."""
    sentence = board.sentence[match.start("n")]
    innings = [
        next((board.whole(i) or 0 for i in range(c.first, c.after) if _is_number(board, i)), 0)
        for c in board.claims
        if c.key == "running" and board.sentence[c.first] == sentence
    ]
    if len(innings) > 1 and sum(innings) == board.whole(match.start("n")):
        claim_total(board, match)


def _of_a_total(board: Board, match: re.Match[str]) -> None:
    """As in "season is at 310 pitches, 52 of em today"."""
    before = any(c.value == "total" and c.first < match.start() for c in board.claims)
    if before:
        _pitches(board, match)


def _did_instead(board: Board, match: re.Match[str]) -> None:
    """As in "coach wanted 12 spins but i only did 8": 8 of the same."""
    first, after = span(board.clause, match.start() - 1) if match.start() else (0, 0)
    wanted = [
        board.items[i + 1].symbol
        for i in range(first, after - 1)
        if board.items[i].symbol == "num" and not board.free(i)
    ]
    value = board.whole(match.start("n"))
    plan = any(c.value in ("plan", "limit") and first <= c.first < after for c in board.claims)
    if plan and len(wanted) == 1 and wanted[0] in groups.FIELDS and value is not None:
        board.claim(match.start("n"), match.end(), groups.FIELDS[wanted[0]], value)


def _of_limit(board: Board, match: re.Match[str]) -> None:
    """As in "used 50 of my 65": what was thrown, and what was allowed."""
    if board.items[match.start("v")].text.lower() in ("my", "his", "her", "their"):
        _pitches(board, match)
        board.no_log(match.end() - 1, match.end(), "limit")


def _went(board: Board, match: re.Match[str]) -> None:
    """As in "limit was 50, went 48"; "went 4" may be innings."""
    value = board.whole(match.start("n"))
    if value is not None and value > MOST_INNINGS:
        _pitches(board, match)


def _final(board: Board, match: re.Match[str]) -> None:
    """As in "32 after 2, 58 final"; "7-5 final" is a score."""
    if board.items[match.start("w")].text.lower() == "final":
        claim_total(board, match)


def _own_after_others(board: Board, match: re.Match[str]) -> None:
    """As in "my brother threw 40, me 30", "su hermano tiró 40 y él 30"."""
    if any(c.value == "someone else's" and c.after == match.start() for c in board.claims):
        _pitches(board, match)


def _unpaired_type_before(board: Board, at: int) -> bool:
    """Whether a pitch type without a number stands before this number in its clause."""
    first, _ = span(board.clause, at)
    return any(board.symbol_is(i, name) for i in range(first, at) for name in groups.TYPES)


_AFTER = (
    "(ish)? (?! (fill|dash|slash)* (noun|percent|num|daysago|mph|pct|to|or|quote)"
    " | of (the|hisher|a)* num)"
)


BARE_RULES: tuple[Rule, ...] = (
    rule(
        "58 final",
        "(^|comma|dot|dash|said_count|running|then) <n:num> (pitches)? <w:win> (?! num)",
        _final,
    ),
    rule(
        "12 in the first, 19 in the second = 31",
        f"said_running (comma|dash|dot)* (is|total|for|adv|so)* <n:num> {_AFTER}",
        _sum_of_innings,
    ),
    rule("total", "<n:num> (ish)? (pitches)? total", claim_total),
    rule("44 when i came out", "(about)? <n:num> (ish)? (pitches)? exit", _came_out),
    rule("total before", f"total (of|colon|is|pitches|about)* <n:num> {_AFTER}", _pitches),
    rule(
        "finished at",
        f"finish (at|with|about|the|is|adv|colon|of|on|i|he)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule(
        "pulled in the 2nd at 39",
        f"finish (the)? (ord|ordword|word|innings)+ (at|on|with)+ <n:num> {_AFTER}",
        _pitches,
    ),
    rule(
        "used 50 of my 65", "threw <n:num> of <v:the|hisher> num (?! (fill|dash)* noun)", _of_limit
    ),
    rule("52 of em today", "<n:num> them (today|said_day)", _of_a_total),
    rule(
        "but i only did 8",
        "but (i|he|said_who)* adv* threw adv* <n:num> (?! (fill|dash)* (noun|percent))",
        _did_instead,
    ),
    rule(
        "threw",
        f"threw (about|adv|the|with|a|total|of|i|he|over|allof)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule("went 48", f"went (about|adv|the|a|allof)* <n:num> {_AFTER}", _went),
    rule("threw an easy 30", f"threw adv* a (adv)* (adj|goodadj)+ <n:num> {_AFTER}", _pitches),
    rule(
        "kind, number",
        f"kind"
        f" (of|colon|comma|dash|is|adv|about|at|the|with|newline|done|i|he|threw|today)*"
        f" <n:num> {_AFTER}",
        _pitches,
    ),
    rule(
        "in all",
        f"said_count (comma|dash|dot)* adv* is (adv|about|the|total)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule(
        "2 curves in game one and 5 in game two",
        "<c:said_count> (in|on|for)* said_label (and|comma|then)+ <n:num> (in|on|for)* said_label",
        _of_the_same,
    ),
    rule("number, game", "<n:num> (ish)? (in|the|of|for)* said_label", _pitches),
    rule(
        "game, number",
        f"said_label (colon|dash|with|threw|is|comma|about)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule(
        "number, kind",
        "<n:num> (ish)? (in|the|hisher|a|adj|at|adv|dash|of|for|good|i|on|with)*"
        " (bullpen|catch|live|game|warm|side)",
        _pitches,
    ),
    rule("number alone", "(^|dot|newline|stop) <n:num> (dot|newline|stop|$)", _alone),
    rule(
        "48 thrown",
        "(^|comma|dot|said_who|said_vs) <n:num> threw (?= comma|dot|newline|$)",
        _thrown,
    ),
    rule("number each", "<n:num> (ish)? each", _each),
    rule(
        "the count was 62",
        "countword (on|for|of|said_who|said_day|is|at|colon|total|the|word|about|he|shouldbe)*"
        " <n:num>"
        f" {_AFTER}",
        _pitches,
    ),
    rule(
        "name, number",
        f"said_who (threw|went|with|at|is|about|colon|dash|dot|adv|had|for|to|a|the|relieved)*"
        f" <n:num> {_AFTER}",
        _pitches,
    ),
    rule("me 30", f"(i|he) (with|had|at|colon|dash)* <n:num> {_AFTER}", _own_after_others),
    rule("name (number)", "said_who open <n:num> close", _pitches),
    rule(
        "number for a name",
        "<n:num> (ish)? (for|of)? (the)? said_who (?! (colon|dash)* (num|said_count))",
        _pitches,
    ),
    rule(
        "number on a day",
        "(^|comma|newline|semi|dot|and|said_who|threw|kind|colon|dash) (about)? <n:num> (ish)?"
        " (in|for|the|of)* said_day",
        _pitches,
    ),
    rule(
        "only 14 today, flat ground",
        "^ (adv|about)* <n:num> (ish)? said_day (comma|dash)? (in|the|a|adv|adj)* kind",
        _pitches,
    ),
    rule("the 22 she threw", "(the|with)+ <n:num> (pitches)? (i|he) threw", _pitches),
    rule("I have 58 for tonight", "i had (adv|about)* <n:num> for (said_day|said_who)", _pitches),
    rule("34 in 1 inning", "<n:num> (ish)? (in|over) (the)? <c:said_count>", _beside_innings),
    rule(
        "Leo 3 ip 48", f"(?<=said_who) <c:said_count> said_count* <n:num> {_AFTER}", _beside_innings
    ),
    rule("today was 70", f"said_day is (about|adv)* <n:num> {_AFTER}", _pitches),
    rule(
        "threw a side today 25",
        f"(threw|had) (the|hisher|a)* side (said_day|comma|colon|about)* <n:num> {_AFTER}",
        _pitches,
    ),
    rule("mon 30 w 6 curves", "said_day <n:num> with (about)* said_count", _pitches),
    rule("mon 20, wed 25", f"said_day (colon|dash)* <n:num> {_AFTER}", _on_days),
    rule(
        "number, breakdown",
        "<n:num> (ish)? (with|open|colon|dash|comma|and|adv)+ (about|adv|the)* said_count",
        _pitches,
    ),
    rule(
        "outs on so many",
        f"said_count (in|on|of|with|threw|about|adv|for|a|the)+ <n:num> {_AFTER}",
        _pitches,
    ),
    rule("number against", "<n:num> (ish)? (in|on|the|adv)* said_vs", _pitches),
    rule(
        "everyone", f"everyone (threw|with|at|is|about|colon|dash|adv)* <n:num> {_AFTER}", _pitches
    ),
)
