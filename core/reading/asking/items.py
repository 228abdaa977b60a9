"""Tokens to items: what each word or phrase of a question stands for."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import time

from core.reading.asking.names import Roster, bare, name_length, near_roster
from core.reading.asking.symbols import NAME, UNKNOWN
from core.reading.asking.tokens import Token
from core.reading.asking.vocabulary import Meaning, Words

_BEFORE_A_NAME = frozenset(["can", "is", "do", "did", "have", "if", "about", "use", "or", "and"])
_THINGS = "the a an this that our your some any my el la los un una mi"
_BEFORE_A_THING = frozenset(_THINGS.split())
_FORMS = {"date": "date", "team": "team", "range": "range", "ordinal": "ord", "base": "spot"}


@dataclass(frozen=True, slots=True)
class Item:
    """One piece of a question. `symbol` may be several with spaces ("who's" is "who is")."""

    symbol: str
    text: str
    start: int
    end: int
    value: object = None


def itemize(tokens: Sequence[Token], words: Words, roster: Roster) -> list[Item]:
    """Items in the order typed; words that say nothing ("please") are still there, as `glue`."""
    items: list[Item] = []
    at = 0
    while at < len(tokens):
        item, length = _item(tokens, at, words, roster, items)
        items.append(item)
        at += length
    return items


def _item(
    tokens: Sequence[Token], at: int, words: Words, roster: Roster, before: list[Item]
) -> tuple[Item, int]:
    token = tokens[at]
    if token.form == "mention":
        return _of(token, NAME), 1
    if token.form != "word":
        phrase = _phrase(tokens, at, words)
        return phrase if phrase and phrase[1] > 1 else (_shaped(token), 1)
    known = _phrase(tokens, at, words)
    length = name_length(tokens, at, roster)
    if length and (known is None or known[1] < length or _wants_name(tokens, at, before)):
        return _name(tokens[at : at + length]), length
    if known:
        return known
    if token.norm in words.numbers:
        return _spelled(tokens, at, words)
    return _unknown(tokens, at, words, roster, before)


def _of(token: Token, symbol: str, value: object = None) -> Item:
    return Item(symbol, token.text, token.start, token.end, value)


def _phrase(tokens: Sequence[Token], at: int, words: Words) -> tuple[Item, int] | None:
    for tail, meaning in words.phrases.get(tokens[at].norm, ()):
        after = tokens[at + 1 : at + 1 + len(tail)]
        if tuple(token.norm for token in after) == tail:
            return _meant(tokens[at : at + 1 + len(tail)], meaning), 1 + len(tail)
    return None


def _meant(tokens: Sequence[Token], meaning: Meaning) -> Item:
    text = " ".join(token.text for token in tokens)
    return Item(meaning.symbol, text, tokens[0].start, tokens[-1].end, meaning.value or None)


def _shaped(token: Token) -> Item:
    """A number, a date, a clock time, a mark: known by its shape."""
    if token.form == "number":
        whole = int(token.norm) if token.norm.isdigit() and len(token.norm) < 5 else None
        return _of(token, "num", whole)
    if token.form == "clock":
        return _of(token, "clock", clock_time(token.norm))
    if token.form == "stop":
        return _of(token, "stop")
    return _of(token, _FORMS.get(token.form, "mark"), token.norm)


def clock_time(norm: str) -> time | None:
    """The time of "9:00 am", "9a", "2:30" or "noon"; None for an hour that no clock shows.

    Without am or pm, an hour from 1 to 7 is in the afternoon: games are played by daylight.
    """
    if norm == "noon":
        return time(12)
    hour, minute = (int(part) for part in [*re.findall(r"\d+", norm), "0"][:2])
    if "p" in norm or (hour < 8 and "a" not in norm):
        hour += 12 if 0 < hour < 12 else 0
    elif "a" in norm and hour == 12:
        hour = 0
    return time(hour, minute) if hour < 24 and minute < 60 else None


def _wants_name(tokens: Sequence[Token], at: int, before: list[Item]) -> bool:
    """Whether a roster name that is also a word ("Will", "Grant") is a name here."""
    token = tokens[at]
    twice = [near.norm == token.norm for near in (*tokens[at + 1 : at + 2], *tokens[at - 1 : at])]
    if any(twice):
        return twice[0]  # "Will will go": the first is the name
    if not before:
        return False
    return before[-1].symbol.split()[-1] in _BEFORE_A_NAME or (
        token.text[0].isupper() and before[-1].symbol != "stop"
    )


def _name(tokens: Sequence[Token]) -> Item:
    text = " ".join(token.text for token in tokens)
    if bare(tokens[-1].norm) != tokens[-1].norm:
        text = text[:-2]
    return Item(NAME, text, tokens[0].start, tokens[-1].end)


def _spelled(tokens: Sequence[Token], at: int, words: Words) -> tuple[Item, int]:
    """A number in words: "sixty five", and "sixty" alone."""
    first = _of(tokens[at], "num", words.numbers[tokens[at].norm])
    if words.numbers[tokens[at].norm] % 10 == 0 and at + 1 < len(tokens):
        ones = words.numbers.get(tokens[at + 1].norm, 10)
        if ones < 10:
            both = _meant(tokens[at : at + 2], Meaning("num"))
            return replace(both, value=words.numbers[tokens[at].norm] + ones), 2
    return first, 1


def _unknown(
    tokens: Sequence[Token], at: int, words: Words, roster: Roster, before: list[Item]
) -> tuple[Item, int]:
    token = tokens[at]
    if near_roster(bare(token.norm), roster):
        return _name([token]), 1
    capital = token.text[0].isupper() and not token.text.isupper()
    if capital and before and before[-1].symbol != "stop":
        return _capital_name(tokens, at)
    slip = words.corrected(token.norm)
    if slip:
        return _meant([token], next(m for tail, m in words.phrases[slip] if not tail)), 1
    if at and tokens[at - 1].norm in _BEFORE_A_THING:
        return _of(token, "other"), 1
    return replace(_name([token]), symbol=UNKNOWN), 1


def _capital_name(tokens: Sequence[Token], at: int) -> tuple[Item, int]:
    """A name by its capital, with a single capital after it ("Caleb W")."""
    after = tokens[at + 1 : at + 2]
    if after and len(after[0].text) == 1 and after[0].text.isupper() and after[0].text != "I":
        return _name(tokens[at : at + 2]), 2
    return _name([tokens[at]]), 1
