"""Tables with strokes between the cells."""

from tests.support.reading import entries_of, reasons_of


def test_a_kind_may_be_a_column() -> None:
    rows = "| name | kind | p | cb |\n|---|---|---|---|\n| Leo | pen | 25 | 5 |"
    line = f"{rows}\n| Max | game | 60 | 12 |"

    assert entries_of(line, "coach") == [
        {"who": "Leo", "kind": "bullpen", "pitches": 25, "breaking": 5, "curve": 5},
        {"who": "Max", "kind": "game", "pitches": 60, "breaking": 12, "curve": 12},
    ]


def test_a_day_may_be_a_column() -> None:
    line = "day | pitches | spins\nmon | 30 | 6\ntue | 25 | 4"

    assert entries_of(line) == [
        {"on": "2026-08-10", "pitches": 30, "breaking": 6},
        {"on": "2026-08-11", "pitches": 25, "breaking": 4},
    ]


def test_other_peoples_columns_say_nothing() -> None:
    line = "who|opp|pitches|ip|K\nLeo|Hawks|45|3|4\nMax|Hawks|20|1.1|0\nTotal||65|4.1|4"

    assert entries_of(line, "coach") == [
        {"who": "Leo", "kind": "game", "pitches": 45, "outs": 9},
        {"who": "Max", "kind": "game", "pitches": 20, "outs": 4},
    ]


def test_a_bare_number_under_pain_is_how_bad_it_is() -> None:
    line = "| name | where | pain |\n|---|---|---|\n| Leo | elbow | 3 |\n| Max | none | 0 |"

    assert entries_of(line, "coach") == [
        {"who": "Leo", "pain": [{"site": "elbow", "severity": 3}]},
        {"who": "Max", "pain": []},
    ]


def test_pain_without_a_site_is_asked() -> None:
    assert "unclear_pain" in reasons_of("name | pain\nLeo | 3\nMax | 0", "coach")


def test_a_roll_of_pain_without_strokes() -> None:
    line = "Pain report\nLeo: elbow 3\nMax: 0\nSam: right shoulder 4"

    assert entries_of(line, "coach") == [
        {"who": "Leo", "pain": [{"site": "elbow", "severity": 3}]},
        {"who": "Max", "pain": []},
        {"who": "Sam", "pain": [{"site": "shoulder", "severity": 4, "side": "right"}]},
    ]
