"""Counts beside words of plans, limits and doubt: read, or asked about, and never dropped."""

import pytest

from tests.support.reading import entries_of, reasons_of

COUNTS = {"pitches": 45, "breaking": 9, "curve": 9}


@pytest.mark.parametrize(
    "line",
    [
        "45 pitches 9 cb hopefully more next time",
        "wanted to log 45 pitches 9 cb",
        "forgot to post this 45 pitches 9 cb",
        "can u log me for 45 pitches 9 cb",
        "if i count right 45 pitches 9 cb",
        "45 pitches 9 cb according to coach",
        "22, 14, 9 = 45, 9 cb",
        "45 pitches 9 cb for my other team",
    ],
)
def test_a_count_beside_a_wish_or_a_plan_is_read(line: str) -> None:
    assert entries_of(line) == [COUNTS]


@pytest.mark.parametrize(
    "line",
    [
        "only could go 2 innings 45 pitches",
        "should be like 45 pitches",
        "every day this week 20 throws",
        "oops 54",
        "bp today 40ish",
        "not sure of the exact count, 40ish",
        "sat 41 game",
        "Benny hit 50 in the 4th so we pulled him",
        "last outing 41 pitches sat",
    ],
)
def test_a_count_in_doubt_is_asked_about(line: str) -> None:
    assert reasons_of(line, "coach")


@pytest.mark.parametrize(
    "line",
    [
        "30 pitch pen tomorrow",
        "60 pitches for me tomorrow",
        "i would throw 200 pitches if they let me",
        "just checking that my 41 got logged",
        "is 48 for the day too many?",
    ],
)
def test_talk_stays_talk(line: str) -> None:
    assert entries_of(line) == []


def test_a_share_of_strikes_beside_their_count_is_no_effort() -> None:
    assert entries_of("41 pitches 27 strikes (66%)") == [{"pitches": 41, "strikes": 27}]


def test_a_limit_that_was_hit_is_the_count() -> None:
    assert entries_of("hit my limit at 50, 3.2 ip") == [{"kind": "game", "pitches": 50, "outs": 11}]


def test_a_number_without_its_noun_counts_what_the_first_name_counted() -> None:
    entries = entries_of("Benny 41 with 6 breaking, Cal 28 with 2, Dean 19 with none", "coach")

    assert [one["breaking"] for one in entries] == [6, 2, 0]


@pytest.mark.parametrize(
    "line",
    [
        "Nobody throws tomorrow. Full rest day.",
        "radar today Eli 74 Noah 71 Jay 69",
        "Dr cleared him for 20 throws a day",
        "velos: Leo 71, Max 68",
    ],
)
def test_what_was_not_thrown_makes_no_entry(line: str) -> None:
    assert entries_of(line, "coach") == []


def test_a_parents_catch_with_a_child_is_the_childs() -> None:
    assert entries_of("Played catch in the yard with Eli, 30 throws", "guardian") == [
        {"who": "Eli", "kind": "catch", "pitches": 30}
    ]


def test_whom_a_line_greets_is_not_whose_it_is() -> None:
    assert entries_of("happy 4th everybody, no throwing today") == [{"kind": "off"}]
