"""Days and counts that stand far from what they seem to tell of."""

import pytest

from tests.support.reading import entries_of, reading_of


@pytest.mark.parametrize(
    "line",
    [
        "pen 25 p, felt way smoother after sleeping all of tues",
        "45 p 4 ip, i see grandma sat",
        "we clinched it, 9 innings wow we won",
        "big test tomorrow, long toss, 40 throws",
    ],
)
def test_what_may_belong_elsewhere_is_asked_about(line: str) -> None:
    assert reading_of(line).unread


def test_a_day_that_leads_the_line_or_is_thrown_on_is_the_outings() -> None:
    assert entries_of("forgot to log. pen 25 p, threw it today") == [
        {"kind": "bullpen", "pitches": 25}
    ]
    assert entries_of("doubleheader tmrw so just light catch, 15 throws") == [
        {"kind": "catch", "pitches": 15}
    ]
    assert entries_of("pen at 80% cuz i start sat, 25 p") == [
        {"kind": "bullpen", "pitches": 25, "effort": 80}
    ]
    assert entries_of("30 pitch pen, way better than tues") == [{"kind": "bullpen", "pitches": 30}]


@pytest.mark.parametrize(
    "line",
    ["does a 25 pitch bullpen count toward my 7 day total", "pens tomorrow, 25 pitches tops"],
)
def test_talk_stays_talk(line: str) -> None:
    reading = reading_of(line)
    assert (reading.entries, reading.unread) == ((), ())


@pytest.mark.parametrize(
    "line", ["45 last week, today 30", "last week 80 today 30", "threw 80 last week, 30 today"]
)
def test_todays_count_beside_last_weeks_is_read_or_asked_about(line: str) -> None:
    reading = reading_of(line)
    assert [entry.as_json() for entry in reading.entries] == [{"pitches": 30}] or reading.unread


def test_a_range_from_none_without_a_result_is_asked_about() -> None:
    assert reading_of("0-3 sliders and that was it").unread
