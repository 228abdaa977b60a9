"""The reader's public face: what callers may rely on."""

from datetime import date, datetime

import pytest

from core.reading import Entry, Pain, UnreadReason, read

EVENING = datetime.fromisoformat("2026-04-18T20:10")


def test_the_worked_line_of_the_format_is_read_as_documented() -> None:
    reading = read("62p 11cb 4.1ip no pain", EVENING)

    assert [entry.as_json() for entry in reading.entries] == [
        {"kind": "game", "pitches": 62, "breaking": 11, "curve": 11, "outs": 13, "pain": []}
    ]
    assert reading.unread == ()


@pytest.mark.parametrize("line", ["62p " * 1001, "1 " * 151])
def test_a_line_too_long_to_be_a_log_is_not_read(line: str) -> None:
    reading = read(line, EVENING)

    assert reading.entries == ()
    assert [unread.reason for unread in reading.unread] == [UnreadReason.TOO_LONG]


def test_an_entry_writes_only_what_was_stated() -> None:
    pain = (Pain("elbow", 4, side="left", when="after", sore=True), Pain("wrist"))
    entry = Entry(who="Leo", except_=("Max",), on=date(2026, 4, 17), pain=pain, tired=False)

    assert entry.as_json() == {
        "who": "Leo",
        "except": ["Max"],
        "on": "2026-04-17",
        "pain": [
            {"site": "elbow", "severity": 4, "side": "left", "when": "after", "sore": True},
            {"site": "wrist"},
        ],
        "tired": False,
    }


def test_the_language_is_told_from_the_words_unless_it_is_given() -> None:
    assert read("tire 40 con 6 curvas", EVENING).lang == "es"
    assert read("threw 40 with 6 curves", EVENING).lang == "en"
    assert read("40 cb", EVENING, lang="es").lang == "es"


def test_an_impossible_count_says_what_clashed_with_what() -> None:
    (unread,) = read("62 pitches 70 curves", EVENING).unread

    assert unread.reason is UnreadReason.IMPOSSIBLE
    assert unread.detail is not None
    assert (unread.detail.field, unread.detail.value) == ("breaking", 70)
    assert (unread.detail.limit_field, unread.detail.limit) == ("pitches", 62)
