"""Pain, soreness and tired arms: read before anything else, and never dropped."""

import re
from dataclasses import dataclass, field

from core.reading import groups  # noqa: F401  declares the groups
from core.reading.armroll import read_arm_roll
from core.reading.board import Board
from core.reading.clauses import span
from core.reading.entry import Pain, UnreadReason
from core.reading.healed import read_healed
from core.reading.pattern import LazyPattern
from core.reading.people import OWN_CIRCLE
from core.reading.severity import WORST, level_alone, severities
from core.reading.stretches import stretches
from core.reading.talk import Scope

_NEAR = 4  # words between a "no" and what it denies
_WHEN = {
    "during": "during",
    "after": "after",
    "postgame": "after",
    "nextday": "next day",
    "atrest": "at rest",
}
_HEALTHY = ("fine", "ok", "okay", "normal", "healthy", "all good", "good", "great")
_FORGIVEN = ("earlier", "someone else's")  # talk whose pain is nobody's here and now
_SPOKEN = (
    "pain",
    "sore",
    "nopain",
    "site",
    "tired",
    "untired",
    "unsure",
    "gone",
    "everyone",
    "feels",
)
_TAIL = (
    "(in|the|hisher|adv|at|after|postgame|during|with|site|nextday|for|i|he|allof|total|today"
    "|left|right|throwing)*"
)

_NO_PAIN = LazyPattern(
    "(negation (the|a|adj|throwing|site|hisher|is|i|left|right|feels|had)* painful"
    " ((or|and|comma|slash) (negation)? (throwing|site)* painful)*"
    " | nopain | painful colon nothing (?! painful)"
    " | painful (colon|is|dash|at|painscale)* (none|<z:num> (painscale)? (?!"
    " (fill|dash)* (noun|percent)))"
    f") {_TAIL}"
)
_ZERO_PAIN = LazyPattern(f"<z:num> (adj)* painful {_TAIL}")
_NO_PAIN_AFTER_SITE = LazyPattern("site (negation) (the|i|he|hisher)* painful")
_GOOD_ARM = LazyPattern(
    "(the|hisher)? (left|right|throwing)* site"
    " (is|feels|adv|the|i|he|also|total|at|dash|a|colon)* (good|goodadj|pct|live)"
    " (adv|after|postgame|during|today|good|now|total)*"
    " | (feels|is|threw) adv* (good|goodadj) (with|in|of) (the|hisher)? site | (total)?"
    " (good|goodadj) (of|in|with) (the)? site"
    " | (good|pct) site (?! (is|feels|adv)* (good|goodadj|pct))"
    " | everyone (is|feels|adv)+ (good|goodadj|pct)"
)
_GOOD_SELF = LazyPattern(
    "(^|comma|dot|semi|stop|newline|and|but) (i|he)* feels adv* <g:good|goodadj>"
    " (today|adv)* (?= comma|dot|newline|semi|stop|$)"
)
_TIRED = LazyPattern(
    "site (is|feels|adv|a|the|he|i|had|colon|about)* tired"
    " | (adv|a)* tired (adv|the|hisher|of)* site"
)
_EXCEPT = LazyPattern("except (the|hisher|i|adv|a|left|right|throwing)* site (?! feels)")
_UNTIRED = LazyPattern(
    "(site (is|feels|adv|colon)*)? (untired (adv|total)* | negation (adv|the|hisher)*"
    " tired | negation (the|hisher|i|he|had)* site tired)"
)


@dataclass(slots=True)
class _Report:
    """What one stretch of the line says about pain."""

    sites: list[int] = field(default_factory=list)
    words: list[int] = field(default_factory=list)
    levels: list[tuple[int, int, int]] = field(default_factory=list)  # first, after, severity


def read_pain(board: Board, scopes: tuple[Scope, ...]) -> None:
    """Claim what the line says about pain and tiredness."""
    if not board.has(*_SPOKEN):
        return
    read_healed(board)
    _forgive(board, scopes)
    _unsure(board)
    _tired(board)
    read_arm_roll(board)
    good_sites = _good(board, scopes)
    levels = severities(board)
    for first, after in stretches(board):
        _report(board, first, after, levels, good_sites)


def _forgive(board: Board, scopes: tuple[Scope, ...]) -> None:
    """Last week's pain and other people's is no part of the entry; asked or planned"
    " pain is asked.
    """
    for scope in scopes:
        painful = [
            at
            for at in range(scope.first, scope.after)
            if board.items[at].symbol in ("pain", "sore") and board.free(at)
        ]
        if painful and scope.what == "someone else's" and _of_own_circle(board, scope):
            _ask_whose(board, scope)
            continue
        if scope.what in _FORGIVEN and (painful or _tells_of_site(board, scope)):
            painful = [at for at in range(scope.first, scope.after) if board.free(at)]
        for at in painful:
            if scope.what in _FORGIVEN:
                board.no_log(at, at + 1, scope.what)
            else:
                board.unread(at, at + 1, UnreadReason.UNCLEAR_PAIN)


def _tells_of_site(board: Board, scope: Scope) -> bool:
    """As in "last week his elbow was a 4"."""
    return any(board.items[i].symbol == "site" for i in range(scope.first, scope.after))


def _of_own_circle(board: Board, scope: Scope) -> bool:
    """As in "my buddy", whose pain matters, and not "their pitcher"."""
    return any(
        board.items[i].symbol == "other" and board.items[i].text.lower().startswith(OWN_CIRCLE)
        for i in range(scope.first, scope.after)
    )


def _ask_whose(board: Board, scope: Scope) -> None:
    for at in range(scope.first, scope.after):
        if board.free(at) and board.items[at].symbol in ("pain", "sore"):
            board.unread(at, at + 1, UnreadReason.UNCLEAR_PERSON)
        elif board.symbol_is(at, "site"):
            board.no_log(at, at + 1, scope.what)


def _unsure(board: Board) -> None:
    for at, item in enumerate(board.items):
        if item.symbol == "unsure" and board.free(at):
            board.unread(at, at + 1, UnreadReason.UNCLEAR_PAIN)


def _tired(board: Board) -> None:
    for pattern, tired in ((_UNTIRED, False), (_TIRED, True)):
        for match in list(pattern.finditer(board.line)):
            if not all(board.free(i) for i in range(*match.span())):
                continue
            if tired and _is_perhaps_denied(board, match.start()):
                board.unread(*match.span(), UnreadReason.UNCLEAR_PAIN)
            elif _of_the_arm(board, match):
                _claim_without_sites(board, match, "tired", tired)


def _is_perhaps_denied(board: Board, at: int) -> bool:
    """As in "ya no teng el brazo cansado": a "no" before it, and a word that is not known."""
    first, _ = span(board.clause, at)
    before = range(max(first, at - _NEAR), at)
    denied = [i for i in before if board.symbol_is(i, "nothing")]
    return bool(denied) and any(board.symbol_is(i, "word") for i in range(denied[0], at))


def _of_the_arm(board: Board, match: re.Match[str]) -> bool:
    """Tired legs are no tired arm."""
    named = {board.items[i].name for i in range(*match.span()) if board.items[i].symbol == "site"}
    return not named or bool(named & {"arm", "shoulder", "elbow", "forearm"})


def _claim_without_sites(board: Board, match: re.Match[str], key: str, value: object) -> None:
    """Claim a match but leave its body site free: "arm is tired and sore" needs it again."""
    for at in range(*match.span()):
        if board.items[at].symbol in ("tired", "untired"):
            board.claim(at, at + 1, key, value)
        elif board.items[at].symbol in ("insteadof", "none", "nothing"):
            board.no_log(at, at + 1, "tiredness")


def _good(board: Board, scopes: tuple[Scope, ...]) -> list[int]:
    """Claim "no pain" and "arm felt good"; the sites named there, for a pain word that follows."""
    sites: list[int] = []
    for pattern in (_NO_PAIN, _ZERO_PAIN, _NO_PAIN_AFTER_SITE, _GOOD_ARM, _GOOD_SELF):
        for match in list(pattern.finditer(board.line)):
            if any(match.start() in scope for scope in scopes):
                continue  # "hope it doesn't hurt tomorrow"
            if _is_asked(board, match.start()):
                board.no_log(*match.span(), "question")
                continue
            found = match.groupdict()
            if found.get("g") and board.items[match.start("g")].text.lower() not in _HEALTHY:
                continue  # "felt amazing" praises the outing
            zero = found.get("z")
            if zero and board.items[match.start("z")].value != 0:
                continue
            if any(
                board.items[i].symbol == "pct" and board.items[i].value != 100
                for i in range(*match.span())
            ):
                board.unread(match.start(), match.end(), UnreadReason.UNCLEAR_PAIN)
            elif all(board.free(i) for i in range(*match.span())):
                sites += [i for i in range(*match.span()) if board.items[i].symbol == "site"]
                first = match.start()
                if board.items[first].symbol == "everyone":
                    board.claim(first, first + 1, "all")
                    first += 1
                board.claim(first, match.end(), "nopain")
                _exception(board, match.end())
    return sites


def _is_asked(board: Board, at: int) -> bool:
    """As in "is Leo's arm ok?": a question is no statement, unless it asks to log."""
    first, after = span(board.clause, at)
    asked = any(board.items[i].symbol == "question" for i in range(at, after))
    return asked and not any(board.items[i].symbol == "logthis" for i in range(first, after))


def _exception(board: Board, at: int) -> None:
    """As in "no pain except my elbow": what is left out of "no pain" hurts."""
    match = _EXCEPT.compiled.match(board.line, at)
    if match is not None:
        place = match.end() - 1
        board.claim(at, match.end(), "pain", (Pain(board.items[place].name),))


def _report(
    board: Board, first: int, after: int, levels: list[tuple[int, int, int]], good: list[int]
) -> None:
    report = _Report()
    report.words = [
        i for i in range(first, after) if board.symbol_is(i, "pain") or board.symbol_is(i, "sore")
    ]
    for at in [word for word in report.words if _is_asked(board, word)]:
        _ask(board, at, at + 1)  # "is his elbow sore?"
        report.words.remove(at)
    report.levels = [one for one in levels if first <= one[0] < after and board.free(one[0])]
    if report.words and not report.levels:
        report.levels = level_alone(board, first, after)
    report.sites = _sites(board, first, after, report, good)
    if not report.words and not (report.levels and report.sites):
        return
    gone = _gone(board, first, after, report)
    if gone and not _hurt_before(board, report, gone[0]):
        _claim_gone(board, first, after)
        return
    if not report.words and [board.items[i].name for i in report.sites] == ["arm"]:
        _ask(board, report.levels[0][0], report.levels[0][1])  # "arm 8/10" may be praise
        return
    if not report.sites and report.levels and not any(level for _, _, level in report.levels):
        board.claim(report.words[0], report.words[0] + 1, "nopain")
        for start, end, _ in report.levels:
            board.claim(start, end, "severity")
        return
    if not report.sites:
        _ask_for_site(board, report)
        return
    _claim_pains(board, first, after, report)


def _gone(board: Board, first: int, after: int, report: _Report) -> list[int]:
    """Places of "it went away" beside the pain: "missed the bus, gone by then" tells nothing."""
    if not board.has("gone"):
        return []
    told = {board.clause[i] for i in (*report.words, *report.sites)}
    near = {clause + step for clause in told for step in (0, 1, 2)}
    gone = [i for i in range(first, after) if board.symbol_is(i, "gone")]
    return [i for i in gone if board.clause[i] in near]


def _hurt_before(board: Board, report: _Report, gone: int) -> bool:
    """As in "it hurt 3 out of 10 but went away": there was pain in this outing."""
    contrast = any(
        board.items[i].symbol in ("but", "then", "comma")
        for i in range(min(report.words, default=gone), gone)
    )
    return contrast or any(severity > 0 for _, _, severity in report.levels)


def _claim_gone(board: Board, first: int, after: int) -> None:
    """As in "the elbow pain is all gone": no pain now."""
    for at in range(first, after):
        if board.free(at) and board.items[at].symbol in ("pain", "sore", "site"):
            board.no_log(at, at + 1, "gone")
        elif board.symbol_is(at, "gone"):
            board.claim(at, at + 1, "nopain")


def _ask(board: Board, first: int, after: int) -> None:
    board.unread(first, after, UnreadReason.UNCLEAR_PAIN)


def _ask_for_site(board: Board, report: _Report) -> None:
    for at in report.words:
        _ask(board, at, at + 1)
    for first, after, _ in report.levels:
        if report.words:
            _ask(board, first, after)


def _sites(board: Board, first: int, after: int, report: _Report, good: list[int]) -> list[int]:
    """The sites of the clauses that hold pain, or else the only ones that can be meant."""
    spoken = {board.clause[i] for i in report.words} | {
        board.clause[one[0]] for one in report.levels
    }
    free = [i for i in range(len(board.items)) if board.symbol_is(i, "site")]
    here = [i for i in free if first <= i < after]
    near = [i for i in here if board.clause[i] in spoken]
    if near:
        return _most_specific(board, near)
    if not report.words:
        return []
    if here:
        return _most_specific(board, here)
    beside = [i for i in free if abs(board.sentence[i] - board.sentence[first]) == 1]
    if beside:
        return _most_specific(board, beside)
    praised = [i for i in good if first <= i < after]
    return praised[-1:]


def _most_specific(board: Board, places: list[int]) -> list[int]:
    """As in "my arm hurts at the elbow" is the elbow; of a site named twice, the first."""
    kept = {board.items[i].name: i for i in reversed(places)}
    if len(kept) > 1 and "arm" in kept and not _joined(board, places):
        del kept["arm"]
    return sorted(kept.values())


def _joined(board: Board, places: list[int]) -> bool:
    between = range(min(places) + 1, max(places))
    return any(board.items[i].symbol in ("and", "comma", "slash") for i in between)


def _claim_pains(board: Board, first: int, after: int, report: _Report) -> None:
    pains: list[Pain] = []
    for_each = any(board.items[i].symbol in ("each", "both") for i in range(first, after))
    if len(report.sites) > 1 and len(report.levels) == 1 and not for_each:
        start, end, _ = report.levels.pop()
        if start > report.sites[-1]:
            _ask(board, start, end)  # "elbow and wrist sore, 3/10": of which?
        else:
            report.levels.append((start, end, _))
    for place in report.sites:
        own = (
            report.levels
            if for_each
            else [one for one in report.levels if _nearest(report.sites, one[0]) == place]
        )
        severity = own[0][2] if len({one[2] for one in own}) == 1 else None
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


def _without_zero(pains: list[Pain]) -> tuple[Pain, ...]:
    return tuple(pain for pain in pains if pain.severity != 0)


def _nearest(sites: list[int], level: int) -> int:
    """The site that a severity belongs to: the last one named before it, or else the first."""
    before = [site for site in sites if site < level]
    return before[-1] if before else sites[0]


def _pain(
    board: Board, first: int, after: int, place: int, severity: int | None, report: _Report
) -> Pain:
    symbols = [item.symbol for item in board.items[first:after]]
    near = [board.items[i].symbol for i in range(max(first, place - 2), min(after, place + 5))]
    side = next((name for name in ("left", "right") if name in near), None)
    when = next((_WHEN[symbol] for symbol in symbols if symbol in _WHEN), None)
    words = [board.items[i].symbol for i in report.words]
    return Pain(board.items[place].name, severity, side, when, bool(words) and "pain" not in words)


__all__ = ["read_pain"]
