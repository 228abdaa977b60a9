"""Sets, innings on the way, guesses beside a count, and bare numbers."""

import pytest

from tests.support.reading import entries_of, reading_of, reasons_of


@pytest.mark.parametrize("line", ["pen 3 sets of 12", "pen 3 ups of 12", "bullpen 3x12"])
def test_sets_of_a_kind_are_multiplied(line: str) -> None:
    assert entries_of(line) == [{"kind": "bullpen", "pitches": 36}]


def test_sets_of_no_kind_are_asked_where_they_can_be_pitches() -> None:
    assert reasons_of("3 ups of 12") == {"two_readings"}
    assert reading_of("did 3 sets of 12 curls").entries == ()


@pytest.mark.parametrize(
    "line",
    ["1st inning was 25 pitches, ended at 67", "2nd inning was 18, finished with 67"],
)
def test_an_innings_count_is_no_count_of_the_outing(line: str) -> None:
    assert entries_of(line) == [{"pitches": 67}]


def test_an_innings_count_alone_is_asked() -> None:
    assert reasons_of("1st inning took 30 pitches") == {"two_readings"}


@pytest.mark.parametrize(
    "line",
    [
        "guessed 55-60, clicker said 58",
        "i thought 60ish but the book had 58",
        "thought i threw 60, clicker said 58",
    ],
)
def test_a_guess_yields_to_the_one_who_counted(line: str) -> None:
    assert entries_of(line) == [{"pitches": 58}]


@pytest.mark.parametrize("line", ["easy 30", "light 25 today", "pen 10/10/10", "rpe 7"])
def test_a_number_that_can_be_a_count_is_asked(line: str) -> None:
    assert reading_of(line).unread


def test_effort_of_a_small_number_is_asked() -> None:
    assert reasons_of("catch 30 throws effort 7") == {"two_readings"}
    assert entries_of("catch 30 throws, effort 7/10")[0]["effort"] == 70


def test_a_birthday_is_no_day_of_an_outing() -> None:
    assert entries_of("pen 30, born 8/10/12") == [{"kind": "bullpen", "pitches": 30}]


def test_the_same_form_again_is_of_the_same_kind() -> None:
    assert [one["kind"] for one in entries_of("mon pen 20p, tue 25p")] == ["bullpen"] * 2


def test_by_ones_own_account_in_spanish() -> None:
    assert entries_of("según yo fueron 45") == [{"pitches": 45}]
    assert reading_of("según yo 45, según el libro 47").unread
