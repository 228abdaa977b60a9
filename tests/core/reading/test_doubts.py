"""What a reading must explain before it is trusted: lines that were read wrongly and silently."""

from datetime import datetime
from typing import Literal

import pytest

from core.reading import UnreadReason, read

POSTED = datetime.fromisoformat("2026-05-16T18:00")  # a Saturday


@pytest.mark.parametrize(
    ("author", "text", "reason"),
    [
        ("pitcher", "45 reps in pen 8 cb", UnreadReason.UNKNOWN_NUMBER),
        ("pitcher", "gonna pen 30 today 5cb", UnreadReason.TWO_READINGS),
        ("pitcher", "mon pen 20p, 25p wed", UnreadReason.UNKNOWN_KIND),
        ("guardian", "Mateo threw a pen Tuesday 25 pitches and 30 Thursday",
         UnreadReason.UNKNOWN_KIND),
        ("pitcher", "52 not counting warmups", UnreadReason.UNKNOWN_NUMBER),
        ("pitcher", "arm hung today, 41", UnreadReason.UNKNOWN_NUMBER),
        ("guardian", "55 pitches. Zorb was awful", UnreadReason.UNCLEAR_PERSON),
        ("guardian", "42 on a 50 pitch limit", UnreadReason.UNKNOWN_NUMBER),
        ("guardian", "his back not his arm hurts. 30 pitches", UnreadReason.UNCLEAR_PAIN),
        ("guardian", "No pain today but Thursday elbow was a 3. 30 pitches",
         UnreadReason.UNCLEAR_DAY),
        ("guardian", "Emmett pen tues and thurs 25 each", UnreadReason.TWO_READINGS),
        ("guardian", "game ppd. catch 30 throws", UnreadReason.UNKNOWN_KIND),
        ("guardian", "update: final was 58", UnreadReason.UNKNOWN_NUMBER),
        ("pitcher", "5-14 41 pitches", UnreadReason.UNCLEAR_DAY),
        ("pitcher", "14th - 41 pitches", UnreadReason.UNCLEAR_DAY),
        ("pitcher", "41 pitches. 5 curves in the 1st 3 in the 2nd", UnreadReason.TWO_READINGS),
        ("pitcher", "41p 5c 3s 4ch", UnreadReason.UNKNOWN_WORD),
        ("pitcher", "52 + 20 warmups", UnreadReason.TWO_READINGS),
        ("coach", "Leo and Kip split it. 45 and 30", UnreadReason.UNKNOWN_NUMBER),
        ("coach", "Week totals Leo 120 Kip 90", UnreadReason.TWO_READINGS),
        ("guardian", "scouts said 88 pitches 12 curves for the other kid",
         UnreadReason.UNCLEAR_PERSON),
        ("guardian", "June is fine today, no pain. She threw 25 in the pen Thursday",
         UnreadReason.UNCLEAR_DAY),
    ],
)  # fmt: skip
def test_it_asks_about_what_a_reading_leaves_unexplained(
    author: Literal["pitcher", "coach", "guardian"], text: str, reason: UnreadReason
) -> None:
    reading = read(text, POSTED, author)

    assert reason in {one.reason for one in reading.unread}


@pytest.mark.parametrize(
    "text",
    [
        "played catch 10 min. 25 throws. 8 spin reps",
        "was gonna throw 25-30 in the pen ended up w 27, 5 cb",
        "12 curves in 45 min",
        "hit 74 on the gun, 12 cb",
        "won 11-9, 12 cb",
    ],
)
def test_it_asks_nothing_where_a_number_is_surely_no_count(text: str) -> None:
    assert read(text, POSTED).unread == ()


def test_two_month_names_are_two_pitchers() -> None:
    reading = read("June 28 pitches, April 31, both pens", POSTED, "coach")

    assert [(entry.who, entry.pitches) for entry in reading.entries] == [
        ("June", 28),
        ("April", 31),
    ]
    assert reading.unread == ()
