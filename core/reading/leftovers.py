"""What no rule explained: the numbers and words of the log that must be asked about."""

from core.reading.assemble import Draft
from core.reading.board import Board
from core.reading.entry import Unread, UnreadReason
from core.reading.items import NUMERIC

_HARMLESS = frozenset({"ord", "clock"})  # an inning ("in the 5th") or a time of day


def account_parts(board: Board, drafts: list[Draft]) -> None:
    """Numbers that add up to a stated pitch count are its parts, inning by inning."""
    for draft in drafts:
        total = draft.counts.get("pitches")
        loose = [at for at in board.free_numbers() if board.items[at].symbol == "num"]
        values = [board.whole(at) for at in loose]
        if total is not None and len(loose) > 1 and sum(v or 0 for v in values) == total:
            for at in loose:
                board.no_log(at, at + 1, "by inning")


def leftovers(board: Board, *, something_logged: bool) -> list[Unread]:
    """Unclaimed numbers, when the line logs something; a line of plain talk leaves none."""
    if not something_logged:
        return []
    return [
        Unread(board.items[at].text, UnreadReason.UNKNOWN_NUMBER)
        for at in board.free_numbers()
        if board.items[at].symbol not in _HARMLESS and not _is_pronoun(board, at)
    ]


def _is_pronoun(board: Board, at: int) -> bool:
    """The word "one" alone is mostly no number ("rough one", "the last one")."""
    return board.items[at].symbol in NUMERIC and board.items[at].name in ("one", "uno", "una")
