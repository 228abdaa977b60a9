"""Pain of another day that is gone today: "elbow hurt last week but nothing today"."""

from core.reading import groups  # noqa: F401  declares the groups
from core.reading.board import Board
from core.reading.clauses import span
from core.reading.entry import UnreadReason
from core.reading.pattern import LazyPattern

_GONE_SINCE = LazyPattern(
    "(but|comma) (the|it|i|he|hisher|site|is|feels|adv)*"
    " <g:restday|nothing|none|insteadof|good|goodadj> (pain|today|adv)*"
    " (?= comma|dot|stop|newline|semi|$)"
)
_OTHER_DAYS = frozenset({"yesterday", "weekday", "sat"})
_NOT_THROWN = frozenset({"off", "rest", "throw", "throws", "thrown", "throwing"})


def read_healed(board: Board) -> None:
    """Claim "but nothing today" after pain of a time before as no pain, and ask of yesterday's."""
    if not board.has("pain", "sore"):
        return
    for match in list(_GONE_SINCE.finditer(board.line)):
        said = match.start("g")
        words = set(board.items[said].text.lower().split())
        pained = _pain_before(board, match.start())
        if not pained or words & _NOT_THROWN or not all(map(board.free, range(said, match.end()))):
            continue
        first, after = span(board.clause, pained[0])
        if any(board.items[i].symbol in _OTHER_DAYS for i in range(first, after)):
            board.unread(first, after, UnreadReason.UNCLEAR_PAIN)
        elif not any(board.items[i].symbol == "pastref" for i in range(first, after)):
            continue
        else:
            for at in range(first, after):
                if board.items[at].symbol in ("pain", "sore", "site", "pastref") and board.free(at):
                    board.no_log(at, at + 1, "earlier")
        board.claim(said, match.end(), "nopain")


def _pain_before(board: Board, at: int) -> list[int]:
    """Places of pain words in the clause that ends right before this place."""
    if at == 0:
        return []
    first, after = span(board.clause, at - 1)
    return [i for i in range(first, after) if board.items[i].symbol in ("pain", "sore")]
