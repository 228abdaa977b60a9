"""Which language a question is typed in."""

from collections.abc import Sequence
from functools import cache
from typing import Literal

from core.reading.asking.tokens import Token
from core.reading.asking.vocabulary import words


def tell_language(tokens: Sequence[Token]) -> Literal["en", "es"]:
    """The language that knows more of the words; English when both know as many."""
    norms = [token.norm for token in tokens if token.form == "word"]
    spanish = sum(norm in _single("es") for norm in norms)
    return "es" if spanish > sum(norm in _single("en") for norm in norms) else "en"


@cache
def _single(lang: str) -> frozenset[str]:
    """Every word that begins a phrase of the language, and its spelled numbers."""
    return frozenset(words(lang).phrases) | frozenset(words(lang).numbers)
