"""Whom a book covers, and which age it goes by."""

from datetime import date

import pytest

from core.rulebooks import NotCoveredError, RuleBook, load_books, parse_book, template


def with_age(rule: str) -> RuleBook:
    return parse_book(template().replace('on = "birthday"', rule, 1), "mine.toml")


@pytest.mark.parametrize(
    ("rule", "on", "age"),
    [
        ('on = "birthday"', date(2026, 5, 31), 12),
        ('on = "birthday"', date(2026, 6, 1), 13),
        ('on = "08-31"', date(2026, 4, 1), 13),
        ('on = "08-31"\nseason_from = "09-01"', date(2026, 10, 1), 14),
        ('on = "12-31"\nyear = -1', date(2026, 7, 1), 12),
        ('on = "01-01"\nyear = 1', date(2026, 7, 1), 13),
        ('on = "02-29"', date(2026, 7, 1), 12),
    ],
)
def test_the_age_that_counts(rule: str, on: date, age: int) -> None:
    assert with_age(rule).age_of(date(2013, 6, 1), on) == age


def test_born_on_29_february_is_older_on_1_march() -> None:
    book = with_age('on = "birthday"')

    assert book.age_of(date(2012, 2, 29), date(2026, 2, 28)) == 13
    assert book.age_of(date(2012, 2, 29), date(2026, 3, 1)) == 14


def test_an_age_between_the_bands_ends_is_covered_by_one_band() -> None:
    (book,) = load_books(["pitch-smart"])

    names = [book.band_for(age=age, grade=None, level=None).name for age in range(7, 23)]

    assert names == [f"{n}–{n + 1}" for n in range(7, 19, 2) for _ in (0, 1)] + ["19–22"] * 4


@pytest.mark.parametrize("age", [0, 6, 23, 40])
def test_an_age_outside_is_an_error_with_a_name(age: int) -> None:
    (book,) = load_books(["pitch-smart"])

    with pytest.raises(NotCoveredError, match=f"no band for age {age}"):
        book.band_for(age=age, grade=None, level=None)


def test_a_level_that_the_book_does_not_name_is_an_error() -> None:
    (book,) = load_books(["minnesota-high-school"])

    with pytest.raises(NotCoveredError, match="no band for level majors"):
        book.band_for(age=None, grade=None, level="majors")


def test_a_book_by_level_asks_for_the_level() -> None:
    (book,) = load_books(["minnesota-high-school"])

    with pytest.raises(NotCoveredError, match="give the pitcher's level"):
        book.band_for(age=16, grade=10, level=None)


def test_a_season_starts_on_its_day() -> None:
    book = parse_book(
        template().replace("# [season]", "[season]").replace("# begins", "begins"), "x"
    )

    assert book.season_start(date(2026, 3, 1)) == date(2026, 3, 1)
    assert book.season_start(date(2026, 2, 28)) == date(2025, 3, 1)


def test_a_season_over_the_turn_of_the_year_keeps_its_age() -> None:
    book = with_age('on = "04-30"\nseason_from = "09-01"\nyear = -1')
    born = date(2012, 6, 1)

    # 12 on 30 April 2025, the year in which the season began.
    assert book.age_of(born, date(2025, 10, 1)) == 12
    assert book.age_of(born, date(2026, 3, 1)) == 12
