"""The tables: one meaning for a phrase, and no frame over a symbol that no word gives."""

import re

import pytest

from core.reading.asking.symbols import LEFTOVERS, NAME, UNKNOWN
from core.reading.asking.vocabulary import rows, tables

NEEDS = {"past"}  # a sketch may want what `needs` names too


@pytest.mark.parametrize("lang", ["en", "es"])
def test_a_phrase_has_one_meaning(lang: str) -> None:
    phrases = [phrase for table in tables(lang) for phrase, _ in rows(table)]

    twice = {phrase for phrase in phrases if phrases.count(phrase) > 1}

    assert twice == set()


def test_every_symbol_of_a_frame_is_given_by_some_word() -> None:
    given = {
        symbol
        for lang in ("en", "es")
        for table in tables(lang)
        for _, meaning in rows(table)
        for symbol in meaning.symbol.split()
    } | {NAME, UNKNOWN, *LEFTOVERS.values()}
    shapes = tables("frames")
    groups = shapes[0]["groups"]

    said = [says for table in shapes for frame in table.get("frame", ()) for says in frame["says"]]
    said += [
        " ".join([*sketch["must"], sketch["may"]])
        for table in shapes
        for sketch in table.get("sketch", ())
    ]
    used = set(re.findall(r"\w+", " ".join([*said, *groups.values()])))

    assert used - given - set(groups) - NEEDS == set()
