from collections.abc import Sequence
from datetime import date, timedelta

from core.load import Day, WeekLoad, daily, week_load

TODAY = date(2026, 5, 28)


def record(loads: Sequence[int | None]) -> list[Day]:
    """A line for each day that ends today; None is an uncounted outing."""
    first = TODAY - timedelta(days=len(loads) - 1)
    return [Day(first + timedelta(days=place), load) for place, load in enumerate(loads)]


def load_of(loads: Sequence[int | None]) -> WeekLoad:
    found = week_load(record(loads), TODAY)
    assert found is not None
    return found


def test_a_day_off_is_known_and_a_day_without_a_line_is_not() -> None:
    days = [Day(date(2026, 5, 1), 0), Day(date(2026, 5, 3), 40), Day(date(2026, 5, 3), 20)]

    assert daily(days, date(2026, 5, 1), date(2026, 5, 4)) == [0, None, 60, None]


def test_an_uncounted_outing_makes_its_day_unknown() -> None:
    days = [Day(date(2026, 5, 1), 40), Day(date(2026, 5, 1), None)]

    assert daily(days, date(2026, 5, 1), date(2026, 5, 1)) == [None]


def test_a_week_is_set_beside_the_month_and_the_three_weeks_before() -> None:
    load = load_of([10] * 21 + [30] * 7)

    assert load == WeekLoad(210, 105.0, 70.0, unknown_week=0, unknown=0, days=28)
    assert load.more_than_usual


def test_half_as_much_again_is_not_enough_below_sixty_throws_more() -> None:
    assert not load_of([4] * 21 + [12] * 7).more_than_usual  # 84 beside 28: 56 more
    assert load_of([10] * 21 + [19] * 7).more_than_usual  # 133 beside 70: 63 more


def test_sixty_throws_more_are_not_enough_below_half_as_much_again() -> None:
    assert not load_of([40] * 21 + [50] * 7).more_than_usual  # 350 beside 280


def test_before_28_days_or_with_three_unknown_days_nothing_is_compared() -> None:
    assert not load_of([10] * 20 + [30] * 7).more_than_usual
    assert not load_of([10] * 18 + [None] * 3 + [30] * 7).more_than_usual
    assert load_of([10] * 19 + [None] * 2 + [30] * 7).more_than_usual


def test_without_a_line_there_is_no_load() -> None:
    assert week_load([Day(date(2026, 6, 1), 30)], TODAY) is None
