"""Beside counts every word is known to be harmless, or the line asks."""

import pytest

from core.reading.fillers import is_filler
from core.reading.lexicon import lexicon
from core.reading.vocabulary import language
from tests.support.reading import entries_of, reasons_of

LOG = [{"pitches": 45, "breaking": 7, "curve": 7}]
# Words that change what a number beside them counts: none may pass for small talk.
WEIGHING_WORDS = """
more less most least other others another each both every half than except besides minus twice
double triple extra additional remaining second third first last left off under below short
supposed should would could might must used if unless until instead rather almost nearly without
within per average usually normally they their combined together split rest
"""
WEIGHING = WEIGHING_WORDS.split()


@pytest.mark.parametrize(
    "line",
    [
        "dude 45 pitches 7 curves",
        "45 pitches today with a windy mound and 7 curves",
        "chopping wood, 45 pitches and 7 curves",
        "45 pitches agianst a loud crowd and 7 curves",
    ],
)
def test_small_talk_beside_a_count_is_no_matter(line: str) -> None:
    assert entries_of(line)[0].items() >= LOG[0].items()


@pytest.mark.parametrize(
    "line",
    [
        "45 zorbs pitches 7 curves",
        "45 pitches 7 fewer curves",
        "45 other pitches and 7 curves",
        "threw 5 more curves than usual, 45 pitches",
        "a hundred pitches, 7 curves",
        "45 pitches twice",
        "45 pitches between them",
    ],
)
def test_a_word_that_may_change_the_count_is_asked_about(line: str) -> None:
    assert reasons_of(line)


def test_the_table_of_fillers_holds_no_word_that_weighs() -> None:
    words = language("en")

    assert words.fillers.isdisjoint(WEIGHING)
    assert words.fillers.isdisjoint(words.numbers)
    assert words.fillers.isdisjoint(phrase for phrase, _, _ in words.phrases)


@pytest.mark.parametrize("word", WEIGHING)
def test_a_weighing_word_is_no_form_of_a_filler(word: str) -> None:
    assert not is_filler(lexicon("en"), word)


@pytest.mark.parametrize(("word", "slip"), [("agianst", True), ("alomst", False), ("xyzzy", False)])
def test_a_slip_is_forgiven_only_when_it_can_be_nothing_else(word: str, slip: bool) -> None:
    assert lexicon("en").slip_of_filler(word) == slip or lexicon("en").corrected(word) is not None
