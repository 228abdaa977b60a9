"""Cuts a text to what Slack takes, between two characters as people see them.

Slack does not say in which unit it counts; the largest, UTF-16 units, is on the safe side.
"""

from collections.abc import Iterator

from wcwidth import iter_graphemes


def length(text: str) -> int:
    """The length in UTF-16 units."""
    return len(text) if text.isascii() else len(text.encode("utf-16-le", "surrogatepass")) // 2


def cut(text: str, longest: int) -> str:
    """The text, or as much of it as fits into `longest` units with "…" at its end."""
    return text if length(text) <= longest else next(pieces(text, longest - 1)) + "…"


def pieces(text: str, longest: int) -> Iterator[str]:
    """The text in pieces of at most `longest` units; one sign longer than that is left out."""
    piece, size = "", 0
    for sign in iter_graphemes(text):
        units = length(sign)
        if units > longest:
            continue
        if size + units > longest:
            yield piece
            piece, size = "", 0
        piece += sign
        size += units
    yield piece
