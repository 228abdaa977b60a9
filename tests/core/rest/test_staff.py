"""What-if questions, the staff sheet and the season standing, worked by hand."""

from datetime import date, timedelta

import pytest

from core.rest import (
    Arm,
    Cost,
    RestError,
    Thrower,
    Thrown,
    most_leaving,
    per_inning,
    staff_sheet,
    standing,
    what_if,
)
from core.rulebooks import load_books

FRIDAY = date(2026, 5, 8)
SMART = load_books(["pitch-smart"])
LITTLE = load_books(["little-league"])
FOURTEEN = Thrower(age=14)


def may(day: int) -> date:
    return date(2026, 5, day)


def test_what_an_outing_would_cost() -> None:
    asked = what_if(SMART, FOURTEEN, [], Thrown(FRIDAY, pitches=51))

    assert (asked.allowed, asked.days, asked.next_eligible) == (True, 3, may(12))


def test_more_than_is_allowed_is_told() -> None:
    assert not what_if(SMART, FOURTEEN, [], Thrown(FRIDAY, pitches=96)).allowed


def test_a_what_if_needs_a_count() -> None:
    with pytest.raises(RestError, match="give one"):
        what_if(SMART, FOURTEEN, [], Thrown(FRIDAY))


@pytest.mark.parametrize(
    ("first", "second", "most"),
    [
        # Games Thursday and Saturday: at most 35; Wednesday and Saturday: at most 50.
        # A member league's page: https://www.octoraralittleleague.org/Default.aspx?tabid=1714107
        (may(7), may(9), 35),
        (may(6), may(9), 50),
        (may(8), may(9), 20),
        (may(4), may(9), 85),
    ],
)
def test_the_most_that_leaves_him_for_a_later_game(first: date, second: date, most: int) -> None:
    assert most_leaving(LITTLE, Thrower(age=12), [], first, second) == most


def test_nothing_today_leaves_who_is_not_eligible_later_anyway() -> None:
    tired = [Thrown(may(7), pitches=80)]

    assert most_leaving(SMART, FOURTEEN, tired, FRIDAY, may(9)) is None
    assert most_leaving(SMART, FOURTEEN, tired, FRIDAY, may(12)) == 0


def test_the_later_date_must_be_later() -> None:
    with pytest.raises(RestError, match="is not after"):
        most_leaving(SMART, FOURTEEN, [], FRIDAY, FRIDAY)


STAFF = [
    Arm("Ira", SMART, FOURTEEN, [Thrown(may(7), pitches=60)]),
    Arm("Juno", SMART, FOURTEEN, [Thrown(may(6), pitches=10)]),
    Arm("Kit", SMART, Thrower(age=12), []),
    Arm("Lou", SMART, Thrower(age=5), []),
    Arm("Max", SMART, FOURTEEN, [Thrown(may(6), pitches=40)]),
]


def test_the_sheet_puts_the_most_pitches_first_and_tells_why_not() -> None:
    lines = staff_sheet(STAFF, [FRIDAY], inning=19)

    assert [line.key for line in lines] == ["Juno", "Kit", "Max", "Ira", "Lou"]
    assert [line.answer.pitches_allowed for line in lines if line.answer] == [95, 85, 0, 0]
    assert [[r.rule for r in line.why_not] for line in lines] == [[], [], ["rest"], ["rest"], []]
    assert "no band for age 5" in lines[-1].error


def test_the_sheet_prices_each_use() -> None:
    juno = staff_sheet(STAFF, [FRIDAY], inning=19)[0]

    assert juno.costs == (
        Cost(20, may(9)),
        Cost(35, may(10)),
        Cost(50, may(11)),
        Cost(65, may(12)),
        Cost(95, may(13)),
    )


def test_the_price_knows_the_third_day_in_a_row() -> None:
    twice = Arm("Nell", SMART, FOURTEEN, [Thrown(may(7), pitches=10)])

    (line,) = staff_sheet([twice], [FRIDAY], inning=19)

    # Friday would be the second day in a row: up to 35 pitches he is free on Sunday.
    assert line.costs[0] == Cost(35, may(10))


def test_a_sheet_over_days_goes_day_by_day() -> None:
    lines = staff_sheet(STAFF[:2], [FRIDAY, may(11)], inning=19)

    assert [(line.on, line.key) for line in lines] == [
        (FRIDAY, "Juno"),
        (FRIDAY, "Ira"),
        (may(11), "Ira"),
        (may(11), "Juno"),
    ]


@pytest.mark.parametrize(("age", "pitches"), [(10, 19), (14, 19), (15, 16), (18, 16)])
def test_an_inning_is_expected_to_take(age: int, pitches: int) -> None:
    # Axe 2001, Sports Med Arthrosc Rev 9:24-34: 19.5 at 9-12, 19.2 at 13-14, 14.9-16.5 above.
    assert per_inning(age) == pitches


def weekly(first: date, last: date) -> list[Thrown]:
    weeks = (last - first).days // 7 + 1
    return [Thrown(first + timedelta(7 * n), pitches=40, outs=9) for n in range(weeks)]


SUMMER = weekly(date(2025, 6, 1), date(2025, 10, 26))
SPRING = weekly(date(2026, 2, 1), date(2026, 5, 31))
LAST = date(2026, 5, 31)


def test_the_innings_of_a_year_stand_against_the_cap() -> None:
    record = [*SUMMER, *SPRING, Thrown(date(2026, 5, 20), pitches=10)]

    totals = {t.rule: t for t in standing(SMART, FOURTEEN, record, LAST).totals if t.maximum}

    # 22 Sundays and 18 Sundays, three innings each; one outing without innings is told apart.
    cap = totals["innings-in-12-months"]
    assert (cap.used, cap.maximum, cap.uncounted, cap.unit) == (360, 300, 1, "outs")


def test_pitches_of_a_year_are_summed_without_a_cap() -> None:
    found = standing(SMART, FOURTEEN, SPRING, LAST)

    assert [(t.unit, t.used) for t in found.totals if t.maximum is None] == [
        ("pitches", 18 * 40),
        ("outs", 18 * 9),
    ]


def test_a_winter_break_counts_as_months_off() -> None:
    months, piece = standing(SMART, FOURTEEN, [*SUMMER, *SPRING], LAST).time_off

    # 27 October to 31 January: three whole months in one piece, 97 days.
    assert (months.months_so_far, months.longest_days, months.done) == (3, 97, False)
    # One more month within twelve from 1 June 2025 had to start by 1 May 2026.
    assert months.start_by == date(2026, 5, 1)
    assert (piece.done, piece.start_by) == (True, None)


def test_without_a_break_the_date_is_told_by_which_one_must_start() -> None:
    record = weekly(date(2025, 9, 7), LAST)

    months, piece = standing(SMART, FOURTEEN, record, LAST).time_off

    # Twelve months from 7 September 2025 end on 7 September 2026.
    assert months.start_by == date(2026, 5, 7)
    assert piece.start_by == date(2026, 7, 7)


def test_catch_play_ends_time_off_throwing_but_not_time_off_competition() -> None:
    catch = [Thrown(d, "catch") for d in (date(2025, 12, 1), date(2026, 1, 10))]
    record = [*SUMMER, *catch, *SPRING]

    (young, _) = standing(SMART, FOURTEEN, record, LAST).time_off
    (older, _) = standing(SMART, Thrower(age=16), record, LAST).time_off

    assert (young.of, young.months_so_far) == ("throwing", 2)
    assert (older.of, older.months_so_far) == ("competition", 3)


def test_days_before_the_log_began_are_never_off() -> None:
    found = standing(SMART, FOURTEEN, SPRING, LAST)

    assert found.logged_since == date(2026, 2, 1)
    assert found.time_off[0].months_so_far == 0


def test_a_log_without_outings_claims_no_time_off() -> None:
    found = standing(SMART, FOURTEEN, [], LAST)

    assert [off.done for off in found.time_off] == [False, False]
    assert found.logged_since is None
