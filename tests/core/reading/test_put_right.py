"""Days, kinds, persons and numbers put right in mid-line, and what is told without a number."""

import pytest

from tests.support.reading import entries_of, reading_of, reasons_of


def test_a_day_put_right() -> None:
    line = "Hunter had his bullpen on Saturday, no wait it was Sunday, 28 pitches"

    assert entries_of(line, "guardian") == [
        {"who": "Hunter", "kind": "bullpen", "on": "2026-08-09", "pitches": 28}
    ]
    assert entries_of("threw 30 sunday not saturday, pen")[0]["on"] == "2026-08-09"


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("Pen today, well no it was flat ground, 28 throws", "catch"),
        ("flat ground no wait bullpen, 28 throws", "bullpen"),
        ("pen not a game, 28 throws", "bullpen"),
    ],
)
def test_a_kind_put_right(line: str, kind: str) -> None:
    assert entries_of(line) == [{"kind": kind, "pitches": 28}]


def test_a_person_put_right() -> None:
    line = "ok Caleb not Owen, Owen is at camp. Caleb threw 26 pitches in his bullpen"

    assert [one["who"] for one in entries_of(line, "guardian")] == ["Caleb"]


@pytest.mark.parametrize(
    ("line", "pitches"),
    [
        ("31 throws of catch today. Correction, 41.", 41),
        ("he had 70, no hang on the scorekeeper fixed it, 67 pitches", 67),
        ("coach i know you said 30 but it was 34 in the pen", 34),
        ("he was supposed to be done at 40 they left him in to 52", 52),
        ("rain delay at 38 pitches, then he ended up with 54", 54),
    ],
)
def test_a_number_put_right(line: str, pitches: int) -> None:
    assert entries_of(line, "guardian")[0]["pitches"] == pitches


def test_two_counts_of_one_outing_are_asked() -> None:
    assert reasons_of("book said 45 but i counted 41") == {"two_readings"}
    assert reading_of("He counted 29, we watched the video and it was 30. Pen.", "guardian").unread


def test_a_word_with_a_capital_is_no_name() -> None:
    assert "who" not in entries_of("thank God. bullpen of 20", "guardian")[0]
    line = "Long toss, 36 throws. Biggest one went 180 feet so he says"
    assert entries_of(line, "guardian") == [{"kind": "catch", "pitches": 36}]
    assert [one["who"] for one in entries_of("Stone 45p, Ruby 30p", "coach")] == ["Stone", "Ruby"]


def test_a_relative_clause_asks_nothing() -> None:
    line = "secondhand from his father who was there: four innings, fifty pitches"

    assert entries_of(line, "guardian") == [{"kind": "game", "pitches": 50, "outs": 12}]


def test_games_are_told_apart_by_their_hours() -> None:
    line = "He started the 8am, 38 pitches. They brought him back in the 4pm, 16 pitches"

    assert [one["pitches"] for one in entries_of(line, "guardian")] == [38, 16]


def test_counts_before_the_name_are_his() -> None:
    line = "50 pitches and 8 curves for Owen tonight"

    assert entries_of(line, "guardian") == [
        {"who": "Owen", "pitches": 50, "breaking": 8, "curve": 8}
    ]


def test_totals_of_a_season_reach_over_the_sentence() -> None:
    assert entries_of("He's got 612 pitches for the season, 38 innings", "guardian") == []
    line = "his season total is up to 412 pitches, fifty of them tonight"
    assert entries_of(line, "guardian") == [{"pitches": 50}]
