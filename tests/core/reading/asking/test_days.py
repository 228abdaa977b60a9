"""Which dates a named day is: ahead for what may be thrown, back for what was thrown."""

from datetime import date, datetime

import pytest

from core.reading.asking import Asked, Span, ask

WEDNESDAY = datetime.fromisoformat("2026-05-06T18:30")
SATURDAY = datetime.fromisoformat("2026-05-09T12:00")
ROSTER = ("Mateo Rivas", "Owen Tarrant")


def read(text: str, posted: datetime = WEDNESDAY) -> Asked:
    found = ask(text, posted, roster=ROSTER)
    assert found is not None, text
    return found


def may(*days: int) -> tuple[date, ...]:
    return tuple(date(2026, 5, day) for day in days)


@pytest.mark.parametrize(
    ("named", "days"),
    [
        ("today", may(6)),
        ("wed", may(6)),
        ("sat", may(9)),
        ("this sat", may(9)),
        ("monday", may(11)),
        ("next monday", may(11)),
        ("fri-sun", may(8, 9, 10)),
        ("sat and sun", may(9, 10)),
        ("this weekend", may(9, 10)),
        ("5/9", may(9)),
        ("sat 5/9", may(9)),
        ("May 9th", may(9)),
        ("the 9th", may(9)),
        ("2026-05-09", may(9)),
        ("in 3 days", may(9)),
    ],
)
def test_a_day_asked_about_ahead_is_the_next_such_day(named: str, days: tuple[date, ...]) -> None:
    assert read(f"who can throw {named}").days == days


@pytest.mark.parametrize("named", ["next sat", "next weekend", "sat 5/10", "5/1", "13/45", "2/3"])
def test_a_day_that_is_none_or_two_ahead_is_unclear(named: str) -> None:
    found = read(f"who can throw {named}")

    assert found.days == ()
    assert found.unclear == (named,)


@pytest.mark.parametrize(
    ("named", "days"),
    [
        ("sat", may(2)),
        ("wed", may(6)),
        ("last wed", (date(2026, 4, 29),)),
        ("yesterday", may(5)),
        ("3 days ago", may(3)),
        ("this weekend", may(2, 3)),
        ("4/25", (date(2026, 4, 25),)),
        ("12/20", (date(2025, 12, 20),)),
        ("fri-sun", may(1, 2, 3)),
    ],
)
def test_a_day_asked_about_back_is_the_last_such_day(named: str, days: tuple[date, ...]) -> None:
    assert read(f"how many did Mateo throw {named}").days == days


def test_on_a_saturday_saturday_is_today_both_ways_and_next_saturday_is_clear() -> None:
    assert read("who can throw sat", SATURDAY).days == may(9)
    assert read("how many did Mateo throw sat", SATURDAY).days == may(9)
    assert read("who can throw next sat", SATURDAY).days == may(16)


def test_a_saved_arm_takes_its_two_days_from_their_own_clauses() -> None:
    found = read("how many can Mateo throw thursday and still go saturday")

    assert found.days == may(7)
    assert found.later == date(2026, 5, 9)


@pytest.mark.parametrize(
    ("typed", "span", "back", "days"),
    [
        ("this week", Span.WEEK, None, 3),
        ("last week", Span.LAST_WEEK, None, 7),
        ("last 7 days", Span.LAST_DAYS, 7, 7),
        ("in the past 2 weeks", Span.LAST_DAYS, 14, 14),
        ("last 90 days", Span.LAST_DAYS, 90, 0),
        ("since sunday", Span.SINCE, None, 1),
        ("this season", Span.SEASON, None, 0),
    ],
)
def test_a_span_of_the_past_is_named_and_short_ones_are_spelled_out(
    typed: str, span: Span, back: int | None, days: int
) -> None:
    found = read(f"how many has Mateo thrown {typed}")

    assert (found.span, found.back, len(found.days)) == (span, back, days)


def test_a_spanish_date_that_could_start_with_day_or_month_is_unclear() -> None:
    assert read("quien puede lanzar el 5/9").unclear == ("5/9",)
    assert read("quien puede lanzar el 15/5").days == may(15)


def test_the_later_day_is_the_first_such_day_after_the_outing() -> None:
    found = read("how many can Mateo throw thursday and still go saturday", SATURDAY)

    assert found.days == may(14)
    assert found.later == date(2026, 5, 16)


def test_a_later_day_before_the_outing_is_asked_about() -> None:
    found = read("can Mateo throw 40 sat and still go tomorrow")

    assert (found.later, found.unclear) == (None, ("go tomorrow",))
