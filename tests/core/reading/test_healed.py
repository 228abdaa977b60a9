"""Pain of another day that is gone today."""

import pytest

from tests.support.reading import entries_of, reading_of


@pytest.mark.parametrize(
    ("line", "pitches"),
    [
        ("50 p, elbow hurt last week but nothing today", 50),
        ("my arm hurt last week but its fine today. 20 p", 20),
        ("shoulder was sore last start but not today, 61p", 61),
    ],
)
def test_pain_of_before_that_is_gone_is_no_pain(line: str, pitches: int) -> None:
    assert entries_of(line) == [{"pitches": pitches, "pain": []}]


def test_yesterdays_pain_that_is_gone_is_asked_about_and_dates_no_outing() -> None:
    reading = reading_of("elbow was sore yesterday, nothing today. 40 p")
    assert [entry.as_json() for entry in reading.entries] == [{"pitches": 40}]
    assert reading.unread


@pytest.mark.parametrize("line", ["nothing today", "arm hurt last week but no throwing today"])
def test_a_day_without_throwing_stays_one(line: str) -> None:
    assert entries_of(line) == [{"kind": "off"}]
