"""A typed line cut into tokens. Every token keeps its place, so that `unread` quotes as typed."""

import re
import unicodedata
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from core.reading.invisible import places_seen


class Form(StrEnum):
    """What a token looks like, before anybody asks what it means."""

    WORD = "word"
    NUMBER = "number"  # 62, 4.1, 2/3, 4 1/3
    RATIO = "ratio"  # 38/62 and every other a/b that is no usual fraction
    PERCENT = "percent"
    ORDINAL = "ordinal"  # 5th
    CLOCK = "clock"  # 5:30, 8am
    MONEY = "money"
    DATE = "date"  # 2026-04-18, 4/18/26
    MENTION = "mention"  # <@U41K7>
    MARK = "mark"  # punctuation, one character
    NEWLINE = "newline"


class Token(NamedTuple):
    """One piece of the line; `norm` is lower case without accents."""

    form: Form
    text: str
    norm: str
    start: int
    end: int
    tight: bool  # nothing between this token and the one before it


_TOKEN = re.compile(
    r"""
    [^\S\n]* (?:
      # Most words, and most counts before a word, are told at once: no other row would take them.
      (?P<plain> [a-z]+(?=[\s,]|$) )
    | (?P<count> \d{1,3}(?=[ ]?(?:[bcfghijklmoquwxz]|p(?!m))) )
    | (?P<link> https?://[^\s]{1,400} )
    | (?P<initials> (?:[A-Z]\.){2,} )
    | (?P<word> [^\W\d_½⅓⅔¼¾]+(?:['’`´][^\W\d_]+)* )
    | (?P<mention> <@[A-Z0-9]+(?:\|[^>\n]{0,80})?> )
    | (?P<skip> <(?:https?:|mailto:|[\#!])[^>\n]{0,400}> | :[a-z][a-z0-9_+-]{1,40}:
               | (?<!\d):(?:[+-]1|100|1234|8ball|[123](?:st|nd|rd)_place_medal): )
    | (?P<entity> &(?:amp|lt|gt); )
    | (?P<date> \d{4}-\d{1,2}-\d{1,2}(?!\d) | (?<![\d/])\d{1,2}/\d{1,2}/\d{2,4}(?![\d/]) )
    | (?P<clock> (?<!\d)\d{1,2}:\d{2}(?!\d)(?:\s?[ap]\.?\s?m\b\.?)? | (?<![\d.])\d{1,2}\s?[ap]m\b )
    | (?P<money> \$\s?\d+(?:[.,]\d+)? )
    | (?P<percent> (?<![\d.])\d{1,3}\s?% )
    | (?P<ordinal> (?<![\d.])\d{1,2}(?:st|nd|rd|th|ra|da|ro|ta|er|do|to|va|na|º|ª|°)(?![^\W\d_]) )
    | (?P<number> (?<![\d/.])\d{1,2}(?:\s+|-|\s?&\s?|\s+(?:and|n|y)\s+)(?:1/3|2/3|1/2)(?![\d/])
               | (?<![\d/.])(?:1/3|2/3|1/2)(?![\d/])
               | (?:(?<!\d)\d{1,2}\s?)?[½⅓⅔¼¾]
               | \d{1,3}(?:,\d{3})+(?!\d)
               | (?:\d+|(?<![.\d]))\.\d+(?!\d*\.\d) )
    | (?P<ratio> (?<![\d/.])\d{1,3}\s?/\s?\d{1,3}(?![\d/]) )
    | (?P<integer> \d+ )
    | (?P<newline> \n )
    | (?P<dots> \.{2,} )
    | (?P<mark> \S )
    )
    """,
    re.VERBOSE,
)
_WORD, _MARK = Form.WORD, Form.MARK  # looking up a member of an enum is slow
_new = tuple.__new__  # and so is making a named tuple by its name
_LEFT_OUT = frozenset({"link", "skip"})
_FORMS = {form.value: form for form in Form} | {
    "integer": Form.NUMBER,
    "count": Form.NUMBER,
    "plain": Form.WORD,
    "initials": Form.WORD,
    "entity": Form.MARK,
    "dots": Form.MARK,
}
# By the number of the row: its form, or None for what is left out.
_FORM_OF_KIND = [None] + [None if name in _LEFT_OUT else _FORMS[name] for name in _TOKEN.groupindex]
_TOLD_AT_ONCE = _TOKEN.groupindex["count"]  # "plain" and "count", which are their own norm
_SIGN = _TOKEN.groupindex["mark"]
_ENTITIES = {"&amp;": "&", "&lt;": "<", "&gt;": ">"}
_MARKS = str.maketrans(
    {"–": "-", "—": "-", "−": "-", "’": "'", "`": "'", "´": "'", "“": '"', "”": '"'}
)
_PARTS_IN_DIGITS = {"½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4"}
_PARTS = {
    "½": Fraction(1, 2),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
}


def tokenize(text: str) -> list[Token]:
    """Cut a line into tokens; links, channel names and `:emoji:` codes are left out.

    A hyphen between a letter or digit and a letter only spells a word ("change-up", "30-pitch")
    and is left out too, so that both spellings are the same words. Invisible signs are not
    part of a token, but its place counts them.
    """
    seen = places_seen(text)
    if seen is None:
        return _tokens(text)
    return [
        token._replace(start=seen[token.start], end=seen[token.end - 1] + 1)
        for token in _tokens("".join(text[place] for place in seen))
    ]


def _tokens(text: str) -> list[Token]:
    tokens: list[Token] = []
    previous_end = 0
    for match in _TOKEN.finditer(text.rstrip()):
        kind = match.lastindex or 0
        form = _FORM_OF_KIND[kind]
        if form is None:
            continue
        raw = match[kind]
        end = match.end()
        start = end - len(raw)
        if kind <= _TOLD_AT_ONCE:
            norm = raw
        elif form is _WORD:
            norm = raw.lower() if raw.isascii() else fold(raw)
        elif form is _MARK:
            if kind == _SIGN and _is_spelling_hyphen(text, start, end):
                continue
            norm = _mark(raw)
        else:
            norm = _PARTS_IN_DIGITS.get(raw, raw)
        tokens.append(
            _new(Token, (form, raw, norm, start, end, start == previous_end and start > 0))
        )
        previous_end = end
    return tokens


@lru_cache(maxsize=512)
def _mark(raw: str) -> str:
    return "…" if raw[:2] == ".." else _ENTITIES.get(raw, raw.translate(_MARKS))


def fold(word: str) -> str:
    """Lower case, without accents and with one kind of apostrophe ("Mañana" is "manana")."""
    word = word.lower()
    if word.isascii() or word == "él":  # "el" is no person
        return word
    decomposed = unicodedata.normalize("NFKD", word.translate(_MARKS))
    return "".join(char for char in decomposed if not unicodedata.combining(char))


@lru_cache(maxsize=4096)
def number_value(norm: str) -> Fraction:
    """The value of a NUMBER token's text: "62", "4.1", "2/3", "4 1/3", "4½", "1,200"."""
    if norm.isdigit():
        return Fraction(int(norm))
    if norm[-1] in _PARTS:
        return Fraction(int(norm[:-1].strip() or 0)) + _PARTS[norm[-1]]
    if "/" in norm:
        numbers = [int(part) for part in re.findall(r"\d+", norm)]
        return Fraction(numbers[-2], numbers[-1]) + (numbers[0] if len(numbers) == 3 else 0)
    return Fraction(norm.replace(",", ""))


def _is_spelling_hyphen(text: str, start: int, end: int) -> bool:
    return (
        text[start:end] in "-‐‑"
        and start > 0
        and end < len(text)
        and text[start - 1].isalnum()
        and text[end].isalpha()
    )
