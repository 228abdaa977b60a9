"""Pain of another day that is gone today: "elbow hurt last week but nothing today"."""

from core.reading import groups  # noqa: F401  declares the groups
from core.reading.board import Board
from core.reading.clauses import span
from core.reading.entry import Pain, UnreadReason
from core.reading.pattern import LazyPattern
from core.reading.severity import WORST

_GONE_SINCE = LazyPattern(
    "(but|comma) (the|it|i|he|hisher|site|is|feels|adv|a|at|about)*"
    " <g:restday|nothing|none|insteadof|good|goodadj|num> (pain|today|adv)*"
    " (?= comma|dot|stop|newline|semi|$)"
)
_OTHER_DAYS = frozenset({"yesterday", "weekday", "sat"})
_NOT_THROWN = frozenset({"off", "rest", "throw", "throws", "thrown", "throwing"})


def read_healed(board: Board) -> None:
    """Claim "but nothing today" after pain of a time before as no pain, and ask of yesterday's."""
    for match in list(_GONE_SINCE.finditer(board.line)):
        said = match.start("g")
        words = set(board.items[said].text.lower().split())
        pained = _pain_before(board, match.start())
        if board.items[said].symbol == "num" and board.items[said].value != 0:
            _still_hurts(board, match.start(), said, match.end(), pained)
            continue
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


def _still_hurts(board: Board, first: int, said: int, after: int, pained: list[int]) -> None:
    """As in "elbow was a 5 last week, its a 2 today": what it is now is the report."""
    level = board.items[said].whole
    told = {item.symbol for item in board.items[first:after]}
    start, end = span(board.clause, pained[0]) if pained else (0, 0)
    before = board.items[start:end]
    sites = [item.name for item in before if item.symbol == "site"]
    past = any(item.symbol == "pastref" for item in before)
    if level is None or level > WORST or "today" not in told or not past or len(sites) != 1:
        return
    for at in range(start, end):
        if board.free(at) and board.items[at].symbol != "newline":
            board.no_log(at, at + 1, "earlier")
    board.claim(said, after, "pain", (Pain(sites[0], level),))


def _pain_before(board: Board, at: int) -> list[int]:
    """Places of pain words in the clause that ends right before this place."""
    if at == 0:
        return []
    first, after = span(board.clause, at - 1)
    told = [i for i in range(first, after) if board.items[i].symbol in ("pain", "sore")]
    graded = board.items[at].symbol in ("but", "comma") and at + 1 < len(board.items)
    if not told and graded and any(i.symbol == "num" for i in board.items[first:after]):
        told = [i for i in range(first, after) if board.items[i].symbol == "site"]
    return told
