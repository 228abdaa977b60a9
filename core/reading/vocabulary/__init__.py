"""The words of each language, as tables."""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Language:
    """Tables of one language: phrases by symbol, named things, number words, everyday words."""

    words: tuple[Mapping[str, str], ...]
    named: Mapping[str, Mapping[str, str]]
    numbers: Mapping[str, int]
    plain: frozenset[str]


def language(lang: str) -> Language:
    """The tables of "en" or "es"; imported only when a line in that language is read."""
    from core.reading.vocabulary import plain, shared

    if lang == "es":
        from core.reading.vocabulary import spanish as own

        everyday = frozenset(plain.SPANISH)
    else:
        from core.reading.vocabulary import english as own  # type: ignore[no-redef]  # same tables

        everyday = frozenset(plain.ENGLISH)
    named = {"site": own.SITES, "weekday": own.WEEKDAYS, "month": own.MONTHS}
    return Language((own.WORDS, shared.WORDS), named, own.NUMBERS, everyday)
