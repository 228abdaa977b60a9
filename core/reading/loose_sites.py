"""Body sites that nothing explains: "elbow is on fire" is asked about, never dropped."""

from core.reading.board import Board, Claim
from core.reading.clauses import span
from core.reading.entry import Unread, UnreadReason

_THROWING_SITES = frozenset(
    {
        "arm",
        "elbow",
        "shoulder",
        "forearm",
        "wrist",
        "bicep",
        "tricep",
        "lat",
        "knee",
        "ankle",
        "hip",
        "hamstring",
        "quad",
        "calf",
        "groin",
        "oblique",
        "rib",
        "thumb",
        "finger",
        "neck",
        "shin",
    }
)


def _apart(board: Board, site: int, told_of: list[Claim]) -> bool:
    """As in "shoulder good elbow meh": a word of its own follows the site, and no list goes on."""
    if any(claim.key != "nopain" or claim.first > site for claim in told_of):
        return False
    follows = board.items[site + 1].symbol if site + 1 < len(board.items) else ""
    between = range(told_of[-1].after, site)
    listed = any(board.items[i].symbol in ("and", "or", "comma", "slash") for i in between)
    return follows in ("word", "is", "feels", "adv", "adj") and not listed


def _pains(value: object) -> list[str]:
    """The sites of a claim of pain."""
    return [pain.site for pain in value] if isinstance(value, tuple) else []


def _told_later(board: Board, at: int) -> bool:
    """As in "his elbow, which was a 4 last week, did not hurt": nothing else is said of it here."""
    first, after = span(board.clause, at)
    alone = all(
        board.items[i].symbol in ("site", "hisher", "the", "comma", "left", "right", "and")
        for i in range(first, after)
    )
    last = span(board.sentence, at)[1]
    later = [c for c in board.claims if after <= c.first < last and c.key in ("nopain", "pain")]
    return alone and bool(later) and later[0].key == "nopain"


def _which_arm(board: Board, at: int) -> bool:
    """As in "forearm pain 3, left arm because he is a lefty": whose side was told already."""
    side = at > 0 and board.items[at - 1].symbol in ("left", "right")
    here = board.sentence[at]
    pains = [c for c in board.claims if c.key == "pain" and board.sentence[c.first] == here]
    return board.items[at].name == "arm" and side and bool(pains) and pains[0].first < at


def unexplained_sites(board: Board) -> list[Unread]:
    """As in "elbow is on fire": something is said about the arm in words that are not known."""
    found = []
    inquired = "asked about" in board.text.lower()
    for at, item in enumerate(board.items):
        if not board.symbol_is(at, "site") or item.name not in _THROWING_SITES:
            continue
        first, after = span(board.clause, at)
        told = item.name != "arm" or any(
            board.free(i) and board.items[i].symbol in ("feels", "is") for i in range(first, after)
        )
        explained = ("tired", "nopain", "pain")
        told_of = [c for c in board.claims if c.key in explained and first <= c.first < after]
        if inquired and any("asked about" in board.items[i].text.lower() for i in range(first, at)):
            continue  # "u asked about my elbow, no pain today"
        if told_of and not _apart(board, at, told_of):
            continue
        pains = [one for c in board.claims if c.key == "pain" for one in _pains(c.value)]
        if item.name in pains and not told_of:
            continue  # "took a liner off the shin. Shin is a 5"
        if _told_later(board, at) or _which_arm(board, at):
            continue
        following = board.items[at + 1].symbol if at + 1 < after else ""
        if told and following not in ("speed", "slot"):
            found.append(Unread(board.quote(at, after), UnreadReason.UNCLEAR_PAIN))
    return found


__all__ = ["unexplained_sites"]
