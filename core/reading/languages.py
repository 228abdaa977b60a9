"""Which of the two languages a line is in."""

from functools import cache

from core.reading.tokens import Form, Token, tokenize
from core.reading.vocabulary import given_names, language


def tell_language(tokens: list[Token]) -> str:
    """As in "es" when more words belong to Spanish alone than to English alone, else "en"."""
    names = given_names()
    words = [t.norm for t in tokens if t.form is Form.WORD and t.norm not in names]
    only_english, only_spanish = _words_apart()
    spanish = sum(map(only_spanish.__contains__, words))
    return "es" if spanish and spanish > sum(map(only_english.__contains__, words)) else "en"


@cache
def _words_apart() -> tuple[frozenset[str], frozenset[str]]:
    """The words of English alone, and of Spanish alone."""
    english, spanish = _words_of("en"), _words_of("es")
    return english - spanish, spanish - english


@cache
def _words_of(lang: str) -> frozenset[str]:
    """Every word of the language's tables."""
    tables = language(lang)
    phrases = {token.norm for phrase, _, _ in tables.phrases for token in tokenize(phrase)}
    return frozenset(phrases | set(tables.numbers)) | tables.everyday | tables.fillers
