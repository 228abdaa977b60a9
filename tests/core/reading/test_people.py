"""Whose outing it is, and how many there are."""

import pytest

from tests.support.reading import entries_of, reading_of, reasons_of

LEO_AND_MAX = [{"who": "Leo", "pitches": 45}, {"who": "Max", "pitches": 30}]


@pytest.mark.parametrize(
    "line",
    [
        "Leo 45p, Max 30p",
        "Leo 45p Max 30p",
        "Leo: 45 pitches\nMax: 30 pitches",
        "1. Leo 45 p\n2. Max 30 p",
        "Leo threw 45 pitches and Max threw 30",
        "Leo 45, Max 30",
        "45 pitches for Leo, 30 for Max",
        "Leo - 45, Max - 30",
    ],
)
def test_each_name_has_its_own_entry(line: str) -> None:
    assert entries_of(line, "coach") == LEO_AND_MAX


def test_a_table_is_read_by_its_columns() -> None:
    line = "name  P  S  CB  IP\nLeo 61 39 12 4.2\nMax 33 20 5 2.1"

    assert entries_of(line, "coach") == [
        {"who": "Leo", "kind": "game", "pitches": 61, "breaking": 12, "curve": 12,
         "strikes": 39, "outs": 14},
        {"who": "Max", "kind": "game", "pitches": 33, "breaking": 5, "curve": 5,
         "strikes": 20, "outs": 7},
    ]  # fmt: skip


def test_a_heading_and_a_closing_opponent_hold_for_all() -> None:
    assert entries_of("Live BP: Leo 24; Max 20", "coach") == [
        {"who": "Leo", "kind": "live", "pitches": 24},
        {"who": "Max", "kind": "live", "pitches": 20},
    ]
    assert [e["kind"] for e in entries_of("Leo 45p, Max 30p vs Hogs", "coach")] == ["game", "game"]


def test_everyone_except() -> None:
    assert entries_of("catch play: everyone 30 w 12 spins except Leo and Max", "coach") == [
        {"who": "everyone", "except": ["Leo", "Max"], "kind": "catch", "pitches": 30,
         "breaking": 12}
    ]  # fmt: skip


def test_counts_of_several_need_each() -> None:
    assert entries_of("Leo and Max 22 throws each", "coach") == [
        {"who": "Leo", "pitches": 22},
        {"who": "Max", "pitches": 22},
    ]
    assert reasons_of("Leo and Max 22 throws", "coach") == {"unclear_person"}


def test_company_opponents_and_coaches_are_not_the_pitcher() -> None:
    assert entries_of("pen w coach dre, 30 pitches") == [{"kind": "bullpen", "pitches": 30}]
    assert entries_of("threw to Jake, 30 pitches") == [{"pitches": 30}]
    assert entries_of("30 pitches vs Leo's team") == [{"kind": "game", "pitches": 30}]


def test_the_roster_knows_names_of_two_words_and_words_that_are_names() -> None:
    roster = ("Mary Ann", "Will")

    assert entries_of("mary ann 20p. Will 30p", "coach", roster) == [
        {"who": "mary ann", "pitches": 20},
        {"who": "Will", "pitches": 30},
    ]


def test_a_mention_is_kept_as_typed() -> None:
    assert entries_of("<@U41K7> 55p", "coach") == [{"who": "<@U41K7>", "pitches": 55}]


def test_one_who_goes_unnamed_beside_others_is_asked() -> None:
    assert "unclear_person" in reasons_of("45p 6cb, then Leo 30p", "coach")


def test_a_later_word_on_the_arm_joins_the_entry() -> None:
    assert entries_of("Leo 45p. Max 30p. Leo's elbow hurts", "coach") == [
        {"who": "Leo", "pitches": 45, "pain": [{"site": "elbow"}]},
        {"who": "Max", "pitches": 30},
    ]


def test_everyone_else_leaves_out_names_alone() -> None:
    reading = reading_of("my knee hurts 3/10. Everyone else catch 20 throws at 50%", "coach")

    assert all("(" not in name for entry in reading.entries for name in entry.except_)
