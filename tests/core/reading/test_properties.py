"""What must hold for any text at all."""

import re
from datetime import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.reading import read
from core.reading.reader import explain
from tests.bench.fuzz_reading import fuzz
from tests.support.soundness import COUNTS, faults

POSTED = datetime.fromisoformat("2026-05-20T20:00")
VOCABULARY = """
62 11 4.1 2/3 7/10 5-3 60ish ~70 15% 5:30 3rd dozen twelve pitches p cb curves sliders ch fb ip
innings strikes pen bullpen catch game vs Hogs Leo <@U41K7> yesterday sat no not pain elbow sore
arm good threw with of and then , . ; : - ( ) ? each total about picheos curvas sin entradas dolor
brazo ayer mph limit max season tomorrow
"""
WORDS = st.sampled_from([*VOCABULARY.split(), "\n"])
LINES = st.lists(WORDS, max_size=25).map(" ".join)


@settings(max_examples=150, deadline=None)
@given(st.one_of(st.text(max_size=300), LINES))
def test_no_text_raises(text: str) -> None:
    read(text, POSTED, "coach", roster=("Leo", "Max"))


@settings(max_examples=150, deadline=None)
@given(LINES)
def test_the_same_line_reads_the_same_twice(text: str) -> None:
    assert read(text, POSTED) == read(text, POSTED)


@settings(max_examples=300, deadline=None)
@given(LINES)
def test_entries_keep_the_invariants_of_the_format(text: str) -> None:
    reading, numbers = explain(text, POSTED, "coach")

    assert list(faults(text, POSTED, reading, numbers)) == []


@settings(max_examples=100, deadline=None)
@given(LINES, st.integers(1, 3))
def test_case_and_spaces_change_no_number(text: str, spaces: int) -> None:
    def numbers(line: str) -> list[dict[str, int]]:
        entries = read(line, POSTED).entries
        return [{c: v for c in COUNTS if (v := getattr(e, c)) is not None} for e in entries]

    lower = re.sub(r"<@u(\w+)>", lambda m: m[0].upper(), text.lower())

    assert numbers(lower) == numbers(lower.replace(" ", " " * spaces))


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_mutated_lines_are_read_soundly(seed: int) -> None:
    found = fuzz(2000, seed)

    assert found.examples == {}


@pytest.mark.parametrize("space", ["\x1f", "\x0b", "\x85", "\xa0", "\u2028", "\u3000"])
def test_any_sign_for_a_space_stands_between_numbers(space: str) -> None:
    reading = read(f"40 /{space}7 cb 30{space}% 4{space}1/3 ip", POSTED)

    assert reading.entries or reading.unread
