"""Street addresses, claimed before names are looked for: a lane may be a Lane."""

from core.reading.board import Board
from core.reading.roster import is_known

LARGEST_COUNT = 200  # pitches: a larger number before a street is a house's
_LONGEST_STREET = 3  # words before "lane"
_RECORD = frozenset({"num", "colon", "dash", "threw", "went", "had", "pitches", "open"})


def claim_addresses(board: Board) -> None:
    """As in "1420 Alder Lane", "9 Court Street"; "45 Drew, Lane 30" are two persons."""
    if not board.has("road"):
        return
    for at, item in enumerate(board.items):
        if item.symbol == "num" and item.digits and (after := _end_of_street(board, at)):
            board.no_log(at, after, "address")


def _end_of_street(board: Board, house: int) -> int | None:
    """Place after the street that follows the number, or None."""
    for road in range(house + 2, min(house + 2 + _LONGEST_STREET, len(board.items))):
        symbol = board.items[road].symbol
        if symbol == "road" and _is_street(board, house, road):
            return road + 1
        if board.items[road - 1].symbol not in ("word", "road", "adj"):
            return None
    return None


def _is_street(board: Board, house: int, road: int) -> bool:
    words = board.items[house + 1 : road]
    if not all(
        item.text[:1].isalpha() and item.symbol in ("word", "road", "adj") for item in words
    ):
        return False
    follows = board.items[road + 1].symbol if road + 1 < len(board.items) else ""
    if not is_known(board, board.items[road].name or board.items[road].text.lower()):
        return True
    large = (board.whole(house) or 0) > LARGEST_COUNT
    named = any(is_known(board, item.name) for item in words)
    return follows not in _RECORD and (large or not named)


__all__ = ["LARGEST_COUNT", "claim_addresses"]
