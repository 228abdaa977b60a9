"""Tokens to items: phrases become symbols with a meaning, numbers get their value."""

import re
from fractions import Fraction
from typing import NamedTuple

from core.reading.lexicon import MOST_SLIPS, Lexicon, Meaning, Phrases
from core.reading.tokens import Form, Token, number_value

_DRAWN_OUT = re.compile(r"(.)\1{2,}")
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
_WORD, _NUMBER, _MARK = Form.WORD, Form.NUMBER, Form.MARK  # an enum's members are slow to look up
_new = tuple.__new__  # a named tuple is slow to make by its name
_COUNTED_NOUNS = ("pitches", "throwscount", "curve", "breaking", "fastball", "strikes")
_WITH_DIGITS = frozenset(Form) - {Form.WORD, Form.MARK, Form.NEWLINE, Form.MENTION}
_MARK_SYMBOLS = {
    ",": "comma", ".": "dot", ":": "colon", "-": "dash", "(": "open", ")": "close", "/": "slash",
    "!": "stop", "?": "question", ";": "semi", "…": "dot", "+": "plus", "|": "semi", ">": "arrow",
    "→": "arrow", "¿": "askmark", "'": "quote", '"': "quote", "*": "star", "[": "open",
    "]": "close",
}  # fmt: skip


class Item(NamedTuple):
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
    norms = [token.norm for token in tokens]
    known = words.known
    strange = [
        at for at, norm in enumerate(norms) if norm not in known and tokens[at].form is _WORD
    ]
    if strange:
        unknown = {norms[at] for at in strange if tokens[at].text[:1].islower()}
        put_right = len(unknown) <= MOST_SLIPS  # a text in another language would take long
        for at in strange:
            norms[at] = _known_norm(tokens[at], words, put_right=put_right)
    items: list[Item] = []
    at, end = 0, len(tokens)
    while at < end:
        meaning = words.alone.get(norms[at])
        if meaning is not None:
            form, text, norm, start, end_, tight = tokens[at]
            name, digits = meaning.value or norm, form in _WITH_DIGITS
            items.append(
                _new(Item, (meaning.symbol, text, start, end_, None, None, name, tight, digits))
            )
            at += 1
            continue
        if norms[at] not in words.openers:
            items.append(_single(tokens, at))
            at += 1
            continue
        item, at = _next_item(tokens, norms, at, words)
        items.append(_mixed(items, item) if item.symbol == "frac" else item)
    return items


def _mixed(items: list[Item], part: Item) -> Item:
    """The whole number before a fraction joins it: "four and | two thirds"."""
    if part.value is None or part.value.denominator != 3:
        return part
    back = [item.symbol for item in items[-2:]]
    size = 2 if back == ["num", "and"] else 1 if back[-1:] == ["num"] else 0
    whole = items[-size] if size else None
    if whole is None or whole.whole is None:
        return part
    del items[-size:]
    return Item("num", f"{whole.text} {part.text}", whole.start, part.end, whole.whole + part.value,
                digits=whole.digits or part.digits, tight=whole.tight)  # fmt: skip


def _next_item(tokens: list[Token], norms: list[str], at: int, words: Lexicon) -> tuple[Item, int]:
    norm = norms[at]
    spells = norm in words.spell and tokens[at].form is _WORD
    spelled = _number_words(norms, at, words) if spells else None
    phrases = words.by_second.get(norm)
    phrase = _phrase(phrases, norms, at, words) if phrases is not None else None
    if phrase is not None and (spelled is None or phrase[1] > spelled[1]):
        meaning, after = phrase
        value = Fraction(meaning.value) if meaning.symbol == "frac" else None
        return _item(meaning.symbol, tokens, at, after, value=value, name=meaning.value), after
    if spelled is not None:
        return _item("num", tokens, at, spelled[1], value=spelled[0]), spelled[1]
    return _single(tokens, at), at + 1


def _single(tokens: list[Token], at: int) -> Item:
    """A token that no phrase took."""
    token = tokens[at]
    form, text, norm, start, end, tight = token
    if form is _WORD:
        return _new(Item, ("word", text, start, end, None, None, norm, tight, False))
    if form is _NUMBER:
        value = number_value(norm)
        return _new(Item, ("num", text, start, end, value, None, norm, tight, True))
    if form is _MARK and norm != "…":
        symbol = _MARK_SYMBOLS.get(norm, "mark")
        return _new(Item, (symbol, text, start, end, None, None, norm, tight, False))
    if token.form is Form.PERCENT:
        return _item("pct", tokens, at, at + 1, value=Fraction(token.norm.rstrip("%").strip()))
    if token.form is Form.RATIO:
        left, right = token.norm.split("/")
        return _item("ratio", tokens, at, at + 1, pair=(int(left.strip()), int(right.strip())))
    if token.form is Form.ORDINAL:
        digits = "".join(char for char in token.norm if char.isdigit())
        return _item("ord", tokens, at, at + 1, value=Fraction(digits))
    if token.norm == "…" and _is_leader(tokens, at):
        return _item("colon", tokens, at, at + 1)
    if token.form is Form.MARK:
        return _item(_MARK_SYMBOLS.get(token.norm, "mark"), tokens, at, at + 1)
    return _item(_FORM_SYMBOLS.get(token.form, "word"), tokens, at, at + 1, name=token.norm)


def _is_leader(tokens: list[Token], at: int) -> bool:
    """As in "Lane .... 26": dots that lead from what opens a line to its number."""
    opens = at in (1, 2) or Form.NEWLINE in (t.form for t in tokens[max(0, at - 3) : at - 1])
    number = at + 1 < len(tokens) and tokens[at + 1].form is Form.NUMBER
    return opens and number and not tokens[at].tight and tokens[at - 1].form is Form.WORD


def _phrase(
    phrases: Phrases, norms: list[str], at: int, words: Lexicon
) -> tuple[Meaning, int] | None:
    following = norms[at + 1] if at + 1 < len(norms) else ""
    longer = phrases.get(following, ())
    for tail, meaning in (*longer, *phrases.get("", ())) if longer else phrases.get("", ()):
        after = at + 1 + len(tail)
        if len(tail) < 2 or tuple(norms[at + 1 : after]) == tail:
            if meaning.symbol == "oneout" and norms[after : after + 1] == ["of"]:
                continue  # "1 out of 10"
            if meaning.symbol == "good" and norms[at].isdigit() and _counted(norms, after, words):
                continue  # "100 pitches", and not "arm is 100"
            return meaning, after
    return None


def _counted(norms: list[str], at: int, words: Lexicon) -> bool:
    """Whether the word there is a noun that is counted."""
    meanings = words.phrases.get(norms[at], ()) if at < len(norms) else ()
    return any(not tail and m.symbol in _COUNTED_NOUNS for tail, m in meanings)


def _known_norm(token: Token, words: Lexicon, *, put_right: bool) -> str:
    """The word as the vocabulary spells it: without 's, and with a slip put right."""
    norm = token.norm
    if words.knows(norm):
        return norm
    if norm.endswith("'s") and words.knows(norm[:-2]):
        return norm[:-2]
    if not put_right or (not norm.isalpha() and any(char.isdigit() for char in norm)):
        return norm  # "r²ounds": a sign of a number is no slip
    capital = token.text[:1].isupper()
    return _shortened(norm, words) or words.corrected(norm, capital=capital) or norm


def _shortened(norm: str, words: Lexicon) -> str | None:
    """As in "goooo" is "go", "goood" is "good": letters drawn out."""
    if _DRAWN_OUT.search(norm) is None:
        return None
    for kept in (r"\1", r"\1\1"):
        short = _DRAWN_OUT.sub(kept, norm)
        if short != norm and words.knows(short):
            return short
    return None


def _number_words(norms: list[str], at: int, words: Lexicon) -> tuple[Fraction, int] | None:
    """Value and end of "twenty five", "a dozen", "sesenta y dos"; None when it is no number."""
    first = norms[at]
    following = norms[at + 1] if at + 1 < len(norms) else ""
    if first == "half" and norms[at + 1 : at + 3] == ["a", words.dozen]:
        return Fraction(6), at + 3
    if first == "a" and norms[at + 1 : at + 3] == ["half", words.dozen]:
        return Fraction(6), at + 3
    if first == "a" and norms[at + 1 : at + 5] == [words.dozen, "and", "a", "half"]:
        return Fraction(18), at + 5
    if first in words.dozens_after and following == words.dozen:
        return Fraction(words.dozens_after[first]), at + 2
    if first == words.dozen:
        return Fraction(12), at + 1
    value = words.numbers.get(first)
    if value is None:
        return None
    if first == words.hundred:  # "ciento cinco"
        rest = _number_words(norms, at + 1, words) if at + 1 < len(norms) else None
        return (value + rest[0], rest[1]) if rest and rest[0] < value else (Fraction(value), at + 1)
    after = at + 1
    if value in range(20, 91, 10):
        if words.compound_and and following == words.compound_and and at + 2 < len(norms):
            following, after = norms[at + 2], after + 1
        joined = after > at + 1
        one = joined and following in words.compound_one
        unit = 1 if one else words.numbers.get(following)
        if unit in range(1, 10):
            return Fraction(value + (unit or 0)), after + 1
    return Fraction(value), at + 1


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
    form, text, norm, start, end, tight = tokens[first]
    digits = form in _WITH_DIGITS
    if after > first + 1:
        text = " ".join([token.text for token in tokens[first:after]])
        digits = any(token.form in _WITH_DIGITS for token in tokens[first:after])
        end = tokens[after - 1].end
    return _new(Item, (symbol, text, start, end, value, pair, name or norm, tight, digits))
