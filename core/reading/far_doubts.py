"""Doubts about what stands far from the counts: a day told for another reason, counts in talk.

The second look of `doubts`, for two faults that cost most: an outing on the wrong day ("25 p, way
better than tues"), and one that a word like "tomorrow" in another clause swallowed.
"""

from collections.abc import Sequence

from core.reading.ahead import present_on_a_weekday
from core.reading.board import COUNTS, NO_LOG, Board
from core.reading.clauses import span
from core.reading.entry import Entry, Unread, UnreadReason

_SWALLOWS = frozenset({"plan", "question", "earlier"})
_MARKERS = frozenset(
    {"plan", "modal", "ask", "other", "spectacle", "joke", "pastref", "question", "limit", "each"}
)
_OPENERS = frozenset({"is", "are", "am", "do", "does", "did"})
_CAPPED = frozenset(
    {"tops", "even", "back", "maybe", "prob", "probably", "prolly", "like", "maximo"}
)
_SPEAK_OF_THE_DAY = frozenset(
    {*COUNTS, "kind", "opponent", "who", "pain", "nopain", "label", "tired", "off", "range"}
)
_ACTS = frozenset({"threw", "went", "had", "logthis", "from", "gamelike"})
_OWN_WORDS = frozenset({"word", "i", "he", "cause"})


def far_doubts(board: Board, entries: Sequence[Entry]) -> list[Unread]:
    """Days and counts that may belong to something else than the outing; empty when none do."""
    found = _counts_in_talk(board)
    if any(entry.on is not None for entry in entries):
        found += _day_of_something_else(board)
    if any(claim.key == "gamesign" for claim in board.claims):
        found += _length_of_the_game(board, entries)
    return found


def _counts_in_talk(board: Board) -> list[Unread]:
    """As in "doubleheader tmrw so light catch, 15 throws": planned, or thrown?"""
    talk = {
        at
        for claim in board.claims
        if claim.key == NO_LOG and claim.value in _SWALLOWS
        for at in range(claim.first, claim.after)
    }
    if not talk:
        return []
    found = []
    ordered = set(present_on_a_weekday(board))  # "Friday every pitcher throws a 30 pitch pen"
    for at in range(len(board.items) - 1):
        counted = board.items[at].symbol == "num" and board.items[at + 1].symbol == "pitches"
        if not counted or at not in talk or at + 1 not in talk:
            continue
        first, after = span(board.clause, at)
        clause = board.items[first:after]
        marked = any(i.symbol in _MARKERS or i.text.lower() in _CAPPED for i in clause)
        marked = marked or not ordered.isdisjoint(range(first, after))
        if not marked and clause[0].name not in _OPENERS:
            found.append(Unread(board.quote(at, at + 2), UnreadReason.TWO_READINGS))
    return found


def _day_of_something_else(board: Board) -> list[Unread]:
    """As in "pen 25 p, way better than tues", "45 p 4 ip, i play again sat"."""
    found = []
    for claim in board.claims:
        first, after = span(board.clause, claim.first)
        if claim.key != "day" or first == 0 or claim.value == board.posted.date():
            continue
        keys = {c.key for c in board.claims if first <= c.first < after and c is not claim}
        loose = {board.items[i].symbol for i in range(first, after) if board.free(i)}
        if keys.isdisjoint(_SPEAK_OF_THE_DAY) and not loose & _ACTS and loose & _OWN_WORDS:
            found.append(Unread(board.quote(first, after), UnreadReason.UNCLEAR_DAY))
    return found


def _length_of_the_game(board: Board, entries: Sequence[Entry]) -> list[Unread]:
    """As in "won it, 9 innings": the author's, or the game's?"""
    return [
        Unread(board.text, UnreadReason.TWO_READINGS)
        for entry in entries
        if entry.outs is not None and entry.pitches is None and not entry.breaking
    ][:1]
