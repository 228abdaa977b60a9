"""What parents write in whole sentences: prices, weather, what is sore besides the arm."""

import pytest

from tests.support.reading import entries_of, reading_of, reasons_of


@pytest.mark.parametrize(
    "line",
    [
        "We paid 120 for it. pen of 18 pitches",
        "It was 51 degrees. pen of 18 pitches",
        "The temperature was 51. pen of 18 pitches",
        "The radar said 61, he is over the moon. pen of 18 pitches",
        "Score was 4-4 after six. pen of 18 pitches",
        "I'm 58 and it was hot. pen of 18 pitches",
        "52 on the week with the 18 she threw tonight in the bullpen",
    ],
)
def test_other_numbers_of_a_letter_count_nothing(line: str) -> None:
    assert entries_of(line, "guardian") == [{"kind": "bullpen", "pitches": 18}]


def test_he_says_that_he_feels_fine() -> None:
    assert entries_of("He says he feels fine. 20 pitches", "guardian")[0]["pain"] == []


def test_what_else_is_sore_is_no_arm() -> None:
    assert reasons_of("Arm is fine, ego is sore. 18 pitches", "guardian") == {"unclear_pain"}
    entry = entries_of("arm is fine, shoulder is sore. 18 pitches", "guardian")[0]
    assert entry["pain"] == [{"site": "shoulder", "sore": True}]


def test_a_count_on_the_way_is_never_dropped() -> None:
    assert reading_of("He is at 48 tonight after 4.", "guardian").unread


def test_a_count_of_that_day_is_kept() -> None:
    assert entries_of("He threw 52 that day", "guardian") == [{"pitches": 52}]


def test_what_i_have_for_tonight_is_the_count() -> None:
    assert entries_of("I have 58 for tonight, 13 curves", "guardian") == [
        {"pitches": 58, "breaking": 13, "curve": 13}
    ]
    assert entries_of("I have 4 for dinner tonight", "guardian") == []


def test_a_pen_since_the_injury_tells_of_none_now() -> None:
    line = "first pen since the injury, 12 pitches, no pain"

    assert entries_of(line) == [{"kind": "bullpen", "pitches": 12, "pain": []}]
