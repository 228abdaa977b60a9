"""One stretch of a line about pain: its sites, words and numbers, and the claims they make."""

from dataclasses import dataclass, field

from core.reading import groups  # noqa: F401  declares the groups
from core.reading.board import Board
from core.reading.entry import Pain, UnreadReason
from core.reading.pattern import LazyPattern
from core.reading.severity import WORST

_WHEN = {
    "during": "during",
    "after": "after",
    "postgame": "after",
    "nextday": "next day",
    "atrest": "at rest",
}
_FOR_SITE = LazyPattern("<n:num> (for|on|in|at) (the|hisher|left|right)* <s:site>")


@dataclass(slots=True)
class Report:
    """What one stretch of the line says about pain."""

    sites: list[int] = field(default_factory=list)
    words: list[int] = field(default_factory=list)
    levels: list[tuple[int, int, int]] = field(default_factory=list)  # first, after, severity


def gone_places(board: Board, first: int, after: int, report: Report) -> list[int]:
    """Places of "it went away" beside the pain: "missed the bus, gone by then" tells nothing."""
    if not board.has("gone"):
        return []
    told = {board.clause[i] for i in (*report.words, *report.sites)}
    near = {clause + step for clause in told for step in (0, 1, 2)}
    gone = [i for i in range(first, after) if board.symbol_is(i, "gone")]
    return [i for i in gone if board.clause[i] in near]


def hurt_before(board: Board, report: Report, gone: int) -> bool:
    """As in "it hurt 3 out of 10 but went away": there was pain in this outing."""
    contrast = any(
        board.items[i].symbol in ("but", "then", "comma")
        for i in range(min(report.words, default=gone), gone)
    )
    return contrast or any(severity > 0 for _, _, severity in report.levels)


def claim_gone(board: Board, first: int, after: int) -> None:
    """As in "the elbow pain is all gone": no pain now."""
    for at in range(first, after):
        if board.free(at) and board.items[at].symbol in ("pain", "sore", "site"):
            board.no_log(at, at + 1, "gone")
        elif board.symbol_is(at, "gone"):
            board.claim(at, at + 1, "nopain")


def ask(board: Board, first: int, after: int) -> None:
    """Ask about the pain told by these items."""
    board.unread(first, after, UnreadReason.UNCLEAR_PAIN)


def told_again(board: Board, report: Report) -> bool:
    """As in "his forearm is tight. No number, just tight.": the same word once more."""
    told = {
        item.text.lower()
        for claim in board.claims
        if claim.key in ("pain", "no log") and claim.value
        for item in board.items[claim.first : claim.after]
        if item.symbol in ("pain", "sore")
    }
    again = not report.levels and {board.items[at].text.lower() for at in report.words} <= told
    for at in report.words if again else ():
        board.no_log(at, at + 1, "said again")
    return again


def ask_for_site(board: Board, report: Report) -> None:
    """Ask where it hurts: words of pain, and no site that they can be of."""
    for at in report.words:
        ask(board, at, at + 1)
    for first, after, _ in report.levels:
        if report.words:
            ask(board, first, after)


def claim_pains(board: Board, first: int, after: int, report: Report) -> None:
    """Claim each site of the stretch with the number that is told of it."""
    pains: list[Pain] = []
    told = _levels_for_sites(board, first, after, report)
    for_each = any(board.items[i].symbol in ("each", "both") for i in range(first, after))
    if len(report.sites) > 1 and len(report.levels) == 1 and not for_each:
        start, end, _ = report.levels.pop()
        if start > report.sites[-1]:
            ask(board, start, end)  # "elbow and wrist sore, 3/10": of which?
        else:
            report.levels.append((start, end, _))
    for place in report.sites:
        own = (
            report.levels
            if for_each
            else [one for one in report.levels if _nearest(report.sites, one[0]) == place]
        )
        severity = own[0][2] if len({one[2] for one in own}) == 1 else None
        severity = told.get(board.items[place].name, severity)
        if len({one[2] for one in own}) > 1:
            first, after = min(one[0] for one in own), max(one[1] for one in own)
            board.unread(first, after, UnreadReason.TWO_READINGS)
        elif severity is not None and severity > WORST:
            board.unread(own[0][0], own[0][1], UnreadReason.IMPOSSIBLE)
            severity = None
        pains.append(_pain(board, first, after, place, severity, report))
    for start, end, _ in report.levels:
        if board.free(start):
            board.claim(start, end, "severity")
    for at in report.words:
        board.no_log(at, at + 1, "pain")
    for place in report.sites:
        if board.free(place):
            board.claim(place, place + 1, "site")
    anchor = min(report.words or report.sites)
    board.claim(anchor, anchor + 1, "pain", _without_zero(pains))


def _levels_for_sites(board: Board, first: int, after: int, report: Report) -> dict[str, int]:
    """As in "elbow and shoulder both sore, 2 for the elbow and 3 for the shoulder"."""
    told: dict[str, int] = {}
    for match in list(_FOR_SITE.finditer(board.line)):
        level = board.whole(match.start("n"))
        if not (first <= match.start() < after and report.words) or level is None or level > WORST:
            continue
        named = {board.items[at].name for at in report.sites}
        if match.start("s") in report.sites or board.items[match.start("s")].name not in named:
            continue  # "2 in the elbow": the site itself
        told[board.items[match.start("s")].name] = level
        report.levels = [one for one in report.levels if one[0] != match.start()]
        board.claim(match.start(), match.end(), "severity")
    return told


def _without_zero(pains: list[Pain]) -> tuple[Pain, ...]:
    return tuple(pain for pain in pains if pain.severity != 0)


def _nearest(sites: list[int], level: int) -> int:
    """The site that a severity belongs to: the last one named before it, or else the first."""
    before = [site for site in sites if site < level]
    return before[-1] if before else sites[0]


def _pain(
    board: Board, first: int, after: int, place: int, severity: int | None, report: Report
) -> Pain:
    symbols = [item.symbol for item in board.items[first:after]]
    near = [board.items[i].symbol for i in range(max(first, place - 2), min(after, place + 5))]
    side = next((name for name in ("left", "right") if name in near), None)
    when = next((_WHEN[symbol] for symbol in symbols if symbol in _WHEN), None)
    words = [board.items[i].symbol for i in report.words]
    return Pain(board.items[place].name, severity, side, when, bool(words) and "pain" not in words)
