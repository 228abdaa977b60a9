"""Other people's counts beside our own: theirs are left out, ours are kept."""

import pytest

from tests.support.reading import Author, entries_of, reasons_of


@pytest.mark.parametrize(
    ("line", "who"),
    [
        ("Hawks starter 61p, our Leo 44p", "Leo"),
        ("their ace threw 70 and our Leo 44", "Leo"),
        ("their ace threw 70, Leo 44", "Leo"),
        ("their Owen threw 60, Leo 44 pitches", "Leo"),
    ],
)
def test_ours_is_kept_beside_theirs(line: str, who: str) -> None:
    assert entries_of(line, "coach") == [{"who": who, "pitches": 44}]


@pytest.mark.parametrize(
    ("line", "author"),
    [
        ("my brother threw 40 and i threw 30", "pitcher"),
        ("my brother threw 40, me 30", "pitcher"),
        ("his brother threw 40 and he threw 30", "guardian"),
        ("su hermano tiró 40 y él 30", "guardian"),
        ("mi hermano tiro 40 y yo 30", "pitcher"),
    ],
)
def test_ones_own_count_is_kept_beside_a_brothers(line: str, author: Author) -> None:
    assert entries_of(line, author) == [{"pitches": 30}]


def test_their_pitcher_is_nobody_of_ours() -> None:
    assert entries_of("Hawks starter 61p", "coach") == []


def test_our_starter_stays_ours() -> None:
    assert entries_of("Brooks starter 61p 4ip", "coach")[0]["who"] == "Brooks"


def test_a_second_name_beside_a_named_rival_is_asked() -> None:
    assert reasons_of("their ace Max threw 70, then Owen 20", "coach") == {"unclear_person"}


def test_counts_after_a_rivals_clause_without_counts_are_asked() -> None:
    line = "Tigers pitcher hit him, 40p 3ip though"

    assert reasons_of(line, "guardian") == {"unclear_person"}


def test_months_in_a_list_of_names_are_asked() -> None:
    assert reasons_of("off: May, June", "coach") == {"unclear_person"}
    assert reasons_of("pens: May 25, June 30, April 22", "coach") == {"unclear_person"}
