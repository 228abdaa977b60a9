"""What shows that a word opens a record: where it stands, and what follows it."""

from core.reading.board import Board

_OPENS_A_RECORD = frozenset(
    {"num", "colon", "dash", "threw", "went", "had", "is", "none", "pct", "bullpen", "catch",
     "live", "game", "off", "restday", "with", "about", "catching", "feels", "a", "adv", "open",
     "finish", "warm", "ratio", "notpitched", "notthrown", "vague", "site", "said_day", "frac",
     "running", "each", "both", "through", "after", "sore", "tired", "side", "modal", "today",
     "yesterday", "weekday", "sat", "pain", "nopain", "innings", "pitches", "curve", "last",
     "said_vs", "vs", "of", "gamelike", "relieved", "first", "idiom", "faced", "at", "painidiom",
     "left"}
)  # fmt: skip
PLAIN_RECORD = frozenset({"relieved", "num", "colon", "dash", "threw", "went", "pitches"})


def logged_for(board: Board, at: int) -> bool:
    """As in "for Marcus", "logging for Marcus", "registro de Marcos"."""
    before = [item.symbol for item in board.items[max(0, at - 2) : at]]
    if done_for(board, at):
        return False
    return before[-1:] == ["for"] or before == ["logthis", "of"]


def done_for(board: Board, at: int) -> bool:
    """As in "saved it for Ty", "closed it out for Ty": who had pitched before."""
    if at < 2 or board.items[at - 1].symbol != "for":
        return False
    done = board.items[at - 2].text.lower()
    own = board.author == "pitcher" and done.endswith(("save", "saved"))
    return own or done == "it" or done.endswith((" it", "it out"))


def opens_piece(board: Board, at: int) -> bool:
    """Whether the word opens a piece of the line."""
    return at == 0 or board.piece[at] != board.piece[at - 1] or board.items[at - 1].symbol == "and"


def counts_ahead(board: Board, at: int) -> int:
    """Numbers in the rest of the piece, when the first stands right here: "max 30p 4cb 2ip"."""
    if at >= len(board.items) or board.items[at].symbol != "num":
        return 0
    return sum(
        board.items[i].symbol == "num" and board.piece[i] == board.piece[at]
        for i in range(at, min(at + 12, len(board.items)))
    )


def record_next(board: Board, at: int) -> bool:
    """Whether what stands here can follow the name of somebody who is told about."""
    return at < len(board.items) and (
        board.items[at].symbol in _OPENS_A_RECORD
        or board.items[at].symbol in ("comma", "and", "for")
    )
