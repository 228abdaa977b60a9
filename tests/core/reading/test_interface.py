"""The reader's public face: what callers may rely on."""

from datetime import datetime

from core.reading import read

EVENING = datetime(2026, 4, 18, 20, 10)


def test_the_worked_line_of_the_format_is_read_as_documented() -> None:
    reading = read("62p 11cb 4.1ip no pain", EVENING)

    assert [entry.as_json() for entry in reading.entries] == [
        {"kind": "game", "pitches": 62, "breaking": 11, "curve": 11, "outs": 13, "pain": []}
    ]
    assert reading.unread == ()


def test_a_line_over_four_thousand_characters_is_not_read() -> None:
    reading = read("62p " * 1001, EVENING)

    assert reading.entries == ()
    assert [unread.reason for unread in reading.unread] == ["too_long"]
