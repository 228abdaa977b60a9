"""What no rule explained, and must be asked about: the last line of defence against silence."""

from itertools import pairwise

from core.reading.board import COUNTS, NO_LOG, Board
from core.reading.clauses import span
from core.reading.draft import Draft
from core.reading.entry import Unread, UnreadReason
from core.reading.explained import unexplained
from core.reading.groups import FIELDS
from core.reading.innings import has_thirds
from core.reading.items import NUMERIC
from core.reading.lexicon import lexicon
from core.reading.loose_sites import unexplained_sites
from core.reading.vocabulary import given_names

_HARMLESS = frozenset({"ord", "clock", "money", "isodate"})  # innings, times, prices, dates
_TELLS = frozenset({"about", "ish", "threw", "went", "finish", "running", "tired"})
# With one of these a line that seems to be talk is talk.
_SURELY_TALK = frozenset(
    {"plan", "ask", "question", "weekday", "sat", "clock", "other", "spectacle", "joke", "limit",
     "heading", "over", "pastref"}
)  # fmt: skip
_HYPOTHETIC = (
    "i'd",
    "id ",
    "if",
    "would",
    "woulda",
    "wish",
    "want",
    "wanna",
    "will",
    "wont",
    "won't",
    "let",
    "cleared",
)
FEWEST_SAID_AGAIN = 15  # pitches: a smaller number may be anything
_LONGEST_CODE = 3  # letters: "32r", "5cam"
_BARE_SIGNS = frozenset(
    {"correction", "nothing", "yesterday", "daybefore", "weekday", "sat", "adj"}
)
_BARE_WORDS = _BARE_SIGNS | {"is", "about", "adv", "and", "today", "i", "total", "the", "then"}
_SUBJECTS = frozenset(
    {"i", "he", "threw", "went", "finish", "today", "yesterday", "weekday", "mention", "word",
     "bullpen", "catch", "live", "game", "gamelike", "vs"}
)  # fmt: skip
_PRACTICE = frozenset({"bullpen", "catch", "live"})


def account_parts(board: Board, drafts: list[Draft]) -> None:
    """Numbers that add up to a stated pitch count are its parts, inning by inning."""
    numbers = board.free_numbers()
    for at in numbers:
        if _said_again(board, at):
            board.no_log(at, at + 1, "said again")
    if not numbers:
        return
    ends = [draft.claims[0].first for draft in drafts[1:] if draft.claims] + [len(board.items)]
    for draft, end in zip(drafts, ends, strict=False):
        total = draft.counts.get("pitches")
        start = draft.claims[0].first if len(drafts) > 1 and draft.claims else 0
        loose = [
            at
            for at in board.free_numbers()
            if board.items[at].symbol == "num" and start <= at < end
        ]
        values = [board.whole(at) for at in loose] + _running_counts(board)
        if total is not None and loose and len(values) > 1 and sum(v or 0 for v in values) == total:
            for at in loose:
                board.no_log(at, at + 1, "by inning")


def _running_counts(board: Board) -> list[int | None]:
    """The counts in "20 in the 1st", told inning by inning."""
    return [board.whole(claim.first) for claim in board.claims if claim.key == "running"]


def leftovers(board: Board, *, something_logged: bool) -> list[Unread]:
    """Numbers, sites and questions that nothing explains. A line of plain talk leaves none."""
    found = [
        _number(board, at)
        for at in _loose_numbers(board)
        if something_logged or _smells_of_log(board, at)
    ]
    if something_logged:
        found += _asked_counts(board) if board.has("question") else []
        found += _counts_after_talk(board)
    if board.has("joke"):
        found += _corrected_joke(board)
    if board.has("site"):
        found += unexplained_sites(board)
    if board.has("catching"):
        found += _pitched_or_caught(board)
    if something_logged:
        found += _perhaps_a_name(board)
        found += unexplained(board)
    if not something_logged and not found:
        found += _uncounted_outing(board) + _counts_of_an_earlier_day(board)
        found += _perhaps_no_talk(board)
    return found + _unknown_amounts(board) if board.has("pitches") else found


def _said_again(board: Board, at: int) -> bool:
    """As in "it was 58 not 85, Leo 58 pitches", "dad counted 55, I counted 55"."""
    value = board.whole(at)
    if board.items[at].symbol == "num" and any(
        c.key == "book" and c.value == value and not c.weak for c in board.claims
    ):
        return True  # "coach counted 54, she says 54"
    same = any(c.key == "pitches" and c.value == value for c in board.claims)
    if same and (value or 0) >= FEWEST_SAID_AGAIN and _is_counted(board, at):
        return not any(claim.key == "who" for claim in board.claims)  # it may be another's
    return same and any(
        c.value == "corrected" and board.sentence[c.first] == board.sentence[at]
        for c in board.claims
    )


def _is_counted(board: Board, at: int) -> bool:
    """As in "I counted 55", "the book says 55", "so 55 it is": nobody else is named."""
    before = {item.symbol for item in board.items[max(0, at - 3) : at]}
    return bool(before & {"book", "threw", "countword", "about", "is", "modal", "i"}) or (
        board.items[at - 1].symbol == "adv" if at else False
    )


def _number(board: Board, at: int) -> Unread:
    return Unread(board.quote(at, at + 1), UnreadReason.UNKNOWN_NUMBER)


def _loose_numbers(board: Board) -> list[int]:
    praise = [
        at
        for at, item in enumerate(board.items if board.has("good") else ())
        if item.symbol == "good" and item.text.isdigit() and board.free(at)
    ]  # "100": not of the arm, then a number like any other
    return praise + [
        at
        for at in board.free_numbers()
        if board.items[at].symbol not in _HARMLESS and board.items[at].name not in ("one", "1/2")
    ]


def _smells_of_log(board: Board, at: int) -> bool:
    """Whether an unexplained number stands in a sentence that counts pitches or tells a kind."""
    first, after = span(board.sentence, at)
    nouns = any(
        board.free(i) and board.items[i].symbol in FIELDS and board.items[i].symbol != "outs"
        for i in range(first, after)
    )
    kinds = any(
        first <= claim.first < after
        and (claim.key == "openkind" or (claim.key == "kind" and claim.value in _PRACTICE))
        for claim in board.claims
    )
    number = board.whole(at)
    named = any(claim.key == "who" and claim.after in (at, at - 1) for claim in board.claims)
    corrected = any(c.value == "corrected" and first <= c.first < after for c in board.claims)
    contrast = any(board.items[i].symbol == "but" for i in range(max(first, at - 4), at))
    if corrected or contrast or (at and board.items[at - 1].symbol == "correction"):
        return True
    if number is not None and number >= 10 and any(map(has_thirds, board.items[first:after])):
        return True
    counted = board.has(*FIELDS)
    them = at + 1 < after and board.symbol_is(at + 1, "them")
    of_them = them and (counted or "pitches" in board.items[at + 1].text)
    bare = all(i.symbol not in ("word",) and not i.name.isalpha() for i in board.items[first:after])
    bare = bare or _is_all_but_bare(board, at, first, after)
    if any(board.symbol_is(i, "countword") for i in range(first, after)):
        return True
    told = any(board.free(i) and board.items[i].symbol in _TELLS for i in range(first, after))
    if told and board.items[at].symbol == "num" and number is not None and number >= 10:
        return True
    return nouns or kinds or of_them or bare or (named and board.items[at].symbol in NUMERIC)


def _is_all_but_bare(board: Board, at: int, first: int, after: int) -> bool:
    """As in "ayer 50 hoy 20", "no, fueron 40", "32r 8c": small words, days and letters alone."""
    number = board.whole(at)
    before = board.items[at - 1].symbol if at > first else ""
    if board.items[at].symbol != "num" or number is None or (before == "is" and number < 20):
        return False
    letters = [
        i
        for i in range(first + 1, after)
        if board.items[i].tight and board.items[i - 1].symbol == "num"
        and len(board.items[i].text) <= _LONGEST_CODE
    ]  # fmt: skip
    told = any(board.items[i].symbol in _BARE_SIGNS for i in range(first, after))
    plain = all(
        not board.items[i].name.isalpha() or board.items[i].symbol in _BARE_WORDS or i in letters
        for i in range(first, after)
    )
    return plain and (len(letters) > 1 or (told and number >= 10))


def _asked_counts(board: Board) -> list[Unread]:
    """Counts in a clause that ends in "?": told, or asked?"""
    found = []
    for at, item in enumerate(board.items):
        if item.symbol != "question" or not board.free(at):
            continue
        first, after = span(board.clause, at)
        counted = [c for c in board.claims if c.key in COUNTS and first <= c.first < after]
        if counted and not any(board.items[i].symbol == "logthis" for i in range(first, after)):
            found.append(Unread(board.quote(first, after), UnreadReason.TWO_READINGS))
    return found


def _corrected_joke(board: Board) -> list[Unread]:
    """As in "20 curves lol jk 10": a number right after the joke may be the true one."""
    found = []
    for at, item in enumerate(board.items):
        follows = [other.symbol for other in board.items[at + 1 : at + 4]]
        counted = any(one.symbol in FIELDS for one in board.items[:at])
        if item.symbol == "joke" and counted and "num" in follows:
            first, _ = span(board.sentence, at)
            found.append(
                Unread(board.quote(first, at + 2 + follows.index("num")), UnreadReason.TWO_READINGS)
            )
    return found


def _pitched_or_caught(board: Board) -> list[Unread]:
    """As in "caught the second game. six innings": innings after a word of catching."""
    caught = any(claim.key == "caught_outs" for claim in board.claims)
    words = [at for at in range(len(board.items)) if board.symbol_is(at, "catching")]
    return [
        Unread(board.quote(claim.first, claim.after), UnreadReason.TWO_READINGS)
        for claim in board.claims
        if claim.key == "outs" and not caught and words and words[0] < claim.first
    ]


def _perhaps_a_name(board: Board) -> list[Unread]:
    """As in "leo 45, max 30", "Will left early, 22 p": a word that may be a name too."""
    named = any(claim.key == "who" for claim in board.claims)
    return [
        Unread(board.quote(at, at + 1), UnreadReason.UNCLEAR_PERSON)
        for at, item in enumerate(board.items)
        if item.name in given_names()
        and (_is_limit_or_name(board, at) if named else _opens_with_name(board, at))
        and not any(c.key in ("who", "except") and c.first <= at < c.after for c in board.claims)
    ]


def _is_limit_or_name(board: Board, at: int) -> bool:
    starts = at > 0 and (
        board.piece[at] != board.piece[at - 1] or board.items[at - 1].symbol in ("and", "num")
    )
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    capped = at > 0 and board.items[at - 1].symbol == "num" and follows in ("for", "all", "today")
    return starts and board.items[at].symbol == "limit" and not capped  # "40 max for everyone"


def _opens_with_name(board: Board, at: int) -> bool:
    """A capital at the start of an adult's line, and a word that can be a name."""
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    return (
        at == 0
        and board.author != "pitcher"
        and board.items[at].text[:1].isupper()
        and board.free(at)
        and follows not in ("num", "colon", "is")
    )


def _unknown_amounts(board: Board) -> list[Unread]:
    """As in "fiftey pitches", "veintipico lanzamientos": a word that is no known number."""
    return [
        Unread(board.quote(at - 1, at + 1), UnreadReason.VAGUE)
        for at in range(1, len(board.items))
        if board.symbol_is(at, "pitches")
        and board.symbol_is(at - 1, "word")
        and board.items[at].text.lower().endswith("s")
        and not lexicon(board.lang).knows(board.items[at - 1].name)
    ]


def _is_own(board: Board, at: int) -> bool:
    """Whether the sentence tells of the author or of somebody named."""
    first, after = span(board.sentence, at)
    named = any(claim.key == "who" and first <= claim.first < after for claim in board.claims)
    return named or any(item.symbol == "i" for item in board.items[first:after])


def _counts_after_talk(board: Board) -> list[Unread]:
    """As in "their lefty threw 88. 35 curves": counts without a subject, right after talk that
    counted too, or that told of a pen to come.
    """
    found = []
    talk = {"someone else's": NUMERIC, "plan": frozenset({"bullpen", "game", "live", "catch"})}
    if not any(claim.key == NO_LOG and claim.value in talk for claim in board.claims):
        return []
    for sentence in sorted(set(board.sentence)):
        before = [c for c in board.claims if board.sentence[c.first] == sentence - 1]
        told = any(
            c.key == NO_LOG and board.items[c.first].symbol in talk.get(str(c.value), ())
            for c in before
        )
        watched = any(board.items[c.first].symbol == "spectacle" for c in before)
        counted = [
            c for c in board.claims if board.sentence[c.first] == sentence and c.key in COUNTS
        ]
        if watched and counted and not _is_own(board, counted[0].first):
            found.append(
                Unread(
                    board.quote(*span(board.sentence, counted[0].first)),
                    UnreadReason.UNCLEAR_PERSON,
                )
            )
        elif told and counted and not any(c.key in COUNTS for c in before):
            first, after = span(board.sentence, counted[0].first)
            if not any(item.symbol in _SUBJECTS for item in board.items[first:after]):
                found.append(Unread(board.quote(first, after), UnreadReason.TWO_READINGS))
    return found


def _uncounted_outing(board: Board) -> list[Unread]:
    """As in "threw a bullpen", and nothing else: how many?"""
    return [
        Unread(board.quote(claim.first, claim.after), UnreadReason.VAGUE)
        for claim in board.claims
        if claim.key == "kind"
        and claim.value in _PRACTICE
        and claim.first > 0
        and any(board.symbol_is(i, "threw") for i in range(max(0, claim.first - 3), claim.first))
    ]


def _counts_of_an_earlier_day(board: Board) -> list[Unread]:
    """As in "last week 40p 5cb 3ip": a log, but of which day?"""
    symbols = [item.symbol for item in board.items]
    counted = symbols[:2] == ["pastref", "num"] and symbols[2:3] and symbols[2] in FIELDS
    dated = board.has("pastref") and board.has("weekday", "sat", "yesterday")
    counted = counted or (dated and any(a == "num" and b in FIELDS for a, b in pairwise(symbols)))
    return [Unread(board.quote(0, len(symbols)), UnreadReason.UNCLEAR_DAY)] if counted else []


def _is_hypothetic(board: Board, at: int) -> bool:
    """As in "would throw 60", "could throw 200 pitches rn"; "could only throw 20" was done."""
    could = board.items[at].text.lower() == "could"
    if could:
        beside = board.items[max(0, at - 1) : at] + board.items[at + 1 : at + 2]
        return all(item.symbol != "adv" for item in beside)
    return board.items[at].text.lower().startswith(_HYPOTHETIC)


def _perhaps_no_talk(board: Board) -> list[Unread]:
    """As in "should be like 45 pitches", "2 days in a row 20 throws each": counts taken for talk
    by a word that may well stand in a log.
    """
    if board.has(*_SURELY_TALK):
        return []
    marked = any(
        (item.symbol == "modal" and not _is_hypothetic(board, at))
        or (item.text == "Will" and _planned(board, at) and not board.has("question"))
        or item.symbol == "shouldbe"
        or (item.symbol == "season" and item.text.lower() in ("in a row", "this week"))
        for at, item in enumerate(board.items)
    )
    return [
        Unread(board.quote(at, at + 2), UnreadReason.TWO_READINGS)
        for at in range(len(board.items) - 1)
        if marked and board.items[at].symbol == "num" and board.items[at + 1].symbol in FIELDS
    ]


def _planned(board: Board, at: int) -> bool:
    """Whether an adult's "Will" was taken for the verb of a plan."""
    plans = (c for c in board.claims if c.key == NO_LOG and c.value == "plan")
    return board.author != "pitcher" and any(c.first <= at < c.after for c in plans)
