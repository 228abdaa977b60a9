"""Days, kinds, and several outings on one line. The lines are posted on Wednesday 12 August."""

import pytest

from tests.support.reading import entries_of, reasons_of


@pytest.mark.parametrize(
    ("day", "on"),
    [
        ("yesterday", "2026-08-11"),
        ("last night", "2026-08-11"),
        ("two days ago", "2026-08-10"),
        ("saturday", "2026-08-08"),
        ("last wednesday", "2026-08-05"),
        ("8/9", "2026-08-09"),
        ("aug 9", "2026-08-09"),
        ("2026-08-09", "2026-08-09"),
        ("on the 9th", "2026-08-09"),
        ("sat 8/8", "2026-08-08"),
    ],
)
def test_a_day_is_the_most_recent_such_day(day: str, on: str) -> None:
    assert entries_of(f"{day} 45 pitches") == [{"on": on, "pitches": 45}]


@pytest.mark.parametrize("day", ["today", "tonight", "wednesday", "this morning"])
def test_the_posted_day_is_left_out(day: str) -> None:
    assert entries_of(f"{day} 45 pitches") == [{"pitches": 45}]


def test_a_day_that_could_be_several_is_asked() -> None:
    assert reasons_of("the other day 45 pitches") == {"unclear_day"}


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("pen", "bullpen"),
        ("in my side", "bullpen"),
        ("lesson", "bullpen"),
        ("warmed up, never got in,", "bullpen"),
        ("flat ground", "catch"),
        ("long toss", "catch"),
        ("played catch", "catch"),
        ("live abs", "live"),
        ("intrasquad", "live"),
        ("relief", "game"),
        ("vs Hogs", "game"),
        ("vs siete robles", "game"),
        ("lost 3-2,", "game"),
    ],
)
def test_kinds(words: str, kind: str) -> None:
    assert entries_of(f"{words} 25 pitches") == [{"kind": kind, "pitches": 25}]


@pytest.mark.parametrize("line", ["threw bp, 50 pitches", "scrimmage 30 pitches", "tryout 20 p"])
def test_throwing_of_open_kind_is_asked(line: str) -> None:
    assert reasons_of(line) == {"unknown_kind"}


@pytest.mark.parametrize("line", ["off today", "no throwing", "day off", "took the day off"])
def test_a_day_off(line: str) -> None:
    assert entries_of(line) == [{"kind": "off"}]


@pytest.mark.parametrize("line", ["didnt pitch, played ss all day", "dnp", "no pen today"])
def test_not_pitching_is_neither_an_outing_nor_a_day_off(line: str) -> None:
    assert entries_of(line) == []


def test_two_kinds_are_two_outings_in_either_order_of_words() -> None:
    assert entries_of("catch 30 throws then a 22 pitch pen") == [
        {"kind": "catch", "pitches": 30},
        {"kind": "bullpen", "pitches": 22},
    ]
    assert entries_of("45 in the game plus 15 in the pen") == [
        {"kind": "game", "pitches": 45},
        {"kind": "bullpen", "pitches": 15},
    ]


def test_two_days_are_two_outings() -> None:
    assert entries_of("mon pen 20, tue 45 pitches in 3 innings") == [
        {"kind": "bullpen", "on": "2026-08-10", "pitches": 20},
        {"kind": "game", "on": "2026-08-11", "pitches": 45, "outs": 9},
    ]


def test_a_list_of_days_with_each_is_one_outing_a_day() -> None:
    assert entries_of("sun and mon 12 spins each") == [
        {"on": "2026-08-09", "breaking": 12},
        {"on": "2026-08-10", "breaking": 12},
    ]
    assert reasons_of("sun and mon 12 spins") == {"two_readings"}


def test_both_ends_of_a_doubleheader_are_two_games() -> None:
    games = [{"kind": "game", "pitches": 22}, {"kind": "game", "pitches": 27}]

    assert entries_of("both ends of the dh, 22 and 27") == games
    assert entries_of("22 in game 1 and 27 in game 2") == games
