"""The words of questions, a folder of TOML files for each language, and the slips of them.

`[words]` gives a symbol its phrases, `[named.x]` gives symbol x a value for each group of phrases,
`[numbers]` spells numbers. Where a phrase stands twice the first one counts.
"""

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from core.reading.asking.tokens import tokenize

SHORTEST_TYPO = 5  # a shorter word is one letter away from too many others
LONG_WORD = 8  # from here on two slips are forgiven
_NO_SLIP = frozenset(["unk", "glue", "other", "coach", "month", "help"])


@dataclass(frozen=True, slots=True)
class Meaning:
    """A symbol, or several with spaces between, and a value where the symbol takes one."""

    symbol: str
    value: str = ""


class Words:
    """The phrases of one language by first word, longest first."""

    def __init__(self, lang: str) -> None:
        self.phrases: dict[str, list[tuple[tuple[str, ...], Meaning]]] = {}
        self.numbers: dict[str, int] = {}
        for phrase, meaning in self._read(lang):
            words = [token.norm for token in tokenize(phrase)]
            tails = self.phrases.setdefault(words[0], [])
            if all(tail != tuple(words[1:]) for tail, _ in tails):
                tails.append((tuple(words[1:]), meaning))
        for tails in self.phrases.values():
            tails.sort(key=lambda row: -len(row[0]))
        self._correctable = tuple(
            word
            for word, tails in self.phrases.items()
            if len(word) >= SHORTEST_TYPO and any(_may_slip(*row) for row in tails)
        )
        self.corrected = lru_cache(maxsize=10_000)(self._corrected)

    def _read(self, lang: str) -> Iterator[tuple[str, Meaning]]:
        for table in tables(lang):
            self.numbers.update(table.get("numbers", {}))
            yield from rows(table)

    def _corrected(self, norm: str) -> str | None:
        """The word that an unknown one is a slip of, or None; the first letter must be right."""
        from rapidfuzz import process
        from rapidfuzz.distance import OSA

        if not SHORTEST_TYPO <= len(norm) <= 20:
            return None
        slips = 2 if len(norm) >= LONG_WORD else 1
        found = process.extract(
            norm, self._correctable, scorer=OSA.distance, score_cutoff=slips, limit=5
        )
        return next((str(word) for word, _, _ in found if word[0] == norm[0]), None)


def tables(folder: str) -> list[dict[str, Any]]:
    """The TOML files of a folder beside this one, by name."""
    paths = sorted((Path(__file__).parent / folder).glob("*.toml"))
    return [tomllib.loads(path.read_text("utf-8")) for path in paths]


def rows(table: dict[str, Any]) -> Iterator[tuple[str, Meaning]]:
    """Every phrase of one table with its meaning, in the order of the file."""
    for symbol, phrases in table.get("words", {}).items():
        yield from ((phrase.strip(), Meaning(symbol)) for phrase in phrases.split(","))
    for symbol, named in table.get("named", {}).items():
        for value, phrases in named.items():
            yield from ((phrase.strip(), Meaning(symbol, value)) for phrase in phrases.split(","))


@cache
def words(lang: str) -> Words:
    """The words of "en" or "es", read on first use."""
    return Words(lang)


def _may_slip(tail: tuple[str, ...], meaning: Meaning) -> bool:
    return not tail and not set(meaning.symbol.split()) & _NO_SLIP
