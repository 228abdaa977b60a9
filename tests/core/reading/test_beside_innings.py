"""Bare numbers beside innings, pain told in the next sentence, and everybody before each name."""

from tests.support.reading import entries_of


def test_a_bare_number_beside_innings_is_the_count() -> None:
    entries = entries_of("Leo 3 ip 48, Max 2 ip 31", "coach")
    assert [(one["pitches"], one["outs"]) for one in entries] == [(48, 9), (31, 6)]

    assert entries_of("34 in 1 inning 5 runs")[0]["pitches"] == 34
    assert "pitches" not in entries_of("Leo 3 ip 4 ks", "coach")[0]
    assert "pitches" not in entries_of("5 runs in 1 inning")[0]


def test_a_level_may_open_the_next_sentence() -> None:
    line = "strained his oblique at PE. 4 out of 10 when he twists."
    assert entries_of(line, "guardian") == [{"pain": [{"site": "oblique", "severity": 4}]}]

    line = "shoulder sore. 3 of 10 pitches were curves"
    assert entries_of(line, "guardian")[0]["pain"] == [{"site": "shoulder", "sore": True}]


def test_everybody_before_each_name_tells_nothing() -> None:
    line = "Everybody threw today. Reid 30, Owen 20. Flat ground, no spins."

    assert entries_of(line, "coach") == [
        {"who": "Reid", "kind": "catch", "pitches": 30, "breaking": 0},
        {"who": "Owen", "kind": "catch", "pitches": 20, "breaking": 0},
    ]
