"""A question cut into tokens, each with its place, so that `unclear` quotes as typed."""

import re
import unicodedata
from dataclasses import dataclass, replace

from core.reading.invisible import places_seen

_TOKEN = re.compile(
    r"""
      (?P<mention> <@[A-Z0-9]+(?:\|[^>\n]{0,80})?> )
    | (?P<skip> <[^>\s]{1,400}> | https?://\S{1,400} | :[a-z][a-z0-9_+-]{1,40}: )
    | (?P<date> \d{4}-\d{1,2}-\d{1,2}(?!\d) | (?<![\d/])\d{1,2}/\d{1,2}(?:/\d{2,4})?(?![\d/]) )
    | (?P<clock> (?<!\d)\d{1,2}:\d{2}(?!\d)(?:\s?[ap]\.?m?\b\.?)?
               | (?<![\d.])\d{1,2}\s?[ap]\.?m\b\.?
               | (?<![\d.])\d{1,2}a\b | \bnoon\b )
    | (?P<team> \b\d{1,2}\s?u\b )
    | (?P<range> (?<![\d.])\d{1,3}\s?(?:-|–|to|or|o|a)\s?\d{1,3}(?![\d:/.]|\s?[ap]m) )
    | (?P<ordinal> (?<![\d.])\d{1,2}(?:st|nd|rd|th|er|do|to)\b )
    | (?P<base> \b[123]b\b )
    | (?P<number> \d+(?:\.\d+)?(?:\s[12]/3)? )
    | (?P<word> \bvs\. | [^\W\d_]+(?:['’`´][^\W\d_]+)* )
    | (?P<stop> [.?!¿¡;\n]+ )
    | (?P<mark> \S )
    """,
    re.VERBOSE | re.IGNORECASE,
)
_APOSTROPHES = str.maketrans("’`´", "'''")


@dataclass(frozen=True, slots=True)
class Token:
    """One piece of a question; `form` is the name of its pattern, `norm` is folded."""

    form: str
    text: str
    norm: str
    start: int
    end: int


def tokenize(text: str) -> list[Token]:
    """Cut a question into tokens; links and `:emoji:` codes are left out."""
    seen = places_seen(text)
    if seen is None:
        return _tokens(text)
    return [
        replace(token, start=seen[token.start], end=seen[token.end - 1] + 1)
        for token in _tokens("".join(text[place] for place in seen))
    ]


def _tokens(text: str) -> list[Token]:
    return [
        Token(name, match[0], fold(match[0]), match.start(), match.end())
        for match in _TOKEN.finditer(text)
        if (name := match.lastgroup or "mark") != "skip"
    ]


def fold(word: str) -> str:
    """Lower case, without accents and with one kind of apostrophe ("Mañana" is "manana")."""
    word = word.lower()
    if word.isascii():
        return word
    decomposed = unicodedata.normalize("NFKD", word.translate(_APOSTROPHES))
    return "".join(char for char in decomposed if not unicodedata.combining(char))
