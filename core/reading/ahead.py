"""Throwing to come: how far a plan reaches over verbs, and where the line comes back from it."""

from core.reading.board import COUNTS, NO_LOG, Board
from core.reading.clauses import span
from core.reading.groups import FIELDS, NOUNS

_PRESENT = "now"  # how the vocabulary names the verbs "throws", "lanza"
_RESTING = frozenset({"off", "rest", "restday", "notthrown", "none"})
_NEXT_TIME = frozenset({"again", "next", "resume", "resumes"})
_SUBJECTS = frozenset({"i", "he", "is", "adv", "word", "weekday", "sat"})


def present_on_a_weekday(board: Board) -> list[int]:
    """Verbs as in "el viernes tira 30": the last Friday, or the next?"""
    if not board.has("weekday", "sat"):
        return []
    return [
        at
        for at, item in enumerate(board.items)
        if item.name == _PRESENT
        and item.symbol != "pitches"  # "tue and thu 35 throws each"
        and any(board.items[i].symbol in ("weekday", "sat") for i in range(*span(board.clause, at)))
    ]


def is_to_throw(board: Board, at: int, place: int) -> bool:
    """As in "next week throwing 40", "next week im throwing 40", "if i threw 60": not thrown."""
    going = board.items[place].text.lower().endswith("ing") and board.items[at].symbol == "plan"
    going = going or board.items[at].text.lower() == "if"
    between = board.items[at + 1 : place]
    return not between or (going and all(i.symbol in _SUBJECTS for i in between))


def opens_going(board: Board, start: int, place: int, at: int) -> bool:
    """As in "throwing 40 next week", "im throwing 40 tomorrow": of what is to come."""
    going = board.items[place].text.lower().endswith("ing") and board.items[at].symbol == "plan"
    before = board.items[start:place]
    return going and all(i.symbol in _SUBJECTS and i.text.lower() != "was" for i in before)


def comes_back(board: Board, at: int, clause: int) -> bool:
    """As in "pen tomorrow, 40 pitches today", "off tomorrow, 40p 5cb": what was thrown."""
    first, after = span(board.clause, at)
    rests = any(item.symbol in _RESTING for item in board.items[first:after])
    start, end = span(board.clause, clause)
    today = any(item.symbol == "today" for item in board.items[start:end])
    return today or (rests and counts_between(board, start, end) > 0)


def stays_small(board: Board, place: int) -> bool:
    """As in "doubleheader tmrw so just light catch, 15 throws": what was done instead, today."""
    following = board.items[place : place + 2]
    so_only = [item.text.lower() for item in following] in (["so", "just"], ["so", "only"])
    _, end = span(board.sentence, place)
    return so_only and board.author == "pitcher" and counts_between(board, place, end) > 0


def days_of_plans(board: Board) -> None:
    """As in "35 throws. scrimmage sat, supposed to go 2 inn", "25 pitches. Again Friday.".

    The day of a sentence that plans and counts nothing is none of the outing before it.
    """
    days = [claim for claim in board.claims if claim.key == "day"]
    if all(board.sentence[claim.first] == 0 for claim in days):
        return
    counted = {board.sentence[c.first] for c in board.claims if c.key in COUNTS}
    counted |= {board.sentence[i] for i, item in enumerate(board.items) if item.symbol in FIELDS
                and board.free(i)}  # fmt: skip
    for claim in days:
        here = board.sentence[claim.first]
        if here in counted or not any(one < here for one in counted):
            continue
        first, after = span(board.sentence, claim.first)
        planned = any(
            c.key == NO_LOG and c.value == "plan" and first <= c.first < after for c in board.claims
        )
        words = {item.text.lower() for item in board.items[first:after] if item.text[0].isalpha()}
        words -= set(board.quote(claim.first, claim.after).lower().split())
        if planned or (words and words <= _NEXT_TIME):
            claim.key, claim.value = NO_LOG, "day ahead"


def counts_between(board: Board, start: int, at: int) -> int:
    """How many counts stand there: "45 pitches 9 cb hopefully more next time" is a log."""
    return sum(
        board.items[i].symbol == "num" and board.items[i + 1].symbol in NOUNS
        for i in range(start, at - 1)
    )


__all__ = [
    "comes_back",
    "counts_between",
    "days_of_plans",
    "is_to_throw",
    "opens_going",
    "present_on_a_weekday",
]
