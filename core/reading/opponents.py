"""Whom a game was against."""

from core.reading.board import Board
from core.reading.groups import FIELDS
from core.reading.items import NUMERIC
from core.reading.lexicon import lexicon
from core.reading.roster import bare, is_known, listed
from core.reading.vocabulary import given_names

_LONGEST_OPPONENT = 4  # words
_LONGEST_CODE = 3  # letters
_OPENS_A_TEAM = frozenset({"num", "adj", "goodadj", "gamelike", "thing", "stat", "road", "place"})
_SKIPPED = {
    "vs": ("the", "a", "colon", "dot"),
    "at": ("the",),
    "win": ("the",),
    "over": ("the",),
    "faced": ("the",),
}


def name_opponents(board: Board) -> None:
    """As in "vs Gravel Hogs": the words after "vs", up to a mark, number or trade word."""
    if board.has("dash"):
        _closing(board)
    if board.has("game"):
        _before_game(board)
    if not board.has(*_SKIPPED):
        return
    for at, item in enumerate(board.items):
        if not board.free(at) or item.symbol not in _SKIPPED:
            continue
        first = at + 1
        while first < len(board.items) and board.items[first].symbol in _SKIPPED[item.symbol]:
            first += 1
        said_to = item.text.lower() == "al" and first < len(board.items)
        if said_to and is_known(board, board.items[first].name):
            continue  # "al Leo le duele"
        after = first + (_numbered_name(board, first) if item.symbol == "vs" else 0)
        last = min(len(board.items), first + _LONGEST_OPPONENT)
        while after < last and (
            _opponent_word(board, after, item.symbol) or _joins_words(board, first, after)
        ):
            if _starts_record(board, after):
                break
            after += 1
        if item.symbol == "vs" and board.symbol_is(first, "them"):
            after = first + 1  # "41 p vs them"
        if after > first:
            board.claim(at, after, "opponent")


def _numbered_name(board: Board, at: int) -> int:
    """As in "vs Siete Robles", "vs cerro azul": a word of the trade is part of the name."""
    pair = board.items[at : at + 2]
    if len(pair) < 2 or pair[1].symbol != "word" or not pair[0].text[:1].isalpha():
        return 0
    return 1 if pair[0].symbol in _OPENS_A_TEAM and not pair[0].digits else 0


def _opponent_word(board: Board, at: int, symbol: str) -> bool:
    item = board.items[at]
    capital = item.text[:1].isupper()
    if symbol == "vs" and item.symbol == "num" and item.text.isalpha() and at > 0:
        follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
        if board.items[at - 1].symbol == "word" and follows in ("", "comma", "dot", "newline"):
            return True  # "vs bayou nine"
    if symbol == "vs":
        meant = capital and not board.text.isupper()
        return item.symbol in ("word", "road") or (
            (meant or _is_slip(board, at)) and item.symbol not in ("newline", "mention")
        )
    short = symbol == "at" and item.text.isupper() and len(item.text) <= _LONGEST_CODE  # "at PE"
    return item.symbol == "word" and capital and not short and not listed(board, at)


def _is_slip(board: Board, at: int) -> bool:
    """As in "vs summit": no word of the trade, only near one ("submit")."""
    item = board.items[at]
    known = item.symbol in NUMERIC or lexicon(board.lang).is_phrase(item.name)
    return item.name.isalpha() and not known


def _joins_words(board: Board, first: int, at: int) -> bool:
    """As in "Lomas del Viento": a small word between two capitals."""
    return (
        at > first
        and at + 1 < len(board.items)
        and board.items[at].symbol in ("of", "the", "and")
        and board.items[at + 1].symbol == "word"
        and board.items[at + 1].text[:1].isupper()
    )


def _starts_record(board: Board, at: int) -> bool:
    """As in "vs Brine Flats Milo: 21": the name that a record begins with is no opponent."""
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    named = bool(listed(board, at)) or bare(board.items[at].name) in given_names()
    return named and follows in ("colon", "num", "dash", "went", "threw")


def _before_game(board: Board) -> None:
    """As in "Copper Ridge game. he had 70": two capitals that are nobody's name."""
    for at in range(2, len(board.items)):
        name = board.items[at - 2 : at]
        opens = at == 2 or board.sentence[at - 3] != board.sentence[at - 2]
        words = all(item.symbol == "word" and item.text[:1].isupper() for item in name)
        if not (opens and words and board.items[at].symbol == "game") or board.text.isupper():
            continue
        if not any(is_known(board, item.name) for item in name):
            board.claim(at - 2, at, "opponent")


def _closing(board: Board) -> None:
    """As in "Milo - 2 innings - 33 pitches - Tin Roosters": a team after the last dash."""
    dashes = [i for i, item in enumerate(board.items) if item.symbol == "dash" and not item.tight]
    if len(dashes) < 2 or not board.has(*FIELDS):
        return
    first = dashes[-1] + 1
    name = board.items[first:]
    words = all(item.symbol == "word" and item.text[:1].isupper() for item in name)
    if 2 <= len(name) <= _LONGEST_OPPONENT and words and not is_known(board, name[0].name):
        board.claim(first, len(board.items), "opponent")
