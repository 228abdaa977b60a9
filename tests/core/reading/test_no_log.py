"""Numbers that are no log, and lines that are only talk."""

import pytest

from tests.support.reading import entries_of, reasons_of

LOG = [{"pitches": 45, "breaking": 7, "curve": 7}]


@pytest.mark.parametrize(
    "aside",
    [
        "hit 72 on the gun",
        "sat 70-72 t74",
        "fb 70-72 cb 60-62",
        "went 2 for 3",
        "5 k 2 bb",
        "era is 2.10",
        "limit 75",
        "room 12",
        "at 5:30",
        "120 on the year",
        "first pitch strikes 11 of 17",
        "gave up 3 runs",
        "#12",
        "in 95 degree heat",
        "turned 13",
    ],
)
def test_a_number_beside_the_log_is_recognised(aside: str) -> None:
    assert entries_of(f"45 pitches 7 curves. {aside}") == LOG


@pytest.mark.parametrize(
    "line",
    [
        "practice at 6 on field 3, be there by 5:45",
        "who wants to throw a pen w me tmrw at 4",
        "how many days rest after 62 pitches?",
        "is 3 days enough after 45 pitches or do i need 4",
        "Plan for Thursday: 30 pitch pens for Owen and Caleb, 8 curves max",
        "Need 2 pitchers for tomorrow, 40 pitch max",
        "watched the game on tv, that guy threw 102 pitches and 40 curves",
        "my buddy threw 90 pitches",
        "dreamt i threw 81 pitches",
        "weekly totals: leo 95, max 80",
        "i threw a million pitches lol jk",
        "we won 7-2!!!",
        "60 pitches on the pitching machine",
        "i have 30 pitches left",
        "Saturday plan: Leo 3 innings, Max 2",
        "If Leo gets to 50 pull him",
    ],
)
def test_talk_logs_nothing_and_asks_nothing(line: str) -> None:
    assert entries_of(line, "coach") == []


@pytest.mark.parametrize(
    "line",
    [
        "supposed to throw 60 but threw 45, 7 curves",
        "pen tomorrow. threw 45 pitches 7 curves",
        "last week 80, today 45 pitches 7 curves",
        "their pitcher threw 90, i threw 45, 7 curves",
        "limit was 75 threw 45 w 7 curves",
    ],
)
def test_talk_ends_where_the_line_comes_back_to_what_was_thrown(line: str) -> None:
    assert entries_of(line) == LOG


def test_a_count_that_ends_in_a_question_mark_is_asked() -> None:
    assert reasons_of("threw 62 pitches?") == {"two_readings"}


def test_a_request_to_log_is_a_log() -> None:
    assert entries_of("can you put down 47 pitches for Graham?", "guardian") == [
        {"who": "Graham", "pitches": 47}
    ]


@pytest.mark.parametrize(
    "line",
    [
        "jerseys: Leo 12, Max 7, Sam 21",
        "uniformes: Leo 12, Max 7",
        "limits today: Leo 50, Max 35, 8 curves max",
    ],
)
def test_numbers_under_a_heading_that_is_no_log_are_none(line: str) -> None:
    assert entries_of(line, "coach") == []
