"""Counts: bound to their nouns, corrected, shared out, or asked about."""

import pytest

from tests.support.reading import entries_of, reading_of, reasons_of


@pytest.mark.parametrize(
    "line",
    [
        "44 p 6 cb 8 ch",
        "p 44 cb 6 ch 8",
        "pitches:44 curves:6 changeups:8",
        "44 pitches, 6 curves, 8 changeups",
        "forty four pitches with six curves and eight changeups",
        "44p/6cb/8ch",
    ],
)
def test_a_number_counts_the_noun_after_it_or_all_count_the_noun_before(line: str) -> None:
    assert entries_of(line) == [{"pitches": 44, "breaking": 6, "curve": 6, "changeup": 8}]


@pytest.mark.parametrize(
    "line",
    ["58 no wait 61 pitches", "58 pitches i mean 61", "61 pitches not 58", "threw 58, sorry 61"],
)
def test_a_correction_wins(line: str) -> None:
    assert entries_of(line) == [{"pitches": 61}]


def test_a_correction_word_before_another_noun_corrects_nothing() -> None:
    assert entries_of("62 pitches, sorry, 11 curves") == [
        {"pitches": 62, "breaking": 11, "curve": 11}
    ]


@pytest.mark.parametrize(
    ("line", "curves"),
    [
        ("15% curves of 60", 9),
        ("half of them curves, 60 pitches", 30),
        ("a quarter of my 60 pitches were curves", 15),
        ("14 of my 60 were curves", 14),
        ("13 curves out of 60", 13),
        ("12/60 were curves", 12),
    ],
)
def test_a_share_becomes_a_count(line: str, curves: int) -> None:
    assert entries_of(line) == [{"pitches": 60, "breaking": curves, "curve": curves}]


def test_a_share_that_gives_no_whole_count_is_asked() -> None:
    assert reasons_of("71 pitches 31% curves") == {"unknown_number"}


@pytest.mark.parametrize(
    ("line", "strikes"),
    [("62/38 pitches/strikes", 38), ("38 strikes out of 62", 38), ("62 pitches (38 strikes)", 38)],
)
def test_strikes_of_all_pitches(line: str, strikes: int) -> None:
    assert entries_of(line) == [{"pitches": 62, "strikes": strikes}]


@pytest.mark.parametrize(
    "line",
    ["9 curves (4 strikes)", "curve: 9 thrown 4 strikes", "4 of 9 curves for strikes"],
)
def test_strikes_of_the_breaking_ball(line: str) -> None:
    assert entries_of(line) == [{"breaking": 9, "curve": 9, "breaking_strikes": 4}]


def test_sets_are_multiplied_and_sums_added() -> None:
    assert entries_of("2 sets of 10 spins") == [{"breaking": 20}]
    assert entries_of("15+18+12 = 45 pitches") == [{"pitches": 45}]


def test_counts_inning_by_inning_that_add_up_to_the_total_are_its_parts() -> None:
    assert entries_of("18, 14, 21 so 53 pitches") == [{"pitches": 53}]


def test_no_curves_is_none_of_them_and_no_breaking_ball() -> None:
    assert entries_of("30 pitches, no curves or sliders") == [
        {"pitches": 30, "breaking": 0, "curve": 0, "slider": 0}
    ]


@pytest.mark.parametrize(
    ("line", "reason"),
    [
        ("60-65 pitches", "two_readings"),
        ("between 60 and 65 pitches", "two_readings"),
        ("coach had him at 48 but i had 51", "two_readings"),
        ("was at 45 after 3 innings", "two_readings"),
        ("a few curves", "vague"),
        ("over 60 pitches", "vague"),
        ("fiftey pitches", "vague"),
        ("30 ones 8 twos", "unknown_pitch"),
        ("40 pitches 12 offspeed", "unknown_pitch"),
        ("62 pitches 11", "unknown_number"),
        ("62 pitches 70 curves", "impossible"),
        ("40 pitches 30 fb 15 cb", "impossible"),
        ("9.4 innings 50 pitches", "impossible"),
        ("14 innings 150 pitches", "impossible"),
        ("620 pitches 11 cb", "unlikely"),
        ("12 pitches 4 innings", "unlikely"),
        ("95 pitches in 2 innings", "unlikely"),
        ("10 ip 120 pitches", "unlikely"),
    ],
)
def test_what_cannot_be_read_for_sure_is_asked(line: str, reason: str) -> None:
    assert reason in reasons_of(line)


def test_what_is_certain_beside_an_impossible_count_stays() -> None:
    (entry,) = reading_of("62 pitches 70 curves, no pain, vs Hogs").entries

    assert entry.as_json() == {"kind": "game", "pain": []}


def test_a_range_with_a_stated_result_is_that_result() -> None:
    assert entries_of("40-45 pitches, book said 43") == [{"pitches": 43}]


@pytest.mark.parametrize("line", ["~70 pitches", "70ish", "threw 70ish", "about 70 pitches"])
def test_estimates_are_marked(line: str) -> None:
    reading = reading_of(line)

    assert all(entry.about and entry.pitches == 70 for entry in reading.entries)


@pytest.mark.parametrize(
    ("line", "outs"),
    [
        ("4.1 ip", 13),
        ("4 1/3 innings", 13),
        ("4 and a third innings", 13),
        ("an inning and two thirds", 5),
        ("two thirds of an inning", 2),
        ("got 4 outs", 4),
        ("one inning plus one out", 4),
        ("4⅔ ip", 14),
    ],
)
def test_innings_are_counted_in_outs_and_make_a_game(line: str, outs: int) -> None:
    assert entries_of(f"40 pitches, {line}") == [{"kind": "game", "pitches": 40, "outs": outs}]


def test_innings_caught_are_apart_and_make_no_game() -> None:
    assert entries_of("caught 4 innings") == [{"caught_outs": 12}]
    assert entries_of("caught 5 then pitched 2, 30 p") == [
        {"kind": "game", "pitches": 30, "outs": 6, "caught_outs": 15}
    ]


@pytest.mark.parametrize(
    ("line", "effort"),
    [("75%", 75), ("half speed", 50), ("@ 80 percent", 80), ("effort 8/10", 80), ("3/4 speed", 75)],
)
def test_effort_is_a_percentage(line: str, effort: int) -> None:
    assert entries_of(f"20 throws {line}") == [{"pitches": 20, "effort": effort}]


def test_the_rest_are_what_the_others_leave() -> None:
    assert entries_of("25 pitches, 5 changeups, 4 curves, the rest fastballs") == [
        {"pitches": 25, "breaking": 4, "curve": 4, "changeup": 5, "fastball": 16}
    ]


@pytest.mark.parametrize(
    ("line", "kind"),
    [("long toss then 30 pitch pen", "bullpen"), ("pen then long toss 30 throws", "catch")],
)
def test_counts_are_of_the_kind_beside_them(line: str, kind: str) -> None:
    assert entries_of(line) == [{"kind": kind, "pitches": 30}]
