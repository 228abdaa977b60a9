"""Tokens to items: phrases become symbols with a meaning, numbers get their value."""

import re
from dataclasses import dataclass
from fractions import Fraction

from core.reading.lexicon import Lexicon
from core.reading.tokens import Form, Token, number_value

NUMERIC = frozenset({"num", "pct", "ratio", "ord", "clock", "money", "isodate"})
_FORM_SYMBOLS = {
    Form.RATIO: "ratio",
    Form.ORDINAL: "ord",
    Form.CLOCK: "clock",
    Form.MONEY: "money",
    Form.DATE: "isodate",
    Form.MENTION: "mention",
    Form.NEWLINE: "newline",
}
_MARK_SYMBOLS = {
    ",": "comma", ".": "dot", ":": "colon", "-": "dash", "(": "open", ")": "close", "/": "slash",
    "!": "stop", "?": "question", ";": "semi", "…": "dot", "+": "plus", "|": "semi", ">": "arrow",
    "→": "arrow", "¿": "askmark", "'": "quote", '"': "quote", "*": "star", "[": "open", "]": "close",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Item:
    """One unit of meaning. `value` of a number; `pair` of a/b; `name` of a site, day or word."""

    symbol: str
    text: str
    start: int
    end: int
    value: Fraction | None = None
    pair: tuple[int, int] | None = None
    name: str = ""
    tight: bool = False
    digits: bool = False

    @property
    def whole(self) -> int | None:
        """The value as a whole number, or None."""
        return (
            self.value.numerator if self.value is not None and self.value.denominator == 1 else None
        )


def itemize(tokens: list[Token], words: Lexicon) -> list[Item]:
    """Turn tokens into items, the longest phrase first."""
    items: list[Item] = []
    index = 0
    while index < len(tokens):
        item, index = _next_item(tokens, index, words)
        if item.symbol == "frac":
            item = _mixed(items, item)
        items.append(item)
    return items


def _mixed(items: list[Item], part: Item) -> Item:
    """ "four and | two thirds": the whole number before a fraction joins it (and is taken off)."""
    if part.value is None or part.value == Fraction(1, 2):
        return part
    back = [item.symbol for item in items[-2:]]
    size = 2 if back == ["num", "and"] else 1 if back[-1:] == ["num"] else 0
    whole = items[-size] if size else None
    if whole is None or whole.whole is None:
        return part
    del items[-size:]
    return Item("num", f"{whole.text} {part.text}", whole.start, part.end, whole.whole + part.value,
                digits=whole.digits or part.digits, tight=whole.tight)  # fmt: skip


def _next_item(tokens: list[Token], at: int, words: Lexicon) -> tuple[Item, int]:
    token = tokens[at]
    spelled = _number_words(tokens, at, words) if token.form is Form.WORD else None
    phrase = _phrase(tokens, at, words)
    if phrase is not None and (spelled is None or phrase[1] > spelled[1]):
        return phrase
    if spelled is not None:
        value, after = spelled
        return _item("num", tokens, at, after, value=value), after
    if token.form is Form.NUMBER:
        return _item("num", tokens, at, at + 1, value=number_value(token.norm)), at + 1
    if token.form is Form.PERCENT:
        return _item(
            "pct", tokens, at, at + 1, value=Fraction(token.norm.rstrip("% \t\u00a0"))
        ), at + 1
    if token.form is Form.RATIO:
        left, right = token.norm.split("/")
        return _item("ratio", tokens, at, at + 1, pair=(int(left), int(right))), at + 1
    if token.form is Form.ORDINAL:
        digits = "".join(char for char in token.norm if char.isdigit())
        return _item("ord", tokens, at, at + 1, value=Fraction(digits)), at + 1
    if token.form is Form.MARK:
        return _item(_MARK_SYMBOLS.get(token.norm, "mark"), tokens, at, at + 1), at + 1
    return _item(_FORM_SYMBOLS.get(token.form, "word"), tokens, at, at + 1, name=token.norm), at + 1


def _phrase(tokens: list[Token], at: int, words: Lexicon) -> tuple[Item, int] | None:
    norm = _known_norm(tokens[at], words)
    for tail, meaning in words.phrases.get(norm, ()):
        after = at + 1 + len(tail)
        if all(
            _known_norm(token, words) == word
            for token, word in zip(tokens[at + 1 : after], tail, strict=False)
        ) and after <= len(tokens):
            value = Fraction(meaning.value) if meaning.symbol == "frac" else None
            return _item(meaning.symbol, tokens, at, after, value=value, name=meaning.value), after
    return None


def _known_norm(token: Token, words: Lexicon) -> str:
    """The word as the vocabulary spells it: without 's, and with a slip put right."""
    norm = token.norm
    if token.form is not Form.WORD or words.knows(norm):
        return norm
    if norm.endswith("'s") and words.knows(norm[:-2]):
        return norm[:-2]
    return _shortened(norm, words) or words.corrected(norm) or norm


def _shortened(norm: str, words: Lexicon) -> str | None:
    """ "goooo" is "go", "goood" is "good": letters drawn out."""
    for kept in (r"\1", r"\1\1"):
        short = re.sub(r"(.)\1{2,}", kept, norm)
        if short != norm and words.knows(short):
            return short
    return None


def _number_words(tokens: list[Token], at: int, words: Lexicon) -> tuple[Fraction, int] | None:
    """ "twenty five", "a dozen", "two thirds", "four and a third"; None when it is no number."""
    first = tokens[at].norm
    following = tokens[at + 1].norm if at + 1 < len(tokens) else ""
    if first in words.dozens_after and following == words.dozen:
        return Fraction(words.dozens_after[first]), at + 2
    if first == words.dozen:
        return Fraction(12), at + 1
    value = words.numbers.get(_slip_free(first, words))
    if value is None:
        return None
    after = at + 1
    if value in range(20, 91, 10):
        if words.compound_and and following == words.compound_and and at + 2 < len(tokens):
            following, after = tokens[at + 2].norm, after + 1
        unit = words.numbers.get(following)
        if unit in range(1, 10):
            return Fraction(value + (unit or 0)), after + 1
    return Fraction(value), at + 1


def _slip_free(norm: str, words: Lexicon) -> str:
    if words.knows(norm):
        return norm
    return words.corrected(norm) or norm


def _item(
    symbol: str,
    tokens: list[Token],
    first: int,
    after: int,
    *,
    value: Fraction | None = None,
    pair: tuple[int, int] | None = None,
    name: str = "",
) -> Item:
    text = " ".join(token.text for token in tokens[first:after])
    digits = any(char.isdigit() for char in text)
    return Item(
        symbol, text, tokens[first].start, tokens[after - 1].end, value, pair,
        name or tokens[first].norm, tokens[first].tight, digits,
    )  # fmt: skip
