"""The words of each language. The tables are data: TOML files and word lists in this folder.

`<lang>/*.toml` map symbols to phrases (`[words]`), named things to phrases (`[named.site]`), and
spelled numbers to values; `shared/` holds what both languages use. `everyday.txt` holds plain words
that are never taken for a name or for a slip of a trade word; `fillers.txt` holds words that never
change a count, whatever stands beside them ("windy", "dude"; with a capital they may be a name,
"Mundo"), and `weighing.txt` words that may ("most", "other", "than"). A filler's `[forms]` are
fillers too: an ending comes off, and a completion may take its place ("calentaron", "calentar").
"""

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

_FOLDER = Path(__file__).parent


@dataclass(slots=True)
class Language:
    """Tables of one language: (phrase, symbol, name) rows, number words, everyday words."""

    phrases: list[tuple[str, str, str]] = field(default_factory=list)
    own_phrases: list[tuple[str, str, str]] = field(default_factory=list)  # without the shared
    numbers: dict[str, int] = field(default_factory=dict)
    dozen: str = ""
    compound_and: str = ""  # "sesenta y dos"
    compound_one: frozenset[str] = frozenset()  # "setenta y un"
    hundred: str = ""  # "ciento cinco"
    dozens_after: dict[str, int] = field(default_factory=dict)  # "half" (dozen): 6
    everyday: frozenset[str] = frozenset()
    fillers: frozenset[str] = frozenset()
    endings: tuple[str, ...] = ()  # of the forms of a filler
    completions: tuple[str, ...] = ("",)
    weighing: frozenset[str] = frozenset()


@cache
def language(lang: str) -> Language:
    """The tables of "en" or "es", read on first use; a language's own rows before the shared."""
    found = Language(
        everyday=_word_list(f"{lang}/everyday.txt"),
        fillers=_word_list(f"{lang}/fillers.txt"),
        weighing=_word_list(f"{lang}/weighing.txt"),
    )
    for path in sorted((_FOLDER / lang).glob("*.toml")) + sorted(
        (_FOLDER / "shared").glob("*.toml")
    ):
        table = tomllib.loads(path.read_text("utf-8"))
        rows = list(_rows(table))
        found.phrases += rows
        found.own_phrases += rows if path.parent.name == lang else []
        found.numbers.update(table.get("numbers", {}))
        found.dozens_after.update(table.get("dozens_after", {}))
        found.compound_and = table.get("compound", {}).get("and", found.compound_and)
        found.compound_one |= set(table.get("compound", {}).get("one", "").split())
        found.hundred = table.get("compound", {}).get("hundred", found.hundred)
        found.numbers |= _joined(found.numbers, table.get("compound", {}).get("joined", ""))
        found.dozen = table.get("dozen", {}).get("word", found.dozen)
        forms = table.get("forms", {})
        found.endings = tuple(forms.get("endings", "").split()) or found.endings
        found.completions += tuple(forms.get("completions", "").split())
    return found


@cache
def given_names() -> frozenset[str]:
    """Common given names, so that a name typed in lower case is seen as one."""
    return _word_list("names.txt")


@cache
def nicknames() -> frozenset[str]:
    """Words that are also names: with a capital, in a name's place before a record."""
    return _word_list("nicknames.txt")


@cache
def name_columns() -> frozenset[str]:
    """What the column of names is called in a table."""
    return _word_list("name_columns.txt")


@cache
def harmless_symbols() -> frozenset[str]:
    """Symbols that may be left over beside a count: no rule took them up, and they say nothing."""
    return _word_list("harmless.txt")


def _joined(numbers: dict[str, int], links: str) -> dict[str, int]:
    """As in "treintaidos": round numbers and units written as one word."""
    tens = {word: value for word, value in numbers.items() if value in range(30, 91, 10)}
    units = {word: value for word, value in numbers.items() if value in range(1, 10)}
    return {
        ten + link + unit: high + low
        for link in links.split()
        for ten, high in tens.items()
        for unit, low in units.items()
    }


def _rows(table: dict[str, Any]) -> Iterator[tuple[str, str, str]]:
    for symbol, phrases in table.get("words", {}).items():
        yield from ((phrase, symbol, "") for phrase in _phrases(phrases))
    for symbol, named in table.get("named", {}).items():
        for name, phrases in named.items():
            yield from ((phrase, symbol, name) for phrase in _phrases(phrases))


def _phrases(listed: str) -> Iterator[str]:
    """The phrases of a comma-separated list, which may run over several lines."""
    return (" ".join(phrase.split()) for phrase in listed.split(","))


def _word_list(name: str) -> frozenset[str]:
    """The words of a list; a language may be without one."""
    path = _FOLDER / name
    return frozenset(path.read_text("utf-8").split() if path.exists() else ())
