"""What a finished reading must explain before it is trusted: a second look, by other means.

The rules read what they know. Where a word is known in another sense than the one meant ("46
pitchers 8 curbs"), they read the rest of the line and say nothing. So each reading that asks
nothing is held against the line once more: a number that could be the missing pitch count, a name
that is nobody's in the entries, a kind or a day that one entry has and the entry beside it lacks.
Such a line is asked about.
"""

from collections.abc import Sequence
from itertools import pairwise

from core.reading.ahead import present_on_a_weekday
from core.reading.board import COUNTS, NO_LOG, Board, Claim
from core.reading.clauses import span
from core.reading.draft import PRACTICE
from core.reading.entry import Entry, Unread, UnreadReason
from core.reading.groups import KINDS
from core.reading.roster import is_known
from core.reading.vocabulary import given_names, nicknames

COUNT_OF_AN_OUTING = range(8, 121)  # pitches; common practice, no source
_TYPED = frozenset({"breaking", "curve", "slider", "changeup", "fastball", "strikes"})
_WHOLES = frozenset({"pitches", "range", "parts", "book", "share", "running"})
# What a number can be whatever stands beside it; any other no log may be a slip of the pen.
_SURE = frozenset(
    {"score", "clock time", "price", "radar", "corrected", "limit", "total", "plan", "question",
     "someone else's", "joke", "heading", "earlier", "by inning", "said again", "remaining",
     "batting line", "warm-up"}
)  # fmt: skip
_TOLD = frozenset({"nopain", "pain", "tired"})
_OUTINGS = frozenset({"kind", "off", "range", "share"})
_TALK = frozenset({"plan", "question", "someone else's", "joke", "heading", "earlier"})
_MEASURES = frozenset(
    {"min", "mins", "minute", "minutes", "hr", "hrs", "hour", "hours", "sec", "secs", "day",
     "days", "week", "weeks", "ft", "feet", "foot", "degrees", "mph", "yards"}
)  # fmt: skip
_LISTS = frozenset({"comma", "and", "colon", "dash", "newline", "dot", "semi", "off"})
_HAPPENED = frozenset({"threw", "finish", "went"})


def doubts(board: Board, entries: Sequence[Entry]) -> list[Unread]:
    """What speaks against a reading that asks nothing; empty when all is explained."""
    taken = {claim.value for claim in board.claims if claim.key == NO_LOG}
    if not entries:
        return _nothing_read(board, taken)
    keys = {claim.key for claim in board.claims}
    found: list[Unread] = []
    if not taken <= _SURE and keys & _TYPED:
        found += _number_for_the_count(board)
    if "plan" in taken or "question" in taken:
        found += _counted_in_a_plan(board)
    if "score" in taken or board.items[0].symbol == "ord":
        found += _opens_with_a_day(board)
    if board.has("twogames") and board.has("total") and len(entries) == 1 and entries[0].pitches:
        found.append(Unread(board.text, UnreadReason.TWO_READINGS))  # how many in which game?
    if "each" in keys and len(entries) == 1 and _days(board) > 1:
        found.append(Unread(board.text, UnreadReason.TWO_READINGS))  # of what is "each" one?
    if "kind" in keys:
        found += _kind_of_no_entry(board, entries)
        found += _uncounted_day(board, entries) if "day" in keys else []
    if board.has("question", "ask") and board.has("plan"):
        found += _listed_after_a_plan(board)
    if "nopain" in keys and board.has("insteadof"):
        found += _site_left_out(board)
    if "day" in keys and keys & _TOLD and len(entries) == 1:
        found += _fine_on_another_day(board)
    if "running" in keys and keys & _TYPED:
        found += _by_inning(board)
    if "day" in keys:
        found += _present_or_past(board)
    if board.has("season", "warm"):
        found += _totals_or_warming_up(board)
    if board.has("other"):
        found += _of_another(board)
    if "who" in keys and board.author != "pitcher":
        found += _nobody(board) + _named_afterwards(board)
    if board.author != "pitcher" and board.has("month"):
        found += _listed_months(board)
    if any(entry.kind in PRACTICE for entry in entries[:-1]):
        found += _kind_left_out(board, entries)
    return found


def _number_for_the_count(board: Board) -> list[Unread]:
    """As in "46 pitchers 8 curbs": no pitch count beside the types, and a number that fits."""
    return [
        Unread(board.quote(claim.first, claim.after), UnreadReason.UNKNOWN_NUMBER)
        for claim in board.claims
        if claim.key == NO_LOG
        and claim.value not in _SURE
        and any(_fits_count(board, at) for at in range(claim.first, claim.after))
        and _lacks_pitches(board, claim)
    ]


def _fits_count(board: Board, at: int) -> bool:
    follows = board.items[at + 1].name if at + 1 < len(board.items) else ""
    return (
        board.items[at].symbol == "num"
        and board.whole(at) in COUNT_OF_AN_OUTING
        and follows not in _MEASURES
    )


def _lacks_pitches(board: Board, claim: Claim) -> bool:
    sentence = board.sentence[claim.first]
    beside = {c.key for c in board.claims if board.sentence[c.first] == sentence}
    return bool(beside & _TYPED) and not beside & _WHOLES


def _counted_in_a_plan(board: Board) -> list[Unread]:
    """As in "gonna pen 30 today 5 cb": counts in the clause of a plan, with nothing thrown yet."""
    plans = [c for c in board.claims if c.key == NO_LOG and c.value in ("plan", "question")]
    return [
        Unread(board.quote(plan.first, claim.after), UnreadReason.TWO_READINGS)
        for plan in plans
        for claim in board.claims
        if claim.key in COUNTS
        and claim.first >= plan.after
        and board.clause[claim.first] == board.clause[plan.first]
        and not any(i.symbol in _HAPPENED for i in board.items[plan.after : claim.after])
    ][:1]


def _nothing_read(board: Board, talk: set[object]) -> list[Unread]:
    """As in "52 not counting warmups", "Leo and Kip split it. 45 and 30": no log at all?"""
    if talk & _TALK or not board.items:
        return []
    months = _months_out_of_order(board) if board.author != "pitcher" else []
    if months:
        return months
    scored = any(claim.key == "gamesign" and claim.first == 0 for claim in board.claims)
    opens = _fits_count(board, 0) and not _is_thing(board, 1) and not scored
    named = any(claim.key == "who" for claim in board.claims) and not talk
    found = [
        at
        for at in board.free_numbers()
        if _fits_count(board, at) and (named or _stands_alone(board, at))
    ]
    found = [0] if opens else found
    return [Unread(board.quote(at, at + 1), UnreadReason.UNKNOWN_NUMBER) for at in found]


def _stands_alone(board: Board, at: int) -> bool:
    """As in "arm hung today, 41", "update: final was 58": nothing else is said of the number."""
    first, after = span(board.clause, at)
    if board.author == "pitcher" and (first, after) == (at, at + 1):
        return True
    before = [item.symbol for item in board.items[max(0, at - 2) : at]]
    if board.author == "pitcher" and before[-1:] == ["adj"]:
        return not _is_thing(board, at + 1)  # "a quick 20 before dinner"
    return before == ["win", "is"] and board.items[at - 2].text.lower() == "final"


def _opens_with_a_day(board: Board) -> list[Unread]:
    """As in "5-14 41 pitches", "14th - 41 pitches": a score and an inning, or a day?"""
    symbols = [item.symbol for item in board.items[:4]]
    dated = symbols == ["num", "dash", "num", "num"] or (
        sum(i.symbol == "ord" for i in board.items) == 1
        and symbols[0] == "ord"
        and symbols[1:2] in (["dash"], ["colon"])
    )
    free = not any(c.first == 0 and c.value not in ("score", None) for c in board.claims)
    return [Unread(board.quote(0, 3), UnreadReason.UNCLEAR_DAY)] if dated and free else []


def _present_or_past(board: Board) -> list[Unread]:
    """As in "el viernes Leo tira 30": did he, or will he?"""
    return [
        Unread(board.quote(*span(board.clause, at)), UnreadReason.UNCLEAR_DAY)
        for at in present_on_a_weekday(board)
    ]


def _listed_after_a_plan(board: Board) -> list[Unread]:
    """As in "who has pens tomorrow? Leo 25, Max 30": what they are to throw?"""
    found = []
    for at, item in enumerate(board.items[:-1]):
        if item.symbol != "question":
            continue
        first, _ = span(board.sentence, at)
        asked = {one.symbol for one in board.items[first:at]}
        start, end = span(board.sentence, at + 1)
        told = {one.symbol for one in board.items[start:end]}
        counted = [c for c in board.claims if c.key in COUNTS and start <= c.first < end]
        if "plan" in asked and asked & KINDS and counted and not told & (KINDS | _HAPPENED):
            found.append(Unread(board.quote(start, end), UnreadReason.TWO_READINGS))
    return found


def _days(board: Board) -> int:
    return len({claim.value for claim in board.claims if claim.key == "day"})


def _kind_of_no_entry(board: Board, entries: Sequence[Entry]) -> list[Unread]:
    """As in "game ppd. catch 30 throws": two kinds told, and an entry of one."""
    told = {claim.value for claim in board.claims if claim.key == "kind"}
    left = told - {entry.kind for entry in entries}
    games = all(entry.kind == "game" for entry in entries)
    if not left or not games or "live" in told or len(told) < 2:
        return []
    return [Unread(board.text, UnreadReason.UNKNOWN_KIND)]


def _uncounted_day(board: Board, entries: Sequence[Entry]) -> list[Unread]:
    """As in "tue game 40p, wed catch, thu pen 20": a day's practice that no entry holds."""
    told = {entry.kind for entry in entries}
    found = []
    for claim in board.claims:
        if claim.key != "kind" or claim.value not in PRACTICE or claim.value in told:
            continue
        first, after = span(board.clause, claim.first)
        here = {c.key for c in board.claims if first <= c.first < after}
        if "day" in here and not here & (COUNTS | {"who", "nopain", "pain"}):
            found.append(Unread(board.quote(first, after), UnreadReason.VAGUE))
    return found


def _site_left_out(board: Board) -> list[Unread]:
    """As in "his back not his arm hurts": no pain there, and what of the site beside it?"""
    return [
        Unread(board.quote(at, at + 1), UnreadReason.UNCLEAR_PAIN)
        for at, item in enumerate(board.items)
        if item.symbol == "site"
        and board.free(at)
        and any(
            c.key == "nopain" and board.clause[c.first] == board.clause[at] for c in board.claims
        )
    ]


def _by_inning(board: Board) -> list[Unread]:
    """As in "5 curves in the 1st 3 in the 2nd": of each inning, and so not of the whole outing."""
    return [
        Unread(board.quote(claim.first, claim.after), UnreadReason.TWO_READINGS)
        for claim in board.claims
        if claim.key == "running"
        and any(
            other.key in _TYPED
            and other.after <= claim.first <= other.after + 4
            and any(i.symbol in ("ord", "ordword") for i in board.items[other.after : claim.first])
            for other in board.claims
        )
    ]


def _is_thing(board: Board, at: int) -> bool:
    return at < len(board.items) and board.items[at].symbol in ("thing", "stat", "win", "place")


def _totals_or_warming_up(board: Board) -> list[Unread]:
    """As in "Week totals Leo 120 Kip 90", "52 + 20 warmups": no count of one outing."""
    found = []
    for claim in board.claims:
        if claim.key not in ("pitches", "parts"):
            continue
        first = board.sentence.index(board.sentence[claim.first])
        totals = (
            board.items[first].symbol == "season" and "total" in board.items[first].text.lower()
        )
        after = board.items[claim.after].symbol if claim.after < len(board.items) else ""
        if totals or (claim.key == "parts" and after == "warm"):
            found.append(Unread(board.quote(first, claim.after), UnreadReason.TWO_READINGS))
    return found


def _of_another(board: Board) -> list[Unread]:
    """As in "88 pitches 12 curves for the other kid": counts before a word of somebody else."""
    return [
        Unread(board.quote(claim.first, at + 1), UnreadReason.UNCLEAR_PERSON)
        for at, item in enumerate(board.items)
        if item.symbol == "other" and item.text.lower().startswith("for ")
        for claim in board.claims
        if claim.key in COUNTS
        and claim.first < at
        and board.clause[claim.first] == board.clause[at]
    ][:1]


def _nobody(board: Board) -> list[Unread]:
    """A name before counts that is nobody's: "June 28 pitches, April 31, both pens"."""
    names = [c for c in board.claims if c.key in ("who", "except", "opponent")]
    names += _heading_dates(board)
    return [
        Unread(board.quote(at, at + 2), UnreadReason.UNCLEAR_PERSON)
        for at, item in enumerate(board.items[:-1])
        if item.text[:1].isupper()
        and board.items[at + 1].symbol == "num"
        and (item.symbol == "month" or item.name in given_names())
        and not any(c.first <= at < c.after for c in names)
    ]


def _listed_months(board: Board) -> list[Unread]:
    """As in "off: May, June": in a list of names a month that is also a name."""
    months = [
        at for at, item in enumerate(board.items) if item.symbol == "month" and board.free(at)
    ]
    spoken = {board.sentence[at] for at in months if not _is_listed(board, at)}  # "since April"
    return [
        Unread(board.quote(at, at + 1), UnreadReason.UNCLEAR_PERSON)
        for at in months
        if board.sentence[at] not in spoken
        and board.items[at].text[:1].isupper()
        and board.items[at].text.lower() in nicknames()
    ]


def _is_listed(board: Board, at: int) -> bool:
    before = board.items[at - 1].symbol if at else "newline"
    after = board.items[at + 1].symbol if at + 1 < len(board.items) else "newline"
    return before in _LISTS and after in _LISTS


def _months_out_of_order(board: Board) -> list[Unread]:
    """As in "pens: May 25, June 30, April 22": names with their counts, or days to come?"""
    dated = [
        at
        for at, item in enumerate(board.items[:-1])
        if item.symbol == "month" and board.items[at + 1].symbol == "num"
    ]
    months = [int(board.items[at].name) for at in dated]
    kinds = any(c.key == "kind" and c.value in PRACTICE for c in board.claims)
    if not kinds or len(dated) < 2 or months == sorted(months):
        return []
    return [Unread(board.quote(at, at + 2), UnreadReason.UNCLEAR_PERSON) for at in dated]


def _heading_dates(board: Board) -> list[Claim]:
    """As in "Julio 12: Leo 40 pitches", where no other month is named."""
    if sum(item.symbol == "month" for item in board.items) > 1:
        return []
    return [
        claim
        for claim in board.claims
        if claim.key == "day"
        and claim.first == 0
        and board.items[claim.after : claim.after + 1]
        and board.items[claim.after].symbol in ("colon", "dash")
    ]


def _named_afterwards(board: Board) -> list[Unread]:
    """As in "55 pitches. Ump was awful": the one name, in a later sentence that tells no log."""
    names = [claim for claim in board.claims if claim.key == "who"]
    if len(names) != 1 or is_known(board, board.items[names[0].first].name):
        return []
    here = board.sentence[names[0].first]
    told = [c for c in board.claims if c.key in COUNTS or c.key in _TOLD or c.key in _OUTINGS]
    if not told or any(board.sentence[c.first] >= here for c in told):
        return []
    return [Unread(board.quote(names[0].first, names[0].after), UnreadReason.UNCLEAR_PERSON)]


def _kind_left_out(board: Board, entries: Sequence[Entry]) -> list[Unread]:
    """As in "bullpen Tuesday 25 pitches and 30 Thursday": of what kind is the second?"""
    return [
        Unread(board.text, UnreadReason.UNKNOWN_KIND)
        for before, entry in pairwise(entries)
        if before.kind in PRACTICE and entry.kind is None and entry.pitches is not None
    ][:1]


def _fine_on_another_day(board: Board) -> list[Unread]:
    """As in "no pain today. She threw 25 in the pen Thursday": a day of its own for each."""
    today = board.posted.date()
    days = [c.value for c in board.claims if c.key == "day" and c.value != today]
    told = [c for c in board.claims if c.key in _TOLD]
    counted = [c for c in board.claims if c.key in COUNTS]
    apart = told and counted and board.sentence[told[-1].first] < board.sentence[counted[0].first]
    fine_today = any(
        item.symbol == "today" and board.sentence[at] == board.sentence[told[0].first]
        for at, item in enumerate(board.items)
    )
    if not (apart and days and fine_today):
        return []
    return [Unread(board.quote(told[0].first, counted[-1].after), UnreadReason.UNCLEAR_DAY)]


__all__ = ["COUNT_OF_AN_OUTING", "doubts"]
