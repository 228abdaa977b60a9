"""Read one line: tokens, items, claims, entries."""

from collections.abc import Sequence
from datetime import datetime
from typing import Literal

from core.reading import counts, days, kinds, nolog, pain
from core.reading.assemble import drafts, entry
from core.reading.board import NO_LOG, Board, run
from core.reading.clauses import mark_clauses
from core.reading.entry import Entry, Reading, Unread, UnreadReason
from core.reading.items import itemize
from core.reading.languages import tell_language
from core.reading.lexicon import lexicon
from core.reading.people import name_people
from core.reading.talk import claim_talk
from core.reading.tokens import Token, tokenize

LONGEST_LINE = 4000


def read(
    text: str,
    posted: datetime,
    author: Literal["pitcher", "coach", "guardian"] = "pitcher",
    *,
    roster: Sequence[str] = (),
    lang: Literal["en", "es"] | None = None,
) -> Reading:
    """Read one typed line. `posted` is local wall-clock time. Never raises on any text."""
    if len(text) > LONGEST_LINE:
        return Reading((), (Unread(text, UnreadReason.TOO_LONG),), lang or "en")
    tokens = tokenize(text)
    spoken = lang or tell_language(tokens)
    board = read_board(text, tokens, posted, author, roster, spoken)
    found, unread = drafts(board)
    entries: list[Entry] = []
    for draft in found:
        made, more = entry(draft, posted.date())
        entries.append(made)
        unread.extend(more)
    if entries or unread:
        unread.extend(
            Unread(board.items[at].text, UnreadReason.UNKNOWN_NUMBER)
            for at in board.free_numbers()
            if board.items[at].symbol not in ("ord", "clock")
        )
    return Reading(tuple(entries), tuple(unread), spoken)


def read_board(
    text: str, tokens: list[Token], posted: datetime, author: str, roster: Sequence[str], lang: str
) -> Board:
    """Lay out a line and run every rule over it."""
    items = itemize(tokens, lexicon(lang))
    board = Board(text, items, posted, author, tuple(roster), lang)
    mark_clauses(board)
    pain.read_pain(board)
    run(board, pain.PAIN_RULES)
    name_people(board)
    run(board, nolog.LIMIT_RULES)
    claim_talk(board)
    run(board, counts.CORRECTION_RULES)
    run(board, nolog.NO_LOG_RULES)
    run(board, days.DAY_RULES)
    run(board, counts.EFFORT_RULES)
    run(board, counts.INNINGS_RULES)
    run(board, counts.COUNT_RULES)
    run(board, nolog.CLOCK_RULES)
    run(board, kinds.KIND_RULES)
    return board


__all__ = ["NO_LOG", "read"]
