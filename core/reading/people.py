"""Whom a line is about: names, mentions, the whole roster."""

from core.reading.board import Board
from core.reading.entry import UnreadReason
from core.reading.groups import FIELDS, NOUNS, TYPES
from core.reading.lexicon import lexicon
from core.reading.tokens import fold
from core.reading.vocabulary import given_names

_NO_SUBJECT_AFTER = frozenset(
    {"vs", "title", "with", "to", "at", "win", "into", "of", "over", "other", "place", "said_vs"}
)
_OPENS_A_RECORD = frozenset(
    {"num", "colon", "dash", "threw", "went", "had", "is", "none", "pct", "bullpen", "catch",
     "live", "game", "off", "restday", "with", "about", "catching", "feels", "a", "adv", "open",
     "finish", "warm", "ratio", "notpitched", "notthrown", "vague", "site", "said_day", "frac",
     "running", "each", "both", "through", "after", "sore", "tired", "side", "modal", "today",
     "yesterday", "weekday", "sat", "pain", "nopain", "innings", "pitches", "curve", "last",
     "said_vs", "vs", "of", "gamelike", "idiom", "faced", "at"}
)  # fmt: skip
# After the first word of a sentence these show that it was no name ("Congrats on the win").
_NO_RECORD = frozenset(
    {"word", "on", "into", "to", "of", "at", "stop", "question", "the", "hisher", "i", "he", "for",
     "comma", "them", "plan", "is_"}
)  # fmt: skip
_PLAIN_RECORD = frozenset({"num", "colon", "dash", "threw", "went", "pitches"})
OWN = "(the author)"
_LONGEST_NAME = 3  # words
_LONGEST_OPPONENT = 4
_SKIPPED = {"vs": ("the", "a", "colon", "dot"), "at": ("the",), "win": ("the",), "over": ("the",)}


def name_people(board: Board) -> None:
    """Claim names as "who", names of opponents as "opponent", and the whole roster."""
    _list_numbers(board)
    _opponents(board)
    _everyone(board)
    at = 0
    while at < len(board.items):
        size = _name_at(board, at) if board.free(at) else 0
        if size and _is_subject(board, at):
            board.claim(at, at + size, "who", as_typed(board, at, at + size))
        at += max(size, 1)
    if board.author != "pitcher":
        _unlisted(board)
    if any(claim.key == "who" for claim in board.claims):
        _oneself(board)


def _unlisted(board: Board) -> None:
    """A word that nobody knows, in an adult's line, right before a count: "brycen 45p".

    Beside other names, or twice in a line, it is a name; alone it is asked about.
    """
    found = [at for at in range(len(board.items) - 2) if _unknown_before_count(board, at)]
    sure = len(found) > 1 or any(claim.key == "who" for claim in board.claims)
    for at in found:
        if sure:
            board.claim(at, at + 1, "who", as_typed(board, at, at + 1))
        else:
            board.unread(at, at + 1, UnreadReason.UNCLEAR_PERSON)


def _unknown_before_count(board: Board, at: int) -> bool:
    item = board.items[at]
    if item.symbol != "word" or not board.free(at) or not (at == 0 or _opens_piece(board, at)):
        return False
    number = at + 2 if board.items[at + 1].symbol in ("colon", "dash") else at + 1
    counts = number + 1 < len(board.items) and board.items[number].symbol == "num"
    return (
        counts
        and board.items[number + 1].symbol in FIELDS
        and item.name.isalpha()
        and not lexicon(board.lang).knows(item.name)
        and _unknown(item.name)
    )


def _oneself(board: Board) -> None:
    """Beside others, "i threw 40" and "me 40" are the author's own."""
    for at, item in enumerate(board.items[:-1]):
        if item.symbol == "i" and board.free(at) and board.items[at + 1].symbol in _PLAIN_RECORD:
            board.claim(at, at + 1, "who", OWN)


def as_typed(board: Board, first: int, after: int) -> str:
    """The name without a possessive ending."""
    quote = board.quote(first, after)
    return quote[:-2] if quote.lower().endswith(("'s", "’s")) else quote


def _name_at(board: Board, at: int) -> int:
    """How many items from here on are a name (0: none)."""
    item = board.items[at]
    if item.symbol == "mention":
        return 1
    if not item.text[:1].isalpha():
        return 0
    listed = _listed(board, at)
    if listed:
        return listed if item.symbol == "word" or _double_meaning_is_name(board, at) else 0
    capital = item.text[:1].isupper() and not _is_abbreviation(board, at)
    given = _bare(item.name) in given_names()
    if item.symbol != "word":
        return 1 if given and _double_meaning_is_name(board, at) else 0
    if given or (capital and _unknown(_bare(item.name))):
        return _with_surname(board, at) if _fits(board, at, given=given) else 0
    return 0


def _is_abbreviation(board: Board, at: int) -> bool:
    """Capitals throughout; in a line typed all in capitals they mean nothing."""
    text = board.items[at].text
    if board.text.isupper():
        return lexicon(board.lang).knows(board.items[at].name)
    return text.isupper() and len(text) > 1 and "." not in text


def _fits(board: Board, at: int, *, given: bool) -> bool:
    """Whether a word that can be a name is one here. A pitcher seldom logs for anybody else."""
    if _logged_for(board, at):
        return True
    if board.text.isupper() and not given:
        return _opens_piece(board, at) and _record_next(board, at + 1)
    if board.author == "pitcher":
        return given and at + 1 < len(board.items) and board.items[at + 1].symbol in _PLAIN_RECORD
    if _opens(board, at) and not given and board.items[at].name.endswith(("ing", "ed", "ly")):
        return False
    alone = at + 1 < len(board.items) and board.items[at + 1].symbol in ("dot", "newline")
    if given or alone or not _opens(board, at):
        return True
    return at + 1 < len(board.items) and board.items[at + 1].symbol not in _NO_RECORD


def _bare(norm: str) -> str:
    return norm.removesuffix("'s")


def _logged_for(board: Board, at: int) -> bool:
    """As in "for Marcus", "logging for Marcus"."""
    return at > 0 and board.items[at - 1].symbol == "for"


def _double_meaning_is_name(board: Board, at: int) -> bool:
    """A word that also means something else ("Will", "max", "Chase") is a name before a record."""
    if _listed(board, at) and _opens_piece(board, at) and not board.items[at].text[:1].isupper():
        return True
    if board.items[at].text[:1].isupper():
        if board.items[at].symbol == "month" and at + 1 < len(board.items):
            return _noun_follows(board, at + 2) or board.items[at + 1].symbol in _RECORD_VERBS
        if _logged_for(board, at) or _ends_list(board, at) or _sentence_about(board, at):
            return True
        return _record_next(board, at + 1)
    return _opens_piece(board, at) and _counts_ahead(board, at + 1) > 1


_RECORD_VERBS = frozenset({"threw", "went", "finish", "gamelike", "colon", "had", "then"})


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
        and _opens_piece(board, at)
        and at + 1 < len(board.items)
        and board.items[at + 1].symbol == "word"
    )


def _opens_piece(board: Board, at: int) -> bool:
    return at == 0 or board.piece[at] != board.piece[at - 1] or board.items[at - 1].symbol == "and"


def _counts_ahead(board: Board, at: int) -> int:
    """Numbers in the rest of the piece, when the first stands right here: "max 30p 4cb 2ip"."""
    if at >= len(board.items) or board.items[at].symbol != "num":
        return 0
    return sum(
        board.items[i].symbol == "num" and board.piece[i] == board.piece[at]
        for i in range(at, min(at + 12, len(board.items)))
    )


def _record_next(board: Board, at: int) -> bool:
    return at < len(board.items) and (
        board.items[at].symbol in _OPENS_A_RECORD
        or board.items[at].symbol in ("comma", "and", "for")
    )


def _opens(board: Board, at: int) -> bool:
    """Whether the word opens a sentence, where every word has a capital."""
    return at == 0 or board.sentence[at] != board.sentence[at - 1]


def _with_surname(board: Board, at: int) -> int:
    """Items of a name: with its second half ("Kayden-James"), surname or initial ("Leo S")."""
    following = board.items[at + 1] if at + 1 < len(board.items) else None
    if following is None or not following.text[:1].isalpha():
        return 1
    if board.text[board.items[at].end : following.start] == "-":
        return 2
    if len(following.text) == 1 and following.symbol in ("word", "plural", "radar"):
        return 2 if _record_next(board, at + 2) or _is_mark(board, at + 2) else 1
    if following.symbol != "word" or not following.text[:1].isupper():
        return 1
    if following.text.isupper():
        return 1  # "Leo LP": an abbreviation, no surname
    return 2 if _unknown(following.name) and following.name not in given_names() else 1


def _is_mark(board: Board, at: int) -> bool:
    return at < len(board.items) and board.items[at].symbol == "dot"


def _unknown(norm: str) -> bool:
    return not any(norm in lexicon(lang).everyday for lang in ("en", "es"))


def _listed(board: Board, at: int) -> int:
    """Size of the roster name that begins here; the longest wins."""
    if (
        not board.roster
        or _bare(fold(board.items[at].text.split(" ")[0])) not in board.roster_starts
    ):
        return 0
    for size in range(min(_LONGEST_NAME, len(board.items) - at), 0, -1):
        if as_typed(board, at, at + size).casefold() in board.roster:
            return size
    return 0


def _is_subject(board: Board, at: int) -> bool:
    before = board.items[at - 1].symbol if at else ""
    if before == "of" and board.items[at].text.endswith(("'s", "’s")):
        return True  # "a third of Malik's 48"
    if board.lang == "es" and board.author != "pitcher" and before in ("to", "of"):
        return True  # "a Nico le duele", "el bullpen de Kelvin"
    if before == "at" and board.items[at - 1].text == "@" and board.items[at].tight:
        return True  # "@leo"
    return before not in _NO_SUBJECT_AFTER or (before == "place" and _listed(board, at) > 0)


def _list_numbers(board: Board) -> None:
    """As in "1." and "2)" at the start of a line."""
    for at, item in enumerate(board.items[:-1]):
        opens = at == 0 or board.items[at - 1].symbol in ("newline", "semi")
        if opens and item.symbol == "num" and board.items[at + 1].symbol in ("dot", "close"):
            board.no_log(at, at + 2, "list number")


def _opponents(board: Board) -> None:
    """As in "vs Gravel Hogs": the words after "vs", up to a mark, number or trade word."""
    for at, item in enumerate(board.items):
        if not board.free(at) or item.symbol not in ("vs", "at", "win", "over"):
            continue
        first = at + 1
        while first < len(board.items) and board.items[first].symbol in _SKIPPED[item.symbol]:
            first += 1
        after = first + (_numbered_name(board, first) if item.symbol == "vs" else 0)
        last = min(len(board.items), first + _LONGEST_OPPONENT)
        while after < last and (
            _opponent_word(board, after, item.symbol) or _joins_words(board, first, after)
        ):
            if _starts_record(board, after):
                break
            after += 1
        if after > first:
            board.claim(at, after, "opponent")


def _numbered_name(board: Board, at: int) -> int:
    """As in "vs Siete Robles": a number in words before a word is part of the name."""
    pair = board.items[at : at + 2]
    if len(pair) < 2 or pair[1].symbol != "word":
        return 0
    return 1 if pair[0].symbol == "num" and not pair[0].digits else 0


def _opponent_word(board: Board, at: int, symbol: str) -> bool:
    item = board.items[at]
    capital = item.text[:1].isupper()
    if symbol == "vs":
        meant = capital and not board.text.isupper()
        return item.symbol == "word" or (meant and item.symbol not in ("newline", "mention"))
    return item.symbol == "word" and capital and not _listed(board, at)


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
    named = bool(_listed(board, at)) or _bare(board.items[at].name) in given_names()
    return named and follows in ("colon", "num", "dash", "went", "threw")


def _everyone(board: Board) -> None:
    for at, item in enumerate(board.items):
        if item.symbol == "everyone" and board.free(at) and not _of_type(board, at + 1):
            board.claim(at, at + 1, "who", "everyone")
        elif item.symbol == "everyoneelse" and board.free(at):
            board.claim(at, at + 1, "who", "everyone else")
        elif item.symbol == "except" and board.free(at):
            _left_out(board, at)


def _can_be_left_out(board: Board, at: int) -> bool:
    item = board.items[at]
    if item.symbol == "mention" or _bare(item.name) in given_names():
        return True
    after_comma = board.items[at - 1].symbol == "comma"
    return item.symbol == "word" and (item.text[:1].isupper() or not after_comma)


def _of_type(board: Board, at: int) -> bool:
    """As in "todos rectas": all of the pitches, not all of the pitchers."""
    return at < len(board.items) and board.items[at].symbol in TYPES


def _left_out(board: Board, at: int) -> None:
    names: list[str] = []
    after = at + 1
    while after < len(board.items):
        size = _listed(board, after) or int(_can_be_left_out(board, after))
        if size and not (names and board.items[after - 1].symbol not in ("and", "comma")):
            names.append(as_typed(board, after, after + size))
        elif board.items[after].symbol not in ("and", "comma"):
            break
        after += max(size, 1)
    if names:
        board.claim(at, after, "except", tuple(names))
