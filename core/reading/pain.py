"""Pain, soreness and tired arms: read before anything else, and never dropped."""

from core.reading import groups  # noqa: F401  declares the groups
from core.reading.armroll import read_arm_roll
from core.reading.board import Board
from core.reading.clauses import span
from core.reading.entry import Pain, UnreadReason
from core.reading.healed import read_healed
from core.reading.pain_report import (
    Report,
    ask,
    ask_for_site,
    claim_gone,
    claim_pains,
    gone_places,
    hurt_before,
    told_again,
)
from core.reading.pattern import LazyPattern
from core.reading.people import OWN_CIRCLE
from core.reading.severity import level_alone, severities
from core.reading.stretches import stretches
from core.reading.talk import Scope
from core.reading.tiredness import read_tiredness

_HEALTHY = ("fine", "ok", "okay", "normal", "healthy", "all good", "good", "great")
_REQUESTS = frozenset(
    {"please", "pls", "pull", "tell", "let", "call", "text", "shut", "stop", "take", "sit", "lmk"}
)
_DAYS = frozenset({"ord", "weekday", "sat", "month", "yesterday", "daybefore", "ratio"})
_OF_NOBODY = ("nobody", "no one")
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
    " | (everyone|allof) (is|feels|adv)+ (good|goodadj|pct)"
)
_DOES_NOT = LazyPattern("site (nothing) (?= dot|stop|newline|comma|$)")
_GOOD_SELF = LazyPattern(
    "(^|comma|dot|semi|stop|newline|and|but) (i|he|feels)* feels adv* <g:good|goodadj>"
    " (today|adv)* (?= comma|dot|newline|semi|stop|$)"
)
_GOOD = (_NO_PAIN, _ZERO_PAIN, _NO_PAIN_AFTER_SITE, _GOOD_ARM, _GOOD_SELF, _DOES_NOT)
_EXCEPT = LazyPattern("except (the|hisher|i|adv|a|left|right|throwing)* site (?! feels)")


def read_pain(board: Board, scopes: tuple[Scope, ...]) -> None:
    """Claim what the line says about pain and tiredness."""
    if not board.has(*_SPOKEN):
        return
    read_healed(board)
    _ones_own(board)
    _forgive(board, scopes)
    _unsure(board)
    read_tiredness(board)
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
            if scope.what in _FORGIVEN or _if_it_hurts(board, scope):
                board.no_log(at, at + 1, scope.what)
            else:
                board.unread(at, at + 1, UnreadReason.UNCLEAR_PAIN)


def _ones_own(board: Board) -> None:
    """As in a parent's "my hand is swollen, his arm is great": the hand is not the pitcher's."""
    sites = [at for at, item in enumerate(board.items) if item.symbol == "site" and at]
    his = [at for at in sites if board.items[at - 1].symbol == "hisher"]
    if board.author == "pitcher" or not his:
        return
    for site in sites:
        if board.items[site - 1].text.lower() != "my":
            continue
        first, after = span(board.clause, site)
        if not any(first <= at < after for at in his):
            board.no_log(site, after, "someone else's")


def _if_it_hurts(board: Board, scope: Scope) -> bool:
    """As in "if his elbow hurts please pull him": a request, and nothing that hurts."""
    if board.items[scope.first].text.lower() != "if":
        return False
    first, after = span(board.sentence, scope.first)
    return any(board.items[i].text.lower() in _REQUESTS for i in range(first, after))


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
            told = item.text.lower().startswith(("icing", "blister")) and board.has("pain", "sore")
            if told:
                continue  # "shoulder pain, 4 out of 10. I'm icing it", "finger hurts (blister)"
            board.unread(at, at + 1, UnreadReason.UNCLEAR_PAIN)


def _good(board: Board, scopes: tuple[Scope, ...]) -> list[int]:
    """Claim "no pain" and "arm felt good"; the sites named there, for a pain word that follows."""
    sites: list[int] = []
    for pattern in _GOOD:
        for match in list(pattern.finditer(board.line)):
            if any(match.start() in scope for scope in scopes):
                continue  # "hope it doesn't hurt tomorrow"
            if _is_asked(board, match.start()):
                board.no_log(*match.span(), "question")
                continue
            found = match.groupdict()
            if found.get("g") and board.items[match.start("g")].text.lower() not in _HEALTHY:
                continue  # "felt amazing" praises the outing
            if pattern is _DOES_NOT and not _hurts_elsewhere(board, match.start()):
                continue
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
                if board.items[first].text.lower().startswith(_OF_NOBODY):
                    board.claim(first, first + 1, "all")
                if board.items[first].symbol in ("everyone", "allof"):
                    board.claim(first, first + 1, "all")
                    first += 1
                board.claim(first, _before_day(board, first, match.end()), "nopain")
                _exception(board, match.end())
    return sites


def _before_day(board: Board, first: int, after: int) -> int:
    """As in "no pain on the 13th": the small words belong to the day."""
    if after < len(board.items) and board.items[after].symbol in _DAYS:
        while after > first + 1 and board.items[after - 1].symbol in ("on", "the", "for"):
            after -= 1
    return after


def _hurts_elsewhere(board: Board, at: int) -> bool:
    """As in "his pride hurts, his arm does not"."""
    first, _ = span(board.sentence, at)
    return any(board.items[i].symbol in ("pain", "sore", "idiom") for i in range(first, at))


def _is_asked(board: Board, at: int) -> bool:
    """As in "is Leo's arm ok?": a question is no statement, unless it asks to log."""
    if not board.has("question"):
        return False
    first, after = span(board.clause, at)
    asked = any(board.items[i].symbol == "question" for i in range(at, after))
    return asked and not any(board.items[i].symbol == "logthis" for i in range(first, after))


def _exception(board: Board, at: int) -> None:
    """As in "no pain except my elbow": what is left out of "no pain" hurts."""
    match = _EXCEPT.compiled.match(board.line, at)
    if match is not None:
        place = match.end() - 1
        board.claim(at, match.end(), "pain", (Pain(board.items[place].name),))


def _level_asked(
    board: Board, after: int, levels: list[tuple[int, int, int]]
) -> list[tuple[int, int, int]]:
    """As in "where it hurts: forearm. how much: 2", in the sentence that follows."""
    if not board.symbol_is(after, "ask"):
        return []
    _, end = span(board.sentence, after)
    return [one for one in levels if after <= one[0] < end and board.free(one[0])]


def _levels_beside(
    board: Board, site: int, levels: list[tuple[int, int, int]]
) -> list[tuple[int, int, int]]:
    """As in "the curve hurt today. elbow 4/10": the severity stands with the site."""
    first, after = span(board.clause, site)
    return [one for one in levels if first <= one[0] < after and board.free(one[0])]


def _report(
    board: Board, first: int, after: int, levels: list[tuple[int, int, int]], good: list[int]
) -> None:
    report = Report()
    report.words = [
        i for i in range(first, after) if board.symbol_is(i, "pain") or board.symbol_is(i, "sore")
    ]
    for at in [word for word in report.words if _is_asked(board, word)]:
        ask(board, at, at + 1)  # "is his elbow sore?"
        report.words.remove(at)
    report.levels = [one for one in levels if first <= one[0] < after and board.free(one[0])]
    if report.words and not report.levels:
        report.levels = level_alone(board, first, after)
    report.sites = _sites(board, first, after, report, good)
    if report.words and report.sites and not report.levels:
        report.levels = _levels_beside(board, report.sites[0], levels)
        report.levels = report.levels or _level_asked(board, after, levels)
    if not report.words and not (report.levels and report.sites):
        return
    gone = gone_places(board, first, after, report)
    if gone and not hurt_before(board, report, gone[0]):
        claim_gone(board, first, after)
        return
    if not report.words and [board.items[i].name for i in report.sites] == ["arm"]:
        ask(board, report.levels[0][0], report.levels[0][1])  # "arm 8/10" may be praise
        return
    if not report.sites and report.levels and not any(level for _, _, level in report.levels):
        board.claim(report.words[0], report.words[0] + 1, "nopain")
        for start, end, _ in report.levels:
            board.claim(start, end, "severity")
        return
    if not report.sites:
        if not told_again(board, report):
            ask_for_site(board, report)
        return
    claim_pains(board, first, after, report)


def _sites(board: Board, first: int, after: int, report: Report, good: list[int]) -> list[int]:
    """The sites of the clauses that hold pain, or else the only ones that can be meant."""
    spoken = {board.clause[i] for i in report.words} | {
        board.clause[one[0]] for one in report.levels
    }
    free = [i for i in range(len(board.items)) if board.symbol_is(i, "site")]
    here = [i for i in free if first <= i < after]
    near = [i for i in here if board.clause[i] in spoken]
    if near:
        return _most_specific(board, near)
    if not report.words or all(_of_something_else(board, at) for at in report.words):
        return []
    if here:
        return _most_specific(board, here)
    beside = [i for i in free if abs(board.sentence[i] - board.sentence[first]) == 1]
    if beside:
        return _most_specific(board, beside)
    praised = [i for i in good if first <= i < after]
    return praised[-1:]


def _of_something_else(board: Board, at: int) -> bool:
    """As in "arm is fine, wallet is sore": a noun that is no site and nobody's name."""
    before = at - 1
    while before > 0 and board.items[before].symbol in ("is", "feels", "adv"):
        before -= 1
    return before < at - 1 and board.symbol_is(before, "word")


def _most_specific(board: Board, places: list[int]) -> list[int]:
    """As in "my arm hurts at the elbow" is the elbow; of a site named twice, the first."""
    kept = {board.items[i].name: i for i in reversed(places)}
    if len(kept) > 1 and "arm" in kept and not _joined(board, places):
        del kept["arm"]
    return sorted(kept.values())


def _joined(board: Board, places: list[int]) -> bool:
    between = range(min(places) + 1, max(places))
    return any(board.items[i].symbol in ("and", "comma", "slash") for i in between)


__all__ = ["read_pain"]
