"""The most innings of twelve months, as Pitch Smart publishes them (mlb.com/pitch-smart)."""

from datetime import date

import pytest

from core.rest import Thrower, year_of_innings
from core.rulebooks import load_books

ON = date(2026, 5, 2)


@pytest.mark.parametrize(
    ("age", "innings"), [(8, 60), (9, 80), (12, 80), (13, 100), (15, 100), (18, 100), (20, None)]
)
def test_the_cap_of_each_age(age: int, innings: int | None) -> None:
    cap = year_of_innings(
        load_books(["pitch-smart"]), Thrower(birth_date=date(2026 - age, 1, 1)), ON
    )

    assert (cap.outs if cap else None) == (innings * 3 if innings else None)


def test_a_book_without_such_a_number_gives_none_and_beside_another_changes_nothing() -> None:
    thrower = Thrower(birth_date=date(2013, 1, 1))

    assert year_of_innings(load_books(["little-league"]), thrower, ON) is None
    both = year_of_innings(load_books(["little-league", "pitch-smart"]), thrower, ON)
    assert both is not None
    assert "Pitch Smart" in both.book
