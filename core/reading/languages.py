"""Which of the two languages a line is in."""

from functools import cache

from core.reading.tokens import Form, Token, tokenize
from core.reading.vocabulary import given_names, language

_SHORT = 3  # letters


def tell_language(tokens: list[Token]) -> str:
    """As in "es" when more words belong to Spanish alone than to English alone, else "en".

    The words of the trade decide; fillers only where those leave it open. A line with as many of
    both is Spanish: its tables hold the English words that Spanish speakers mix in.
    """
    only_english, only_spanish = _words_apart()
    if only_spanish.isdisjoint([token.norm for token in tokens]):
        return "en"
    spanish = _count(tokens, only_spanish)
    if not spanish:
        return "en"
    english = _count(tokens, only_english)
    if spanish == english:
        only_english, only_spanish = _fillers_apart()
        spanish, english = _count(tokens, only_spanish), _count(tokens, only_english)
        return "es" if spanish >= english else "en"
    return "es" if spanish > english else "en"


def _count(tokens: list[Token], words: frozenset[str]) -> int:
    return sum(
        token.norm in words and token.form is Form.WORD and not _is_perhaps_a_name(tokens, at)
        for at, token in enumerate(tokens)
    )


def _is_perhaps_a_name(tokens: list[Token], at: int) -> bool:
    """As in "Dom 34p", who is no Sunday, and "Al 26 pitches"; "lance 34" is no Lance."""
    token = tokens[at]
    if not token.text[:1].isupper():
        return token.norm in given_names() and token.norm not in _words_of("es")
    counted = tokens[at + 1 : at + 2] and tokens[at + 1].form is Form.NUMBER
    return token.norm in given_names() or (bool(counted) and len(token.text) <= _SHORT)


@cache
def _words_apart() -> tuple[frozenset[str], frozenset[str]]:
    """The words of English alone, and of Spanish alone."""
    english, spanish = _words_of("en"), _words_of("es")
    return english - spanish, spanish - english


@cache
def _fillers_apart() -> tuple[frozenset[str], frozenset[str]]:
    """The fillers of English alone, and of Spanish alone."""
    english, spanish = language("en").fillers, language("es").fillers
    return english - spanish, spanish - english


@cache
def _words_of(lang: str) -> frozenset[str]:
    """Every word of the language's tables, but for the fillers."""
    tables = language(lang)
    phrases = {token.norm for phrase, _, _ in tables.phrases for token in tokenize(phrase)}
    return frozenset(phrases | set(tables.numbers)) | tables.everyday
