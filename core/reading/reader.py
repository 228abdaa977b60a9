"""Read one line: tokens, items, claims, entries."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Literal

from core.reading.account import Accounted, account
from core.reading.addresses import claim_addresses
from core.reading.ahead import days_of_plans
from core.reading.assemble import assemble
from core.reading.bare import BARE_RULES
from core.reading.board import Board, run
from core.reading.clauses import mark_clauses
from core.reading.conclude import conclude
from core.reading.corrections import CORRECTION_RULES
from core.reading.counts import COUNT_RULES
from core.reading.days import DAY_RULES
from core.reading.doubts import doubts
from core.reading.draft import quote
from core.reading.effort import EFFORT_RULES
from core.reading.ellipsis import ELLIPSIS_RULES
from core.reading.entry import Entry, Reading, Unread, UnreadReason
from core.reading.far_doubts import far_doubts
from core.reading.in_order import LIST_RULES
from core.reading.innings import INNINGS_RULES, read_catchers
from core.reading.items import itemize
from core.reading.kinds import KIND_RULES, LABEL_RULES
from core.reading.languages import tell_language
from core.reading.leftovers import account_parts, leftovers
from core.reading.lexicon import lexicon
from core.reading.limits import AVAILABLE_RULES, LIMIT_RULES
from core.reading.neighbours import tell_apart
from core.reading.nolog import CLOCK_RULES, NO_LOG_RULES
from core.reading.pain import read_pain
from core.reading.pairing import pair_counts
from core.reading.people import name_people
from core.reading.put_right import PUT_RIGHT_RULES
from core.reading.rivals import join_rivals
from core.reading.running import RUNNING_RULES
from core.reading.shares import SHARE_RULES
from core.reading.starred import put_right
from core.reading.strikes import STRIKE_RULES
from core.reading.tables import read_tables
from core.reading.talk import claim_talk, talk_scopes
from core.reading.tokens import Form, Token, tokenize

LONGEST_LINE = 4000  # characters
MOST_TOKENS = 1200  # 4,000 characters of words are some 900
MOST_NUMBERS = 150  # a staff of twenty fills about a hundred
_NUMBERS = frozenset({Form.NUMBER, Form.RATIO, Form.PERCENT, Form.CLOCK, Form.ORDINAL})
# Before plain counts are paired with their nouns: all that a number can be besides, surest first.
BEFORE_COUNTS = (
    *CORRECTION_RULES,
    *PUT_RIGHT_RULES,
    *LABEL_RULES,
    *NO_LOG_RULES,
    *EFFORT_RULES,
    *DAY_RULES,
    *RUNNING_RULES,
    *STRIKE_RULES,
    *SHARE_RULES,
    *LIST_RULES,
    *COUNT_RULES,
    *INNINGS_RULES,
)
# And after: numbers that stand where a count would stand, and what kind of throwing it was.
AFTER_COUNTS = (*ELLIPSIS_RULES, *BARE_RULES, *CLOCK_RULES, *KIND_RULES)


def read(
    text: str,
    posted: datetime,
    author: Literal["pitcher", "coach", "guardian"] = "pitcher",
    *,
    roster: Sequence[str] = (),
    lang: Literal["en", "es"] | None = None,
) -> Reading:
    """Read one typed line. `posted` is local wall-clock time. Never raises on any text."""
    return _work_through(text, posted, author, roster, lang)[0]


def explain(
    text: str,
    posted: datetime,
    author: Literal["pitcher", "coach", "guardian"] = "pitcher",
    *,
    roster: Sequence[str] = (),
    lang: Literal["en", "es"] | None = None,
) -> tuple[Reading, tuple[Accounted, ...]]:
    """A reading, and what became of each number of the line."""
    reading, board = _work_through(text, posted, author, roster, lang)
    return reading, account(board) if board is not None else ()


def _work_through(
    text: str, posted: datetime, author: str, roster: Sequence[str], lang: str | None
) -> tuple[Reading, Board | None]:
    """The reading and the board worked through; no board when the line is too long."""
    if len(text) > LONGEST_LINE:
        return Reading((), (Unread(text, UnreadReason.TOO_LONG),), lang or "en"), None
    tokens = tokenize(text)
    if "*" in text:
        tokens = put_right(tokens)
    spoken = lang or tell_language(tokens)
    if len(tokens) > MOST_NUMBERS and _is_too_much(tokens):
        return Reading((), (Unread(text, UnreadReason.TOO_LONG),), spoken), None
    board = lay_out(text, tokens, posted, author, roster, spoken)
    return _conclude(board, posted, spoken), board


def _is_too_much(tokens: list[Token]) -> bool:
    numbers = sum(token.form in _NUMBERS for token in tokens)
    return numbers > MOST_NUMBERS or len(tokens) > MOST_TOKENS


def _conclude(board: Board, posted: datetime, lang: str) -> Reading:
    """Claims to drafts, drafts to entries, and what is left over to questions."""
    drafts, unread = assemble(board)
    account_parts(board, drafts)
    concluded = [conclude(draft, posted.date(), quote(board, draft)) for draft in drafts]
    unread += [one for conclusion in concluded for one in conclusion.unread]
    concluded = [one for one in concluded if one.entry.says_something()]
    if not concluded:
        unread = [one for one in unread if one.reason is not UnreadReason.UNCLEAR_DAY]
    unread += leftovers(board, something_logged=bool(concluded or unread))
    entries = [one.entry for one in concluded]
    if not unread:
        unread = doubts(board, entries) + far_doubts(board, entries)
    if any(one.reason is UnreadReason.UNCLEAR_PAIN for one in unread):
        entries = [_without_doubt(entry, alone=len(entries) == 1) for entry in entries]
    return Reading(tuple(one for one in entries if one.says_something()), tuple(unread), lang)


def _without_doubt(entry: Entry, *, alone: bool) -> Entry:
    """As in "he says 0 but holds his elbow": while pain is unclear, nobody is said to have none.

    With several persons in the line the question is about one of them.
    """
    doubted = entry.pain == () and (alone or entry.who is None)
    return replace(entry, pain=None) if doubted else entry


def lay_out(
    text: str, tokens: list[Token], posted: datetime, author: str, roster: Sequence[str], lang: str
) -> Board:
    """Lay a line's items on a board and run every recogniser over it, surest first."""
    names = tuple(name.casefold() for name in roster)
    items = itemize(tokens, lexicon(lang))
    join_rivals(items, lang, names)
    tell_apart(items)
    board = Board(text, items, posted, author, names, lang)
    mark_clauses(board)
    read_tables(board)
    claim_addresses(board)
    name_people(board)
    run(board, AVAILABLE_RULES)
    scopes = talk_scopes(board)
    read_pain(board, scopes)
    run(board, LIMIT_RULES)
    claim_talk(board, scopes)
    run(board, BEFORE_COUNTS)
    pair_counts(board)
    days_of_plans(board)
    read_catchers(board)
    board.look_again()
    run(board, AFTER_COUNTS)
    return board


__all__ = ["explain", "lay_out", "read"]
