"""A pitch limit in the staff's own words is an order; what merely sounds like one is none."""

from datetime import date, datetime

import pytest

from core.reading.free_limits import free_limit_order

POSTED = datetime.fromisoformat("2026-05-20T18:00")  # a Wednesday
TODAY, SATURDAY = date(2026, 5, 20), date(2026, 5, 23)


@pytest.mark.parametrize(
    ("line", "who", "pitches", "first", "last"),
    [
        ("Leo is on a 40 pitch limit", "Leo", 40, TODAY, None),
        ("max 45 for Leo today", "Leo", 45, TODAY, TODAY),
        ("keep Mateo under 50 saturday", "Mateo", 49, SATURDAY, SATURDAY),
        ("Saturday: Mateo max 50 pitches", "Mateo", 50, SATURDAY, SATURDAY),
        ("please keep Leo to 35 tomorrow", "Leo", 35, date(2026, 5, 21), date(2026, 5, 21)),
        ("don't let Leo go over 60", "Leo", 60, TODAY, None),
        ("Leo limited to 40 until 6/1", "Leo", 40, TODAY, date(2026, 6, 1)),
        ("no more than 45 pitches for Leo Ortiz on sat", "Leo Ortiz", 45, SATURDAY, SATURDAY),
        ("Leo's limit is 40.", "Leo", 40, TODAY, None),
        ("Leo máximo 45 hoy", "Leo", 45, TODAY, TODAY),
        ("Ian está en límite de 40 lanzamientos", "Ian", 40, TODAY, None),
        ("máximo 45 para Leo el sábado", "Leo", 45, SATURDAY, SATURDAY),
        ("que Mateo no pase de 50", "Mateo", 50, TODAY, None),
        ("max 45 for <@U41K7>", "<@U41K7>", 45, TODAY, None),
    ],
)
def test_a_limit_in_free_words(
    line: str, who: str, pitches: int, first: date, last: date | None
) -> None:
    order = free_limit_order(line, POSTED)

    assert order is not None
    assert (order.who, order.pitches, order.first, order.last) == (who, pitches, first, last)
    assert not order.unclear


def test_an_until_that_is_no_day_is_unclear() -> None:
    order = free_limit_order("Leo limited to 40 until he is better", POSTED)

    assert order is not None
    assert order.unclear == "until he is better"


@pytest.mark.parametrize(
    "line",
    [
        "Leo 45 max 8 curves",
        "Leo threw 45, max 30",
        "max 8 for Leo",
        "max 3 innings for Leo",
        "is Leo on a 40 pitch limit?",
        "what is Leo's limit 45 or 50",
        "everyone max 40 today",
        "the league limit is 85",
        "Leo under 50 today, 44p 6cb",
        "Rafa hasta 50 y Pepe hasta 35",
        "Leo hasta 40 o hasta 45",
        "Leo max 45 because his elbow hurts",
        "no breaking balls for Eli till june",
        "Leo hit 72 max",
        "Leo max 72 mph",
        "keep Leo and Max under 50",
        "Leo pitched at most 45 i think",
        "if Leo is at 40 max he sits",
        "Mateo max 50\nLeo max 40",
    ],
)
def test_what_is_no_clear_limit_is_left_to_the_reader(line: str) -> None:
    assert free_limit_order(line, POSTED) is None
