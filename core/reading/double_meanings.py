"""Words that are names too: "Will", "Chance", "May", told apart by what stands beside them."""

from core.reading.board import Board
from core.reading.groups import KINDS, LAST_OF_MONTH, NOUNS
from core.reading.records import PLAIN_RECORD, counts_ahead, logged_for, opens_piece, record_next
from core.reading.roster import listed
from core.reading.vocabulary import nicknames

_DAYS = frozenset({"weekday", "sat", "month", "isodate", "ratio"})
_LEAD_TO_MONTHS = frozenset({"in", "into", "before", "from", "of", "on", "last", "for", "by"})
_RECORD_VERBS = frozenset({"threw", "went", "finish", "gamelike", "colon", "had", "then"})


def is_nickname(board: Board, at: int) -> bool:
    """As in "Chance 45p", "Cap threw 30" of an adult's line; "May 5: 30p" is a day."""
    item = board.items[at]
    if item.text.lower() not in nicknames() or board.author == "pitcher":
        return False
    if item.symbol == "month" and _acts(board, at):
        return True  # "JUNE THREW 26"
    if not item.text[:1].isupper():
        return False
    opens = opens_piece(board, at) or board.items[at - 1].symbol in ("colon", "dash")
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    if item.symbol == "month" and follows == "num":
        beside = any(
            c.key == "who" and board.items[c.first].symbol == "month" for c in board.claims
        )
        return beside or _noun_follows(board, at + 2) or (board.whole(at + 1) or 0) > LAST_OF_MONTH
    return opens and not board.text.isupper() and follows in (*PLAIN_RECORD, *KINDS, "colon", "had")


def _acts(board: Board, at: int) -> bool:
    """Whether a verb of throwing follows what no "in" or "since" leads."""
    before = board.items[at - 1].symbol if at else "newline"
    verb = at + 1 < len(board.items) and board.items[at + 1].symbol in ("threw", "went")
    return verb and before not in _LEAD_TO_MONTHS


def double_meaning_is_name(board: Board, at: int) -> bool:
    """A word that also means something else ("Will", "max", "Chase") is a name before a record."""
    if listed(board, at) and opens_piece(board, at) and not board.items[at].text[:1].isupper():
        return True
    if board.items[at].text[:1].isupper():
        if board.items[at].symbol == "month" and at + 1 < len(board.items):
            return _noun_follows(board, at + 2) or board.items[at + 1].symbol in _RECORD_VERBS
        if logged_for(board, at) or _ends_list(board, at) or _sentence_about(board, at):
            return True
        return record_next(board, at + 1) or _dated_next(board, at + 1)
    return opens_piece(board, at) and counts_ahead(board, at + 1) > 1


def _dated_next(board: Board, at: int) -> bool:
    """As in "Will on the 3rd: 4 ip", "Hunter on Saturday"."""
    symbols = [item.symbol for item in board.items[at : at + 3]]
    return symbols[:1] == ["on"] and bool({"ord", *_DAYS} & set(symbols[1:]))


def _noun_follows(board: Board, at: int) -> bool:
    return at < len(board.items) and board.items[at].symbol in NOUNS


def _ends_list(board: Board, at: int) -> bool:
    """As in "off: Leo, Max": the last of a list of names."""
    last = at + 1 == len(board.items) or board.items[at + 1].symbol in ("newline", "dot")
    named = any(claim.key == "who" for claim in board.claims)
    return last and named and at > 0 and board.items[at - 1].symbol in ("comma", "and")


def _sentence_about(board: Board, at: int) -> bool:
    """As in "Max shut down", at the start of a piece; "Will try" stays a plan."""
    return (
        board.author != "pitcher"
        and board.items[at].symbol != "modal"
        and opens_piece(board, at)
        and at + 1 < len(board.items)
        and board.items[at + 1].symbol == "word"
    )
