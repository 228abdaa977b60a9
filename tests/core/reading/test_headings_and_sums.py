"""Sums told inning by inning, shares of a stated count, headings over days and names, streets."""

import pytest

from tests.support.reading import entries_of, reasons_of


@pytest.mark.parametrize(
    ("line", "pitches"),
    [
        ("12 pitches in the first, 19 in the second = 31", 31),
        ("15 in the 1st, 22 in the 2nd, 9 in the 3rd so 46 total", 46),
    ],
)
def test_innings_that_add_up_to_the_stated_sum_are_its_parts(line: str, pitches: int) -> None:
    assert entries_of(line) == [{"pitches": pitches}]


def test_innings_without_a_sum_are_asked_about() -> None:
    assert reasons_of("14 in the 1st, 20 in the 2nd. 3 innings")


@pytest.mark.parametrize(
    "line",
    [
        "half my 36 pitches were breaking balls",
        "36 pitches half of em breaking",
        "half the pitches were breaking balls, 36 total",
    ],
)
def test_a_half_becomes_a_count(line: str) -> None:
    assert entries_of(line) == [{"pitches": 36, "breaking": 18}]


@pytest.mark.parametrize("line", ["half my 41 pitches were curves", "most of my 36 were curves"])
def test_a_share_that_is_no_whole_count_is_asked_about(line: str) -> None:
    assert reasons_of(line)


def test_the_kind_inside_a_share_is_kept() -> None:
    read = entries_of("half of his 40 in the pen were curves")
    assert read == [{"kind": "bullpen", "pitches": 40, "breaking": 20, "curve": 20}]


@pytest.mark.parametrize(
    "line", ["Wyatt this weekend: Fri 30 p, Sat 15 p", "this weekend Fri Wyatt 30 p and Sat 15 p"]
)
def test_a_weekend_over_its_days_needs_no_question(line: str) -> None:
    assert [entry["on"] for entry in entries_of(line, "guardian")] == ["2026-08-07", "2026-08-08"]


def test_a_weekend_without_its_day_is_asked_about() -> None:
    assert reasons_of("this weekend: 30 p 4 cb")


def test_two_opponents_are_two_games() -> None:
    read = entries_of("vs oakmere 45p, vs fenlow 18p")
    assert [(entry["kind"], entry["pitches"]) for entry in read] == [("game", 45), ("game", 18)]


def test_one_opponent_with_two_counts_is_asked_about() -> None:
    assert reasons_of("vs oakmere 45p 7cb. vs oakmere 18p 2cb")


@pytest.mark.parametrize(
    "line",
    [
        "party at 412 Larkspur Lane, 3 to 6, bring a swimsuit",
        "bus leaves from 22 Oak Hill Drive at 7:30",
        "la entrada es por la calle 14 número 220",
    ],
)
def test_a_street_is_no_log(line: str) -> None:
    assert entries_of(line, "guardian") == []
    assert not reasons_of(line, "guardian")


def test_a_lane_with_a_count_is_somebody() -> None:
    read = entries_of("Leo 45 pitches Lane 30 pitches", "coach")
    assert [entry["who"] for entry in read] == ["Leo", "Lane"]


@pytest.mark.parametrize(
    "line",
    [
        "next week im throwing 45 pitches",
        "throwing 40 next week",
        "next start is fri im throwing 40",
    ],
)
def test_throwing_to_come_is_no_log(line: str) -> None:
    assert entries_of(line) == []


@pytest.mark.parametrize(
    "line",
    [
        "off tomorrow, 40 pitches",
        "pen tomorrow, 40 pitches today",
        "done throwing until next week, 40 pitches today",
        "was throwing 40 pitches before next game",
    ],
)
def test_what_was_thrown_stands_beside_a_plan(line: str) -> None:
    assert entries_of(line) == [{"pitches": 40}]


@pytest.mark.parametrize(
    ("line", "pitches"),
    [
        ("1st 15, 2nd 16, 3rd 11 = 42", 42),
        ("1st 22 ugh, 2nd 9, so 31 pitches", 31),
        ("20, 16 and 19 pitches so 55", 55),
        ("2 sets of 15, so 30 pitches", 30),
    ],
)
def test_parts_before_their_sum_are_no_counts_of_their_own(line: str, pitches: int) -> None:
    assert entries_of(line) == [{"pitches": pitches}]


@pytest.mark.parametrize(
    "line",
    [
        "1st 15, 2nd 16, 3rd 11",
        "1st 15, 3rd 16",
        "2 sets of 15 so 40 pitches in the pen",
        "12 and 19 pitches so about 30",
        "two games today, 40 pitches total",
    ],
)
def test_parts_that_do_not_add_up_are_asked_about(line: str) -> None:
    assert reasons_of(line)


@pytest.mark.parametrize(
    "line",
    [
        "Two games today. 18 pitches in the first, 25 in the second",
        "two games today, first one 18 pitches, second one 25 pitches",
        "2 games today: 18 pitches and 25 pitches",
    ],
)
def test_two_games_of_a_day(line: str) -> None:
    assert entries_of(line) == [{"kind": "game", "pitches": 18}, {"kind": "game", "pitches": 25}]


def test_one_in_five_is_a_share_of_the_pitches() -> None:
    read = entries_of("1 in 5 was a curve, 45 pitches")
    assert read == [{"pitches": 45, "breaking": 9, "curve": 9}]
    assert reasons_of("1 in 3 were breaking balls. 46 pitches")


def test_a_saturday_right_after_a_kind_is_no_speed() -> None:
    assert [entry["pitches"] for entry in entries_of("pen thurs 20, game sat 55")] == [20, 55]
    assert entries_of("40 pitches in game sat at 70") == [{"kind": "game", "pitches": 40}]


def test_a_bare_number_is_innings_where_anothers_stand_in_the_same_place() -> None:
    read = entries_of("Noah 3.2 62p, Sam 2 27p", "coach")
    assert [entry["outs"] for entry in read] == [11, 6]
    assert reasons_of("Noah 3 62p, Sam 2 27p", "coach")


def test_what_somebody_else_said_is_no_count() -> None:
    read = entries_of("threw 40 today (not 60 like coach said) 7 hooks")
    assert read == [{"pitches": 40, "breaking": 7, "curve": 7}]
