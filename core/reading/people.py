"""Whom a line is about: names, mentions, the whole roster."""

from core.reading.board import Board
from core.reading.lexicon import lexicon
from core.reading.vocabulary import given_names

_NOT_BEFORE_A_NAME = frozenset(
    {"vs", "title", "with", "to", "at", "win", "in", "of", "other", "place"}
)
_AFTER_A_NAME = frozenset(
    {"num", "colon", "dash", "threw", "went", "had", "is", "none", "newline", "comma", "and", "pct",
     "bullpen", "catch", "live", "game", "off", "restday", "with", "about", "catching", "site",
     "feels", "a", "only", "adv", "open", "close", "day", "today", "yesterday", "finish", "warm",
     "ratio", "notpitched", "notthrown", "side", "pitches", "for", "mention", "dot", "vague"}
)  # fmt: skip


def name_people(board: Board) -> None:
    """Claim names as "who", names of opponents as "opponent", and the whole roster."""
    _opponents(board)
    _everyone(board)
    for at in range(len(board.items)):
        size = _name_at(board, at) if board.free(at) else 0
        if size and _is_subject(board, at, size):
            board.claim(at, at + size, "who", _as_typed(board, at, at + size))


def _as_typed(board: Board, first: int, after: int) -> str:
    quote = board.quote(first, after)
    return quote[:-2] if quote.lower().endswith(("'s", "’s")) else quote


def _name_at(board: Board, at: int) -> int:
    """How many items from here on are a name (0: none)."""
    item = board.items[at]
    if item.symbol == "mention":
        return 1
    for size in (3, 2, 1):
        if at + size <= len(board.items) and _listed(board, at, size):
            return size
    bare = item.name.removesuffix("'s")
    capital = item.text[:1].isupper()
    if item.symbol == "word" and bare in given_names() and (capital or _counted_next(board, at)):
        return _with_surname(board, at)
    if capital and bare in given_names() and _counted_next(board, at):
        return 1
    if item.symbol == "word" and capital and board.author != "pitcher" and _unknown(bare):
        return _with_surname(board, at) if _counted_next(board, at) else 0
    return 0


def _with_surname(board: Board, at: int) -> int:
    after = at + 1
    following = board.items[after] if after < len(board.items) else None
    is_initial = (
        following is not None and following.symbol == "word" and following.text[:1].isupper()
    )
    return 2 if is_initial and _unknown(following.name if following else "") else 1


def _unknown(norm: str) -> bool:
    return norm not in lexicon("en").everyday and norm not in lexicon("es").everyday


def _listed(board: Board, at: int, size: int) -> bool:
    quote = _as_typed(board, at, at + size).casefold()
    return any(quote == name.casefold() for name in board.roster)


def _counted_next(board: Board, at: int) -> bool:
    nxt = board.items[at + 1].symbol if at + 1 < len(board.items) else "newline"
    return nxt in _AFTER_A_NAME or nxt == "word"


def _is_subject(board: Board, at: int, size: int) -> bool:
    before = board.items[at - 1].symbol if at else ""
    after = board.items[at + size].symbol if at + size < len(board.items) else ""
    return before not in _NOT_BEFORE_A_NAME and after != "question"


def _opponents(board: Board) -> None:
    """ "vs Gravel Hogs": the words after "vs", up to a mark, a number or a word of the trade."""
    for at, item in enumerate(board.items):
        if item.symbol != "vs" or not board.free(at):
            continue
        after = at + 1
        while after < len(board.items) and board.items[after].symbol in ("the", "a"):
            after += 1
        while after < len(board.items) and after < at + 5 and board.items[after].symbol == "word":
            after += 1
        if after > at + 1:
            board.claim(at, after, "opponent")


def _everyone(board: Board) -> None:
    for at, item in enumerate(board.items):
        if item.symbol == "everyone" and board.free(at):
            board.claim(at, at + 1, "who", "everyone")
        elif item.symbol == "except" and board.free(at):
            _left_out(board, at)


def _left_out(board: Board, at: int) -> None:
    names: list[str] = []
    after = at + 1
    while after < len(board.items) and board.items[after].symbol in (
        "word",
        "and",
        "comma",
        "mention",
    ):
        size = max(_name_at(board, after), 1)
        if board.items[after].symbol in ("word", "mention"):
            names.append(_as_typed(board, after, after + size))
        after += size
    if names:
        board.claim(at, after, "except", tuple(names))
