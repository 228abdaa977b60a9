"""Whom a line is about: names, mentions, the whole roster."""

from core.reading.board import Board
from core.reading.double_meanings import double_meaning_is_name, is_nickname
from core.reading.entry import UnreadReason
from core.reading.everyone import forget_everyone, name_everyone, name_playmate
from core.reading.groups import FIELDS, KINDS
from core.reading.items import NUMERIC
from core.reading.lexicon import lexicon
from core.reading.opponents import name_opponents
from core.reading.records import (
    PLAIN_RECORD,
    counts_ahead,
    done_for,
    logged_for,
    opens_piece,
    record_next,
)
from core.reading.roster import as_typed, bare, is_known, is_plain_word, listed
from core.reading.tables import claim_list_numbers
from core.reading.vocabulary import given_names, nicknames

_NO_SUBJECT_AFTER = frozenset(
    {
        "vs",
        "title",
        "with",
        "to",
        "at",
        "win",
        "into",
        "of",
        "over",
        "other",
        "place",
        "said_vs",
        "relieved",
    }
)
# After the first word of a sentence these show that it was no name ("Congrats on the win").
_NO_RECORD = frozenset(
    {"word", "dot", "on", "into", "to", "of", "at", "stop", "question", "the", "hisher", "i", "he",
     "for", "comma", "them", "plan", "is_"}
)  # fmt: skip
_NO_NAMES = NUMERIC | frozenset(
    {"comma", "dot", "colon", "dash", "open", "close", "slash", "stop", "question", "semi", "plus",
     "newline", "mark", "pitches", "curve", "innings", "arrow", "quote", "star", "askmark"}
)  # fmt: skip
_OUR = frozenset({"my", "our", "mi", "nuestro", "nuestra"})
OWN_CIRCLE = ("my ", "his ", "her ", "mi ", "su ")
OWN = "(the author)"
_RELATIVES = frozenset(
    {"brother", "bro", "sister", "sis", "dad", "mom", "cousin", "twin", "friend", "buddy",
     "teammate", "catcher", "coach", "uncle", "nephew"}
)  # fmt: skip
_ARM = frozenset({"site", "pain", "sore"})
_COMPANY = frozenset({"relieved", "for", "after", "to", "with"})


def name_people(board: Board) -> None:
    """Claim names as "who", names of opponents as "opponent", and the whole roster."""
    if board.has("dot", "close"):
        claim_list_numbers(board)
    name_opponents(board)
    if board.has("everyone", "everyoneelse", "except", "all"):
        name_everyone(board)
    after = 0
    for at, item in enumerate(board.items):
        if at < after or item.symbol in _NO_NAMES or not board.free(at):
            continue
        if is_plain_word(board, at):
            continue
        size = _name_at(board, at)
        if size and _is_subject(board, at):
            _claim_name(board, at, size)
        after = at + size
    if board.author == "guardian" and not any(claim.key == "who" for claim in board.claims):
        name_playmate(board)
    if board.has("site"):
        _others_arms(board)
    if board.author != "pitcher":
        _unlisted(board)
    if board.has("everyone"):
        forget_everyone(board)
    if any(claim.key == "who" for claim in board.claims):
        _oneself(board)


def _claim_name(board: Board, at: int, size: int) -> None:
    """Claim a name, with "my brother" before it; "Leo's brother" is somebody unnamed."""
    after = at + size
    possessive = as_typed(board, at, after) != board.quote(at, after)
    acts = board.items[after + 1].symbol if after + 1 < len(board.items) else ""
    relative = after < len(board.items) and board.items[after].text.lower() in _RELATIVES
    if possessive and relative and acts in (*PLAIN_RECORD, *_ARM, "had"):
        board.unread(at, after + 1, UnreadReason.UNCLEAR_PERSON)
        return
    name = as_typed(board, at, after)
    if board.items[at].symbol == "word" and not is_known(board, board.items[at].name):
        name = name.removesuffix("s") if _is_plain_possessive(board, at) else name
    company = at > 0 and board.symbol_is(at - 1, "other")
    board.claim(at - 1 if company else at, after, "who", name)


def _others_arms(board: Board) -> None:
    """As in "jayden's elbow hurts", "his arm hurts" typed by a pitcher: whose arm?"""
    named = any(claim.key == "who" for claim in board.claims)
    for at, item in enumerate(board.items[:-1]):
        if board.items[at + 1].symbol != "site" or not board.free(at):
            continue
        possessive = item.symbol == "word" and item.text.lower().endswith(("'s", "’s"))
        his = item.symbol == "hisher" and board.author == "pitcher" and not named
        common = possessive and lexicon(board.lang).knows(bare(item.name))
        if (possessive and not common) or ((his or common) and board.has("pain", "sore")):
            board.unread(at, at + 1, UnreadReason.UNCLEAR_PERSON)


def _unlisted(board: Board) -> None:
    """A word that nobody knows, in an adult's line, right before a count: "brycen 45p".

    Beside other names, or twice in a line, it is a name; alone it is asked about.
    """
    for at in range(len(board.items) - 1):
        if _filler_as_name(board, at):
            board.unread(at, at + 1, UnreadReason.UNCLEAR_PERSON)
    found = [at for at in range(len(board.items) - 2) if _unknown_before_count(board, at)]
    sure = len(found) > 1 or any(claim.key == "who" for claim in board.claims)
    for at in found:
        if sure:
            board.claim(at, at + 1, "who", as_typed(board, at, at + 1))
        else:
            board.unread(at, at + 1, UnreadReason.UNCLEAR_PERSON)


def _filler_as_name(board: Board, at: int) -> bool:
    """As in "Shaky 2 inn 30 pitches": how it went, or a nickname?"""
    item = board.items[at]
    return (
        item.symbol == "word"
        and item.text[:1].isupper()
        and not item.text.isupper()
        and board.free(at)
        and board.symbol_is(at + 1, "num")
        and counts_ahead(board, at + 1) > 0
        and any(i.symbol in FIELDS for i in board.items[at + 2 : at + 3])
        and opens_piece(board, at)
        and item.name in lexicon(board.lang).fillers
        and not is_known(board, item.name)
    )


def _unknown_before_count(board: Board, at: int) -> bool:
    item = board.items[at]
    if item.symbol != "word" or not board.free(at):
        return False
    headed = at > 0 and board.items[at - 1].symbol in ("colon", "dash", "slash")
    if not (at == 0 or headed or opens_piece(board, at)):
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
        company = at > 0 and board.items[at - 1].symbol in _COMPANY
        if item.symbol != "i" or not board.free(at) or company:
            continue
        beside = (
            board.author == "pitcher"
            and board.items[at + 1].symbol == "and"
            and any(claim.key == "who" and claim.first == at + 2 for claim in board.claims)
        )
        before = at > 1 and board.items[at - 1].symbol == "and" and not board.free(at - 2)
        before = before and board.author == "pitcher"  # "Leo and I played catch"
        if board.items[at + 1].symbol in PLAIN_RECORD or beside or before:
            board.claim(at, at + 1, "who", OWN)


def _name_at(board: Board, at: int) -> int:
    """How many items from here on are a name (0: none)."""
    item = board.items[at]
    if item.symbol == "mention":
        return 1
    if _is_spanish_verb(board, at):
        return 0
    size = listed(board, at)
    if len(item.text) == 1 and not size:
        return 0
    if size:
        return size if item.symbol == "word" or double_meaning_is_name(board, at) else 0
    if is_nickname(board, at):
        return 1
    given = is_known(board, item.name) or _is_plain_possessive(board, at)
    given = given and (item.text[:1].isupper() or item.name not in _plain_words(board.lang))
    if item.symbol != "word":
        return 1 if given and double_meaning_is_name(board, at) else 0
    capital = item.text[:1].isupper() and not _is_abbreviation(board, at)
    if _filler_as_name(board, at):
        return 0
    if given or (capital and _unknown(bare(item.name))):
        return _with_surname(board, at) if _fits(board, at, given=given) else 0
    return 0


def _plain_words(lang: str) -> frozenset[str]:
    """Spanish words that are names too only with a capital: "van 45 lanzamientos"."""
    return lexicon(lang).everyday if lang == "es" else frozenset()


def _is_spanish_verb(board: Board, at: int) -> bool:
    """As in "lance 3 innings": a Spanish line's "lance" is Lance only by the team's list."""
    if board.lang != "es" or board.items[at].symbol != "threw":
        return False
    capital = board.items[at].text[:1].isupper()
    return not (capital and board.author != "pitcher" and listed(board, at))


def _is_abbreviation(board: Board, at: int) -> bool:
    """Capitals throughout; in a line typed all in capitals they mean nothing."""
    text = board.items[at].text
    if board.text.isupper():
        return lexicon(board.lang).knows(board.items[at].name)
    return text.isupper() and len(text) > 1 and "." not in text


def _fits(board: Board, at: int, *, given: bool) -> bool:
    """Whether a word that can be a name is one here. A pitcher seldom logs for anybody else."""
    if logged_for(board, at):
        return True
    if board.text.isupper() and not given:
        return opens_piece(board, at) and record_next(board, at + 1)
    if at > 0 and board.items[at - 1].symbol == "other":
        return True  # "my brother Teo"
    follows = _after_initial(board, at)
    if board.author == "pitcher":
        if given and at == 0 and _has_it_logged(board, at + 1):
            return True
        told = follows in PLAIN_RECORD or follows in _ARM or _and_i(board, at)
        told = told or (board.lang == "es" and _hurts(board, at))
        return told if given else follows in ("threw", "went") and board.items[at].name.isalpha()
    if not given and _is_plain_filler(board, at):
        one = at + 1 < len(board.items) and board.items[at + 1].name == "one"
        return follows in (*PLAIN_RECORD, "ratio") and not one
    ending = board.items[at].name.endswith(("ing", "ed", "ly"))
    if _opens(board, at) and not given and ending:
        return follows in ("threw", "went", "colon")
    alone = at + 2 < len(board.items) and board.items[at + 1].symbol in ("dot", "newline")
    if follows == "comma" and (counts_ahead(board, at + 2) or _day_and_counts(board, at + 2)):
        return True  # "Rafe, 5 innings, 71 pitches", "Rafe, Saturday, 48 pitches"
    if given or alone or not _opens(board, at):
        return True
    return at + 1 < len(board.items) and board.items[at + 1].symbol not in _NO_RECORD


def _is_plain_filler(board: Board, at: int) -> bool:
    """As in "thank God", "Biggest one went 180 feet"; in "Mundo 45p" a count follows."""
    name = bare(board.items[at].name)
    if name not in lexicon(board.lang).fillers or name in nicknames():
        return False
    return not (at + 1 < len(board.items) and board.items[at + 1].text[:1].isupper())


def _has_it_logged(board: Board, at: int) -> bool:
    """As in "Marcus forgot to log, he threw 51", "Chase asked me to put his in: 27p"."""
    words = [item.text.lower() for item in board.items[at : at + 2]]
    return words[:1] == ["forgot"] or words in (["asked", "me"], ["wants", "me"], ["needs", "me"])


def _hurts(board: Board, at: int) -> bool:
    """As in "a Nico le duele": pain is told right after the name."""
    return any(item.symbol in _ARM for item in board.items[at + 1 : at + 3])


def _and_i(board: Board, at: int) -> bool:
    """As in "Leo and i each threw 20"."""
    return [item.symbol for item in board.items[at + 1 : at + 3]] == ["and", "i"]


def _after_initial(board: Board, at: int) -> str:
    """The symbol after a name, past an initial ("Sam O threw")."""
    following = board.items[at + 1 : at + 3]
    if len(following) == 2 and len(following[0].text) == 1 and following[0].text.isupper():
        return following[1].symbol
    return following[0].symbol if following else ""


def _is_plain_possessive(board: Board, at: int) -> bool:
    """As in "leos elbow": a name with the s of possession and no apostrophe."""
    name = board.items[at].name
    arm = at + 1 < len(board.items) and board.items[at + 1].symbol == "site"
    return arm and name.endswith("s") and len(name) > 3 and is_known(board, name[:-1])


def _day_and_counts(board: Board, at: int) -> bool:
    """As in "Saturday, 48 pitches", "bullpen, 20 pitches", from here on."""
    days_and_kinds = {"weekday", "sat", "today", "yesterday", *KINDS}
    if at >= len(board.items) or board.items[at].symbol not in days_and_kinds:
        return False
    comma = at + 1 < len(board.items) and board.items[at + 1].symbol == "comma"
    return counts_ahead(board, at + 2 if comma else at + 1) > 0


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
    if len(following.text) == 1 and _is_initial(board, at):
        return 2 if record_next(board, at + 2) or _is_mark(board, at + 2) else 1
    if following.symbol != "word" or not following.text[:1].isupper():
        return 1
    if following.text.isupper():
        return 1  # "Leo LP": an abbreviation, no surname
    return 2 if _unknown(following.name) and following.name not in given_names() else 1


def _is_initial(board: Board, at: int) -> bool:
    """Whether the letter after a name is an initial; "P" and "S" count, "N" may join."""
    following = board.items[at + 1]
    start = f"{board.items[at].text} {following.text}".casefold()
    rostered = any(name.startswith(start) for name in board.roster)
    joins = following.symbol == "and" and following.text == "N"
    return rostered or joins or following.symbol in ("word", "plural", "radar", "letterc")


def _is_mark(board: Board, at: int) -> bool:
    return at < len(board.items) and board.items[at].symbol == "dot"


def _unknown(norm: str) -> bool:
    return not any(norm in lexicon(lang).everyday for lang in ("en", "es"))


def _is_thing(board: Board, before: int) -> bool:
    """As in "by the grace of", "left his mark", "worth every penny"; "my leo threw" is Leo."""
    word = board.items[before]
    article = word.symbol in ("the", "hisher", "a") or word.text.lower() == "every"
    return article and word.text.lower() not in _OUR


def _is_subject(board: Board, at: int) -> bool:
    before = board.items[at - 1].symbol if at else ""
    if at and board.items[at].text.islower() and _is_thing(board, at - 1):
        return False
    if before in ("the", "painidiom") and board.symbol_is(at + 1, "game") and not listed(board, at):
        return False  # "left the Tillman game"
    if done_for(board, at):
        return False
    if before == "the" and at > 1 and board.items[at - 2].symbol == "with":
        return False  # "catch con el Chuy"
    if (
        before == "dot"
        and at > 2
        and [i.symbol for i in board.items[at - 3 : at - 1]]
        == [
            "with",
            "title",
        ]
    ):
        return False  # "a lesson with Mr. Kemp"
    if before == "from" and not is_known(board, board.items[at].name):
        return False  # "final from Copper Hill"
    if before == "other" and board.items[at - 1].text.lower().startswith(OWN_CIRCLE):
        return at < 2 or board.items[at - 2].symbol != "with"  # "my brother Teo" tells of Teo
    if before == "of" and board.items[at].text.endswith(("'s", "’s")):
        return True  # "a third of Malik's 48"
    told_of = board.lang == "es" and (
        board.author != "pitcher" or _hurts(board, at) or logged_for(board, at)
    )
    if told_of and (before in ("to", "of") or board.items[at - 1].text.lower() == "al"):
        return True  # "a Nico le duele", "el bullpen de Kelvin"
    if before == "at" and board.items[at - 1].text == "@" and board.items[at].tight:
        return True  # "@leo"
    return before not in _NO_SUBJECT_AFTER or (before == "place" and listed(board, at) > 0)
