"""Numbers said once for several people or outings: read in their order, or asked about."""

import pytest

from tests.support.reading import entries_of, reading_of, reasons_of


def read_as(text: str) -> list[tuple[str | None, int | None, int | None]]:
    """Who, pitches and curves of each entry."""
    return [(e.get("who"), e.get("pitches"), e.get("curve")) for e in entries_of(text, "coach")]


def test_a_list_after_its_noun_goes_to_the_names_in_order() -> None:
    line = "Rory 28, Jace 31, Hank 26 in pens today. curves 7, 5, 8 in that order"

    assert read_as(line) == [("Rory", 28, 7), ("Jace", 31, 5), ("Hank", 26, 8)]


def test_respectively_goes_to_the_names_in_order() -> None:
    line = "Eli, Sam and Jonah threw 52, 31 and 14 pitches respectively"

    assert read_as(line) == [("Eli", 52, None), ("Sam", 31, None), ("Jonah", 14, None)]


def test_a_count_told_by_sections_joins_the_names() -> None:
    line = "Pitches: Abel 66, Theo 24. Curves: Abel 11, Theo 3"

    assert read_as(line) == [("Abel", 66, 11), ("Theo", 24, 3)]


def test_a_kind_that_closes_a_list_is_of_all() -> None:
    entries = entries_of("Leo 30, Max 25 and Sam 20 in the pen", "coach")

    assert [one["kind"] for one in entries] == ["bullpen"] * 3


def test_a_game_told_of_before_gets_what_is_added() -> None:
    line = "Teddy both ends vs Dry Fork. 15 pitches in game one, 33 in game two, curves 0 and 4"

    assert read_as(line) == [("Teddy", 15, 0), ("Teddy", 33, 4)]


def test_a_total_that_is_the_sum_of_the_outings_is_none_of_their_counts() -> None:
    assert read_as("22 game 1, 31 game 2, 53 total") == [(None, 22, None), (None, 31, None)]


@pytest.mark.parametrize(
    "line",
    [
        "22 game 1, 31 game 2, 9 curves total",
        "Leo and Max combined for 61 pitches",
        "47 pitches combined, me and Max",
        "both threw 22, Leo 4 curves and Max 5",
        "everyone 25 pitches, Leo 15",
        "no pens today except Leo 20 pitches",
        "Leo shaky, Max sore elbow",
        "20 curves lol jk 10",
        "just short of 50 pitches",
        "arm tired after last night, 62 pitches 9 cb",
    ],
)
def test_what_is_not_clearly_one_outings_is_asked_about(line: str) -> None:
    assert reasons_of(line, "coach")


def test_who_was_relieved_is_not_whose_line_it_is() -> None:
    assert entries_of("came in for Max, 22 pitches") == [{"kind": "game", "pitches": 22}]


def test_innings_through_stand_beside_a_bare_count() -> None:
    assert entries_of("Leo 58 thru 4", "coach") == [
        {"who": "Leo", "kind": "game", "pitches": 58, "outs": 12}
    ]


def test_nobody_gets_the_pain_of_the_next_name() -> None:
    entries = reading_of("Arm check: Dom fine, Hank elbow pain 2/10", "coach").entries

    assert [(one.who, len(one.pain or ())) for one in entries] == [("Dom", 0), ("Hank", 1)]


@pytest.mark.parametrize(
    "line",
    [
        "arm a little tired after last night. catch only, 20 throws at 40%",
        "brazo cansado por lo de anoche, catch 20 tiros al 40%",
    ],
)
def test_the_day_that_tired_the_arm_dates_no_other_sentence(line: str) -> None:
    assert entries_of(line) == [{"kind": "catch", "pitches": 20, "effort": 40, "tired": True}]
