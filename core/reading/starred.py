"""A word put right by a star, as a chat does it: "47 peaches 8 curves" ... "*pitches"."""

from core.reading.tokens import Form, Token

_FEWEST_LETTERS = 4
_STAR = "*"


def put_right(tokens: list[Token]) -> list[Token]:
    """The tokens with the last "*word" in place of the earlier word that it is nearest to.

    Unchanged where no earlier word is near enough: then the star says something else.
    """
    at = next(
        (
            i
            for i in range(len(tokens) - 1, 1, -1)
            if tokens[i].form is Form.WORD
            and tokens[i].tight
            and tokens[i - 1].text == _STAR
            and (not tokens[i - 1].tight or tokens[i - 2].text == "\n")
        ),
        None,
    )
    if at is None or (at + 1 < len(tokens) and tokens[at + 1].text == _STAR):
        return tokens
    meant = tokens[at].norm
    slip = _nearest(tokens[: at - 1], meant)
    if slip is None:
        return tokens
    tokens = list(tokens)
    tokens[slip] = tokens[slip]._replace(norm=meant)
    del tokens[at - 1 : at + 1]
    return tokens


def _nearest(tokens: list[Token], meant: str) -> int | None:
    """Place of the word nearest to the one meant, if it is near: half of its letters right."""
    from rapidfuzz.distance import OSA

    if len(meant) < _FEWEST_LETTERS:
        return None
    words = [
        (OSA.distance(token.norm, meant), i)
        for i, token in enumerate(tokens)
        if token.form is Form.WORD and token.norm != meant
    ]
    off, place = min(words, default=(len(meant), 0))
    return place if 2 * off <= len(meant) else None
