"""What kind of throwing a line is about."""

import re

from core.reading.board import Board, Handler, Rule, rule, says_unread
from core.reading.entry import UnreadReason


def says_kind(kind: str) -> Handler:
    """A handler that claims the match as a kind of outing."""

    def apply(board: Board, match: re.Match[str]) -> None:
        board.claim(match.start(), match.end(), "kind", kind)

    return apply


def _label(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "label", board.quote(match.start(), match.end()))


KIND_RULES: tuple[Rule, ...] = (
    rule("game 1", "game (hash)? num", _label),
    rule("first game", "firstgame | secondgame", _label),
    rule("pen", "(bullpen) | side (?= (dash|colon|num|comma|with))", says_kind("bullpen")),
    rule("warm-up", "warm", says_kind("bullpen")),
    rule("catch", "catch", says_kind("catch")),
    rule("live", "live", says_kind("live")),
    rule("game", "game | twogames", says_kind("game")),
    rule("batting practice", "bp", says_unread(UnreadReason.UNKNOWN_KIND)),
    rule("off", "restday | notthrown | ^ off", says_kind("off")),
)
