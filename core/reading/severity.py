"""How bad a pain is told to be: "3/10", "a 4", "level 5"."""

from core.reading.board import Board
from core.reading.clauses import span
from core.reading.groups import NOUNS
from core.reading.pattern import LazyPattern

WORST = 10
_SITE_LEVEL = LazyPattern("site <n:num> (?! (fill|dash)* (noun|percent|bullpen|catch))")
_RATIO = LazyPattern("<r:ratio> | <n:num> (of|outof|slash) <t:num> | <m:num> painscale")
_SITE_IN = LazyPattern("site adv* into <n:num> (?! (fill|dash)* (noun|percent))")  # "codo en 3"
_A_LEVEL = LazyPattern("a (about|adv)* <n:num> (?! (fill|dash)* (noun|percent|bullpen|catch))")
_LEVEL = LazyPattern(
    "((pain|sore|painscale|site adv to)"
    " (is|colon|about|a|at|adv|dash|painscale|the|open|feels|i|he|of)*"
    " | site (adv|feels)* (is|about|a|colon) (is|about|a|at|adv|feels|painscale)*) <n:num>"
    " (ish)? (?! (fill|dash)* (noun|percent|limit))"
)


_ASKED_LEVEL = LazyPattern("ask colon <n:num>")  # "how much: 2"


_SMALL_WORDS = frozenset(
    {"comma", "dot", "stop", "newline", "adv", "about", "a", "is", "semi", "rates", "he", "i",
     "feels", "it", "the", "and", "but"}
)  # fmt: skip


def severities(board: Board) -> list[tuple[int, int, int]]:
    """Severities in the line: first and after-last place, and the number."""
    found: list[tuple[int, int, int]] = []
    for match in _RATIO.finditer(board.line):
        pair = board.items[match.start()].pair if match.group("r") else None
        scale = pair[1] if pair else WORST
        if match.groupdict().get("t"):
            scale = board.items[match.start("t")].whole or 0
        value = pair[0] if pair else board.items[match.start()].whole
        if scale == WORST and value is not None:
            found.append((match.start(), match.end(), value))
    painful = {
        board.sentence[i] for i, item in enumerate(board.items) if item.symbol in ("pain", "sore")
    }
    graded = [m for m in _A_LEVEL.finditer(board.line) if board.sentence[m.start()] in painful]
    scaled = painful | {board.sentence[first] for first, _, _ in found}
    listed = list(_SITE_LEVEL.finditer(board.line))
    if len(listed) < 2:
        listed = [m for m in listed if board.sentence[m.start()] in scaled]
    listed += _SITE_IN.finditer(board.line) if board.lang == "es" else ()
    asked = list(_ASKED_LEVEL.finditer(board.line)) if painful else []
    for match in (*_LEVEL.finditer(board.line), *graded, *listed, *asked):
        place = match.start("n")
        value = board.items[place].whole
        if value is not None and not any(first <= place < after for first, after, _ in found):
            found.append((place, place + 1, value))
    return [_put_right(board, *one) for one in found if not _is_past(board, one[0])]


def _is_past(board: Board, at: int) -> bool:
    """As in "down to a 2/10 today, was a 4 last week"."""
    return any(board.items[i].symbol == "pastref" for i in range(*span(board.clause, at)))


def _put_right(board: Board, first: int, after: int, level: int) -> tuple[int, int, int]:
    """As in "pain 4 well more like 3": the second number is meant."""
    at = after
    while at < len(board.items) and board.items[at].symbol in ("comma", "dot"):
        at += 1
    corrected = at + 1 < len(board.items) and board.items[at].symbol == "correction"
    if not corrected or board.items[at + 1].symbol != "num":
        return first, after, level
    meant = board.items[at + 1].whole
    alone = at + 2 == len(board.items) or board.items[at + 2].symbol not in NOUNS
    fits = alone and meant is not None and meant <= WORST
    return (first, at + 2, meant) if fits and meant is not None else (first, after, level)


def level_alone(board: Board, first: int, after: int) -> list[tuple[int, int, int]]:
    """As in "forearm hurts, 5", "shoulder hurts. 5/10.": a number that is all of the last clause
    or of the next sentence.
    """
    spans = [span(board.clause, after - 1)]
    if after < len(board.items):
        following = span(board.sentence, after)
        ratio = board.items[after].symbol == "ratio"  # "lat was sore. 3/10, left side."
        spans.append(span(board.clause, after) if ratio else following)
    for start, end in spans:
        told = [i for i in range(start, end) if board.items[i].symbol not in _SMALL_WORDS]
        if [board.items[i].symbol for i in told] == ["num", "painscale"] and start > first:
            level = board.whole(told[0])
            return [(told[0], told[1] + 1, level)] if level is not None and level <= WORST else []
        item = board.items[told[0]] if len(told) == 1 and start > first else None
        if item is None or not board.free(told[0]):
            continue
        pair = item.pair if item.symbol == "ratio" else (item.whole, WORST)
        if pair is not None and pair[0] is not None and pair[1] == WORST and pair[0] <= WORST:
            return [(told[0], told[0] + 1, pair[0])]
    return _opens_next(board, after)


def _opens_next(board: Board, after: int) -> list[tuple[int, int, int]]:
    """As in "strained his oblique. 4 out of 10 when he twists": what the next sentence opens with,
    where it names no site of its own.
    """
    if after >= len(board.items):
        return []
    first, end = span(board.sentence, after)
    if any(board.items[i].symbol in ("site", "pain", "sore") for i in range(first, end)):
        return []
    match = _RATIO.compiled.match(board.line, first)
    if match is None or match.group("r"):
        return []
    counted = board.items[match.end()].symbol if match.end() < len(board.items) else ""
    if counted in NOUNS:
        return []  # "3 of 10 pitches were curves"
    level = board.whole(first)
    scale = board.whole(match.start("t")) if match.group("t") else WORST
    fits = scale == WORST and level is not None and level <= WORST
    return [(first, match.end(), level)] if fits and level is not None else []
