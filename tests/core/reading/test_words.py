"""The vocabulary is data: one meaning for each phrase, slips forgiven, never for numbers."""

import pytest

from core.reading.lexicon import lexicon
from core.reading.tokens import tokenize
from core.reading.vocabulary import language
from tests.support.reading import entries_of, reading_of, reasons_of


@pytest.mark.parametrize("lang", ["en", "es"])
def test_no_phrase_of_a_language_stands_under_two_symbols(lang: str) -> None:
    meanings: dict[str, set[tuple[str, str]]] = {}
    for phrase, symbol, name in language(lang).own_phrases:
        meanings.setdefault(phrase, set()).add((symbol, name))

    assert {p: m for p, m in meanings.items() if len(m) > 1 and p} == {}


@pytest.mark.parametrize("lang", ["en", "es"])
def test_a_phrase_that_runs_over_a_line_of_its_table_is_one_phrase(lang: str) -> None:
    assert [phrase for phrase, _, _ in language(lang).phrases if "\n" in phrase] == []


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("pithces", "pitches"), ("curvballs", "curveballs"), ("chnageups", "changeups"),
     ("sholder", "sholder"), ("yesterdya", "yesterday"), ("bulpen", "bullpen")],
)  # fmt: skip
def test_slips_are_put_right(typed: str, meant: str) -> None:
    words = lexicon("en")

    assert words.knows(typed) or words.corrected(typed) == meant


@pytest.mark.parametrize("typed", ["winnings", "books", "chance", "spine", "below", "sixt", "cab"])
def test_other_words_are_left_alone(typed: str) -> None:
    words = lexicon("en")

    assert typed in words.everyday or words.corrected(typed) is None


def test_drawn_out_letters_and_capitals_are_the_same_word() -> None:
    assert entries_of("NOOOO PAIN, 45 PITCHESSSS") == entries_of("no pain, 45 pitches")


def test_slack_marks_are_undone() -> None:
    tokens = tokenize("a &amp; b <@U1> :muscle: <https://x.org|x> 4⅓ 30-pitch")

    assert [t.norm for t in tokens] == ["a", "&", "b", "<@U1>", "4⅓", "30", "pitch"]


def test_every_token_quotes_the_line_as_typed() -> None:
    text = "62p, 4 1/3 ip — Mañana 5:30pm $85 15% 3rd"

    assert all(text[t.start : t.end] == t.text for t in tokenize(text))


@pytest.mark.parametrize(
    ("line", "entry"),
    [
        ("ayyer bullpen 30 tiros", {"kind": "bullpen", "on": "2026-08-11", "pitches": 30}),
        ("catch 30 tiros a media veocidad", {"kind": "catch", "pitches": 30, "effort": 50}),
        ("30 pitcheos, brzo bien", {"pitches": 30, "pain": []}),
        ("30 pitches yesterrday", {"on": "2026-08-11", "pitches": 30}),
    ],
)
def test_a_slip_in_a_phrase_or_a_doubled_letter_is_put_right(
    line: str, entry: dict[str, object]
) -> None:
    assert entries_of(line) == [entry]


@pytest.mark.parametrize(
    "line",
    ["bullpen ligero, veinticincco, cinco cambios", "12 pitcheos, ccero curvas, una entrada",
     "ya no teng el brazo cansado"],
)  # fmt: skip
def test_a_slip_of_a_number_or_a_no_is_asked(line: str) -> None:
    assert reasons_of(line)


def test_a_name_is_no_slip_of_a_trade_word() -> None:
    entries = entries_of("Bullpens de hoy: Rafa 30, Toño 25", "coach")

    assert [entry["who"] for entry in entries] == ["Rafa", "Toño"]


def test_a_text_in_a_third_language_is_not_looked_up_word_by_word() -> None:
    words = " ".join(f"{a}{b}zuqvi" for a in "bcdfghjklm" for b in "aeiouy")

    before = lexicon("en").near.cache_info().misses
    reading_of(f"30 pitches {words}")
    assert lexicon("en").near.cache_info().misses == before
