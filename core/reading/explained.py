"""The account of the words: beside counts, every word is known to be harmless, or is asked about.

The rules claim what they understand. What they leave in a clause that counts is looked at here: a
mark or a small word between claims is harmless, and so is a word of the table of fillers ("dude",
"windy"). A word that may change a count ("other", "than", "twice"), and a word that nobody knows,
are asked about: they may well mean something.
"""

from core.reading.board import COUNTS, Board
from core.reading.clauses import span
from core.reading.entry import Unread, UnreadReason
from core.reading.fillers import is_filler
from core.reading.items import NUMERIC
from core.reading.lexicon import MOST_SLIPS, Lexicon, lexicon
from core.reading.records import done_for
from core.reading.relatives import is_when
from core.reading.roster import is_known
from core.reading.talk import asks_to_log, goes_somewhere
from core.reading.vocabulary import harmless_symbols

_COUNTED = frozenset({*COUNTS, "range", "parts", "share", "running", "book", "forstrikes", "off"})


def unexplained(board: Board) -> list[Unread]:
    """Words in a clause that counts which no rule claimed and which may mean something."""
    words = lexicon(board.lang)
    if not words.fillers:
        return []
    few = _few_unknown(board, words)
    counted = {board.clause[claim.after - 1] for claim in board.claims if claim.key in _COUNTED}
    counted -= {board.clause[claim.first] for claim in board.claims if claim.value == "corrected"}
    return [
        Unread(_with_neighbours(board, at), UnreadReason.UNKNOWN_WORD)
        for at, item in enumerate(board.items)
        if board.free(at)
        and (
            not _is_harmless(board, words, at, few=few)
            if board.clause[at] in counted
            else few and _is_slip(board, words, at)
        )
    ]


def _is_slip(board: Board, words: Lexicon, at: int) -> bool:
    """Whether an unknown word is one slip away from a number or a word of the trade.

    In "bullpen ligero, veinticincco, 5 cambios" it stands in a clause of its own.
    """
    item = board.items[at]
    unknown = item.symbol == "word" and item.text[:1].islower() and not words.knows(item.name)
    return unknown and not is_filler(words, item.name) and words.near_trade(item.name)


def _few_unknown(board: Board, words: Lexicon) -> bool:
    """Whether so few words are unknown that each is looked up: a foreign text would take long."""
    unknown = {
        item.name
        for at, item in enumerate(board.items)
        if item.symbol == "word" and board.free(at) and not words.knows(item.name)
    }
    return len(unknown) <= MOST_SLIPS


def _with_neighbours(board: Board, at: int) -> str:
    first, after = span(board.clause, at)
    return board.quote(max(first, at - 1), min(after, at + 2))


def _is_harmless(board: Board, words: Lexicon, at: int, *, few: bool) -> bool:
    item = board.items[at]
    if item.symbol == "finger":
        return False  # "41p 5c 3s"
    if item.symbol in harmless_symbols() or not item.text[0].isalpha():
        return True
    if item.name == "they" and at + 1 < len(board.items):
        return board.items[at + 1].symbol == "word" and is_filler(words, board.items[at + 1].name)
    if item.symbol == "word":
        if item.name == "twice" and board.symbol_is(at + 1, "colon"):
            return True  # "pitched twice: fri 31p, sat 22p"
        if item.name == "they" and board.symbol_is(at + 1, "hit"):
            return True  # "they hit everything"
        return (
            is_filler(words, item.name, slips=few) or _is_company(board, at) or _is_team(board, at)
        )
    if item.symbol == "skipped":  # "cut the pen at 18 pitches"
        return item.text.lower() == "cut" or item.text.lower().startswith("rain")
    if item.symbol == "speed":  # "effort:80%"
        return board.symbol_is(at + 1, "colon")
    if item.symbol == "hit":  # "they hit everything"
        return at + 1 == len(board.items) or board.items[at + 1].symbol not in NUMERIC
    if item.symbol in ("over", "radar"):  # "26 pitches over 2 innings", "hit 71 mph"
        return at + 1 < len(board.items) and not board.free(at + 1)
    if item.symbol in ("modal", "plan"):
        return asks_to_log(board, at) or goes_somewhere(board, at) or is_when(board, at)
    if item.symbol == "about":
        return not any(c.key in COUNTS for c in board.claims if at < c.first <= at + 2)
    if item.symbol == "or":
        return any(claim.key == "day" and claim.after == at for claim in board.claims)
    if item.symbol == "ours":
        return _heads_names(board, at)
    if item.symbol == "guess":
        return "guess" not in item.text.lower()  # "thought I did good, 45p"
    if item.symbol == "mixedpitch":
        return _leads_counts(board, at)
    if item.symbol == "none":
        pitches = board.items[at + 1 : at + 2]
        thrown = bool(pitches) and pitches[0].symbol == "pitches" and _since(board, at + 2)
        return (
            thrown
            or _answers(board, at)
            or any(c.key == "off" and c.first == at + 1 for c in board.claims)
        )
    if item.symbol == "forstrikes":
        return not any(c.key in COUNTS and at - 4 < c.after <= at for c in board.claims)
    if item.symbol == "combined":
        by_inning = any(c.key == "running" for c in board.claims)  # "53 all together"
        return by_inning and any(c.key == "pitches" and c.after == at for c in board.claims)
    if item.symbol == "correction":
        before, after = board.items[:at], board.items[at + 1 :]
        return not all(any(one.value is not None for one in side) for side in (before, after))
    if item.symbol == "nothing" and _since(board, at + 1):
        return True
    return item.symbol == "nothing" and not _counts_follow(board, at)


def _since(board: Board, at: int) -> bool:
    """As in "nothing since Sunday when he threw 44", "no pitches since"."""
    return at < len(board.items) and board.items[at].text.lower() == "since"


def _answers(board: Board, at: int) -> bool:
    """As in "and no his arm does not hurt": a "no" by itself before a sentence of its own."""
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    told = any(c.key in ("nopain", "tired") and c.first > at for c in board.claims)
    return board.items[at].text.lower() == "no" and follows in ("hisher", "he", "i") and told


def _leads_counts(board: Board, at: int) -> bool:
    """As in "offspeed was 8 curves 6 changeups"."""
    following = board.items[at + 1 : at + 2]
    return bool(following) and following[0].symbol in ("is", "colon", "dash")


def _heads_names(board: Board, at: int) -> bool:
    """As in "twins update: Leif 33 pitches, ...": a heading over those who are named."""
    _, after = span(board.clause, at)
    colon = next((i for i in range(at, after) if board.items[i].symbol in ("colon", "dash")), after)
    unnumbered = not any(item.value is not None for item in board.items[at:colon])
    names = {claim.first for claim in board.claims if claim.key == "who"}
    if at + 1 in names:
        return True  # "my boys Arlo and Finn"
    return unnumbered and not names.isdisjoint((colon + 1, colon + 2))


def _is_company(board: Board, at: int) -> bool:
    """As in "lesson w coach Pete", "catch w jonah", "catch con el Chuy", "hi its Dom"."""
    before = board.items[at - 1].symbol if at else ""
    if done_for(board, at):
        return True
    if [item.symbol for item in board.items[max(0, at - 2) : at]] == ["with", "the"]:
        return board.items[at].text[:1].isupper()
    if before == "is":
        return at + 1 < len(board.items) and board.items[at + 1].symbol == "i"
    return before == "title" or (before == "with" and _can_be_somebody(board, at))


def _can_be_somebody(board: Board, at: int) -> bool:
    """As in "catch w jonah", "flat ground w jp": a name, or two or three letters of one."""
    name = board.items[at].name
    initials = name.isalpha() and len(name) in (2, 3) and not lexicon(board.lang).knows(name)
    return is_known(board, name) or initials


def _is_team(board: Board, at: int) -> bool:
    """As in "lost to ridgeview 70p", "ridgeview game: 70", "70p 4ip Ridgeview" of the author."""
    if lexicon(board.lang).knows(board.items[at].name):
        return False
    before = [item.symbol for item in board.items[max(0, at - 2) : at]]
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    if before[-1:] == ["to"] and board.items[at].text[:1].isupper() and board.has("win"):
        return True  # "lost 9-1 to Summit"
    if before[-1:] == ["win"] or before == ["win", "to"] or follows == "game":
        return True
    first, after = span(board.sentence, at)
    pitched = board.author == "pitcher" and any(claim.key == "outs" for claim in board.claims)
    return pitched and board.items[at].text[:1].isupper() and at in (first, after - 1)


def _counts_follow(board: Board, at: int) -> bool:
    """As in "wasn't 40 pitches"; "wasn't sharp" denies no count."""
    clause = board.clause[at]
    beside = [item.symbol for item in board.items[at + 1 : at + 3]]
    if board.lang == "es" and not NUMERIC & set(beside) and beside[:1] != ["threw"]:
        return False  # "no tiene celular: 30 pitcheos"
    return any(c.first > at and board.clause[c.after - 1] == clause for c in board.claims)
