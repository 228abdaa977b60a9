"""The claims that say something, cut into pieces that each speak of one outing."""

from collections.abc import Iterator
from itertools import pairwise, takewhile
from operator import attrgetter

from core.reading.board import COUNTS, NO_LOG, Board, Claim

Piece = list[Claim]
_PLACE = attrgetter("first", "after")
FEWEST_CUT = 3  # claims: two markers and a count


def pieces(board: Board) -> list[Piece]:
    """The claims that say something, piece by piece; a piece with two of one marker is cut."""
    found: list[Piece] = []
    last = -1
    for claim in sorted(board.claims, key=_PLACE):
        if claim.key == NO_LOG:
            continue
        if board.piece[claim.first] != last or claim.key == "all" or _of_both(board, found, claim):
            of_all = claim.key in ("each", "all") and found
            found.append(_said_of_all(board, found, claim) if of_all else [])
            last = board.piece[claim.first]
        found[-1].append(claim)
    found = [piece for piece in found if piece]
    if len(found) > 1:
        found = _put_together(board, found)
    return [part for piece in found for part in _cut(piece) if part]


def _put_together(board: Board, found: list[Piece]) -> list[Piece]:
    """Pieces with what heads them: each rule is asked only where its words are."""
    keys = {claim.key for claim in board.claims}
    if "each" in keys and "who" in keys:
        found = [part for piece in found for part in _headed_by_each(board, piece)]
    if "day" in keys:
        found = _headed_by_days(board, found)
    if "who" in keys:
        found = _led_by_markers(board, found)
    return _headed_by_kinds(board, found) if {"day", "kind"} <= keys else found


def _led_by_markers(board: Board, found: list[Piece]) -> list[Piece]:
    """As in "...; day 2 (5/24) Milo 45p": what opens a sentence goes with the name after it."""
    joined: list[Piece] = []
    for piece in found:
        before = joined[-1] if len(joined) > 1 else []
        sentence = board.sentence[piece[0].first]
        markers = bool(before) and all(claim.key in ("day", "label", "kind") for claim in before)
        here = markers and board.sentence[before[0].first] == sentence
        opens = here and board.sentence[joined[-2][-1].first] != sentence
        if opens and piece[0].key == "who":
            joined[-1] = before + piece
        else:
            joined.append(piece)
    return joined


def _headed_by_each(board: Board, piece: Piece) -> Iterator[Piece]:
    """As in "2 innings each: Theo 28, Nash 33": what stands before the colon is of all."""
    for at in range(1, len(piece)):
        between = board.items[piece[at - 1].after : piece[at].first]
        each = any(claim.key == "each" for claim in piece[:at])
        headed = each and [item.symbol for item in between] == ["colon"]
        if headed and piece[at].key == "who":
            yield piece[:at]
            yield piece[at:]
            return
    yield piece


def _headed_by_days(board: Board, found: list[Piece]) -> list[Piece]:
    """As in "Catch Mon and Wed: Reid 30 each day, Max 20": both days stand over the names."""
    for before, piece in pairwise(found):
        led = list(takewhile(lambda claim: claim.key in ("day", "kind"), piece))
        after = led[-1].after if led else len(board.items)
        headed = after < len(board.items) and board.items[after].symbol == "colon"
        if headed and led[0].key == "day" and all(c.key in ("day", "kind") for c in before):
            before += led
            del piece[: len(led)]
    return [piece for piece in found if piece]


def _headed_by_kinds(board: Board, found: list[Piece]) -> list[Piece]:
    """As in "55p vs Oaks, sunday just catch, 20 throws": a day and a kind with what they head."""
    joined: list[Piece] = []
    for piece in found:
        before = joined[-1] if len(joined) > 1 else []
        heads = len(before) == 2 and {claim.key for claim in before} == {"day", "kind"}
        same = heads and board.sentence[before[0].first] == board.sentence[piece[0].first]
        if same and all(claim.key in COUNTS for claim in piece):
            joined[-1] = before + piece
        else:
            joined.append(piece)
    return joined


def heads_days(board: Board, piece: Piece) -> bool:
    """As in "three days of catch: sat 30 throws, sun 30": a kind, a colon and a day after it."""
    if len(piece) < 3 or [claim.key for claim in piece[:2]] != ["kind", "day"]:
        return False
    return any(item.symbol == "colon" for item in board.items[piece[0].after : piece[1].first])


def heads_names(board: Board, piece: Piece) -> bool:
    """As in "Sat vs Dunmore" or "Game 2" on a line of its own, over lines that open with names."""
    if not {claim.key for claim in piece} <= {"day", "label", "opponent", "kind"}:
        return False
    first, after = piece[0].first, piece[-1].after
    ends = [at for at in range(after, min(after + 2, len(board.items)))
            if board.items[at].symbol == "newline"]  # fmt: skip
    opens = [item.symbol for item in board.items[max(0, first - 2) : first]]
    if not ends or "newline" not in opens:
        return False
    return any(c.key == "who" and ends[0] < c.first <= ends[0] + 2 for c in board.claims)


def _of_both(board: Board, found: list[Piece], claim: Claim) -> bool:
    """As in "leo 30p max 20p both 4 cb"; not "leo and max both 20p"."""
    both = claim.key == "each" and board.items[claim.first].text.lower() == "both"
    return both and bool(found) and bool(found[-1]) and found[-1][-1].key != "who"


def _closes_clause(board: Board, claim: Claim) -> bool:
    last = claim.after == len(board.items)
    return last or board.items[claim.after].symbol in ("dot", "stop", "newline", "comma", "semi")


def _said_of_all(board: Board, found: list[Piece], claim: Claim) -> Piece:
    """As in "Ike 18p, no spins for any of them": the claims of the clause that "them" closes."""
    if claim.key == "each" and not _closes_clause(board, claim):
        return []
    clause = board.clause[claim.first]
    here = [c for c in found[-1] if board.clause[c.first] == clause]
    if any(c.key == "who" for c in here) or not here:
        return []
    found[-1] = [c for c in found[-1] if board.clause[c.first] != clause]
    return here


def _cut(piece: Piece) -> Iterator[Piece]:
    """Cut "mon pen 20 wed pen 25" before each marker, "20 monday 25 tuesday" after each."""
    if len(piece) < FEWEST_CUT:
        yield piece
        return
    keys = [claim.key for claim in piece]
    for key in ("who", "day", "label", "kind"):
        if keys.count(key) < 2:
            continue
        marks = [i for i, claim in enumerate(piece) if claim.key == key]
        values = {str(piece[i].value) for i in marks}
        if len(values) < 2 or not any(claim.key in COUNTS for claim in piece):
            continue
        if _adjacent(marks):
            continue
        counts_first = next(c.key for c in piece if c.key == key or c.key in COUNTS) in COUNTS
        cuts = [i + 1 for i in marks[:-1]] if counts_first else _led(piece, marks[1:])
        for first, after in zip([0, *cuts], [*cuts, len(piece)], strict=True):
            yield from _cut(piece[first:after])
        return
    yield piece


def _led(piece: Piece, cuts: list[int]) -> list[int]:
    """As in "G1 Wes 62p G2 Teddy 49p": what leads the first name leads the others too."""
    leads = piece[0].key in ("label", "day", "kind")
    return [i - 1 if leads and i > 1 and _stands_before(piece, i) else i for i in cuts]


def _stands_before(piece: Piece, at: int) -> bool:
    before = piece[at - 1]
    return before.key == piece[0].key and before.after == piece[at].first


def _adjacent(marks: list[int]) -> bool:
    """Whether the markers stand side by side ("mon wed fri"): a list, not two outings."""
    return marks == list(range(marks[0], marks[0] + len(marks)))
