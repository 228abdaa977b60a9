"""Three invented rule sets, typed from FORMAT.md alone; every expected answer worked by hand."""

from datetime import date, time
from pathlib import Path

import pytest

from core.rest import RestAnswer, Thrower, Thrown, answer, required
from core.rulebooks import RuleBook, load_books

BOOKS = Path(__file__).parent / "books"


def book(name: str) -> tuple[RuleBook, ...]:
    return load_books([name], BOOKS)


def may(day: int) -> date:
    """2026-05-04 is a Monday."""
    return date(2026, 5, day)


def binding(found: RestAnswer) -> set[str]:
    return {reason.rule for reason in found.why if reason.binds}


def week(*outs_by_day: tuple[int, int]) -> list[Thrown]:
    return [Thrown(may(day), outs=outs) for day, outs in outs_by_day]


MINORS, MAJORS = Thrower(level="minors"), Thrower(level="majors")


@pytest.mark.parametrize(
    ("outs", "days"),
    # One out is one inning begun; 6 outs two, 7 outs three, 12 four, 13 five.
    [(0, 0), (1, 0), (6, 0), (7, 1), (12, 1), (13, 3), (18, 3)],
)
def test_a_part_of_an_inning_counts_as_a_whole_one(outs: int, days: int) -> None:
    assert required(book("week-innings"), MAJORS, week((4, outs))).days == days


def test_innings_begun_can_be_more_than_the_outs_tell() -> None:
    one_out_in_each_of_three = [Thrown(may(4), outs=3, innings_begun=3)]

    assert required(book("week-innings"), MAJORS, one_out_in_each_of_three).days == 1


def test_a_week_starts_on_its_own_first_day() -> None:
    thrown = week((4, 12), (7, 6))  # 18 outs from Monday: three are left until Sunday

    sunday = answer(book("week-innings"), MAJORS, thrown, may(10))
    monday = answer(book("week-innings"), MAJORS, thrown, may(11))

    assert sunday.outs_allowed == 3
    assert monday.outs_allowed == 18  # six innings begun a day, and a fresh week


def test_a_full_week_waits_for_monday() -> None:
    thrown = week((4, 12), (7, 9))  # 21 outs; three innings on Thursday also owe Friday

    found = answer(book("week-innings"), MAJORS, thrown, may(9))

    assert (found.eligible, found.next_eligible) == (False, may(11))
    assert binding(found) == {"week-max"}


def test_the_band_chooses_the_daily_innings() -> None:
    assert answer(book("week-innings"), MINORS, [], may(4)).outs_allowed == 9


def test_a_book_of_innings_says_that_it_limits_no_pitches() -> None:
    found = answer(book("week-innings"), MINORS, [], may(4))

    assert found.eligible
    assert not found.pitches_limited
    assert "no-pitch-limit" in {reason.rule for reason in found.why}


def test_pitches_without_innings_are_uncounted_in_a_book_of_innings() -> None:
    found = answer(book("week-innings"), MAJORS, [Thrown(may(4), pitches=12)], may(5))

    assert found.rest[0].days == 3
    assert found.next_eligible == may(8)


def test_a_season_that_is_used_up_has_no_next_date() -> None:
    weeks = [Thrown(date(2026, 3, 2 + 7 * n), outs=18) for n in range(4)]
    full = [*weeks, Thrown(date(2026, 3, 31), outs=18)]

    found = answer(book("week-innings"), MAJORS, full, may(4))

    assert (found.eligible, found.next_eligible) == (False, None)
    assert {"season-max", "no-date"} <= {reason.rule for reason in found.why}


SUMS = Thrower(birth_date=date(2012, 4, 30))  # 14 on 30 April 2026


def pitched(*by_day: tuple[int, int]) -> list[Thrown]:
    return [Thrown(may(day), pitches=pitches) for day, pitches in by_day]


@pytest.mark.parametrize(
    ("thrown", "day", "allowed", "rule"),
    [
        ([], 4, 80, "daily-max"),
        # 30 yesterday: 70 in two days leave 40.
        ([(4, 30)], 5, 40, "two-day-max"),
        # 15 and 15: a third day, and 90 - 30 in three days, but 70 - 15 in two.
        ([(4, 15), (5, 15)], 6, 55, "two-day-max"),
        # 15 and 16 are 31: no third day in a row.
        ([(4, 15), (5, 16)], 6, 0, "third-day"),
        # 40 on Monday leave Wednesday 90 - 40 in three days.
        ([(4, 40)], 6, 50, "three-day-max"),
        # 70 on Monday owe two days; on Thursday at most 35, as Monday is three days back.
        ([(4, 70)], 7, 35, "after-a-long-one"),
        # Friday is four days after, Saturday five: 120 - 70 in seven days.
        ([(4, 70)], 8, 35, "after-a-long-one"),
        ([(4, 70)], 9, 50, "week-max"),
        ([(4, 70)], 11, 80, "daily-max"),
    ],
)
def test_sums_over_days(thrown: list[tuple[int, int]], day: int, allowed: int, rule: str) -> None:
    found = answer(book("day-sums"), SUMS, pitched(*thrown), may(day))

    assert found.pitches_allowed == allowed
    assert rule in binding(found)


@pytest.mark.parametrize(
    ("thrown", "days"),
    [
        ([(5, 30)], 0),
        ([(4, 20), (5, 30)], 0),  # 50 in two days
        ([(4, 21), (5, 30)], 2),  # 51 in two days
        ([(3, 21), (5, 30)], 0),  # not two days in a row
        ([(5, 55)], 1),  # one day alone goes by the daily table
        ([(4, 5), (5, 55)], 2),  # the stricter of one day and two
    ],
)
def test_rest_that_follows_from_a_sum(thrown: list[tuple[int, int]], days: int) -> None:
    assert required(book("day-sums"), SUMS, pitched(*thrown)).days == days


def test_the_cut_off_chooses_the_age() -> None:
    (sums,) = book("day-sums")

    assert sums.age_of(date(2012, 4, 30), may(4)) == 14
    assert sums.age_of(date(2012, 5, 1), may(4)) == 13


def in_game(day: int, game: int, pitches: int, **more: object) -> Thrown:
    return Thrown(may(day), pitches=pitches, game=game, **more)  # type: ignore[arg-type]


ANYONE = Thrower()


@pytest.mark.parametrize(
    ("first", "second"),
    [(20, 40), (25, 35), (26, 0)],  # 60 a day; after 26 no second game
)
def test_the_second_game_depends_on_the_first(first: int, second: int) -> None:
    found = answer(book("tournament"), ANYONE, [in_game(4, 1, first)], may(4), game=2)

    assert found.pitches_allowed == second


def test_the_same_game_goes_on_up_to_its_own_limit() -> None:
    found = answer(book("tournament"), ANYONE, [in_game(4, 1, 40)], may(4), game=1)

    assert found.pitches_allowed == 10


def test_playoffs_have_their_own_limit() -> None:
    thrown = [in_game(4, 1, 25)]

    found = answer(book("tournament"), ANYONE, thrown, may(4), phase="playoffs", game=2)

    assert found.pitches_allowed == 50  # 75 a day, 50 a game


def test_a_tournament_is_a_sum_of_its_own() -> None:
    spring = [in_game(1, 1, 45, tournament="spring"), in_game(3, 1, 30, tournament="spring")]

    assert (
        answer(book("tournament"), ANYONE, spring, may(4), tournament="spring").pitches_allowed
        == 15
    )
    assert (
        answer(book("tournament"), ANYONE, spring, may(4), tournament="summer").pitches_allowed
        == 50
    )
    # Nobody says which: the last four days count, 1 to 4 May.
    assert answer(book("tournament"), ANYONE, spring, may(4)).pitches_allowed == 15
    assert answer(book("tournament"), ANYONE, spring, may(5)).pitches_allowed == 50


def test_appearances_in_two_days() -> None:
    thrown = [in_game(4, 1, 5), in_game(4, 2, 5), in_game(5, 1, 5)]

    found = answer(book("tournament"), ANYONE, thrown, may(5), game=2)

    assert (found.eligible, binding(found)) == (False, {"appearances"})


@pytest.mark.parametrize(
    ("caught", "day", "allowed"),
    [(2, 4, 50), (3, 4, 0), (5, 5, 50), (6, 5, 20), (6, 6, 50)],
)
def test_catching_bars_pitching_today_and_limits_it_tomorrow(
    caught: int, day: int, allowed: int
) -> None:
    thrown = [Thrown(may(4), pitches=0, caught_innings=caught)]

    assert answer(book("tournament"), ANYONE, thrown, may(day)).pitches_allowed == allowed


@pytest.mark.parametrize(("pitches", "may_catch"), [(30, True), (31, False)])
def test_pitching_bars_catching(pitches: int, may_catch: bool) -> None:
    found = answer(book("tournament"), ANYONE, [in_game(4, 1, pitches)], may(4))

    assert found.may_catch is may_catch


def test_an_announced_walk_counts_its_pitches() -> None:
    walked = [in_game(4, 1, 20, intentional_walks=2)]

    assert answer(book("tournament"), ANYONE, walked, may(4), game=1).pitches_allowed == 22


def test_a_game_after_midnight_belongs_to_the_day_before() -> None:
    late = [Thrown(may(5), pitches=20, game=1, at=time(0, 40))]

    assert answer(book("tournament"), ANYONE, late, may(4), game=2).pitches_allowed == 40
    assert answer(book("tournament"), ANYONE, late, may(5), game=2).pitches_allowed == 50


def test_a_scrimmage_counts_only_where_the_book_says_so() -> None:
    thrown = [Thrown(may(4), pitches=45, kind="scrimmage")]

    assert answer(book("tournament"), ANYONE, thrown, may(4)).pitches_allowed == 50


@pytest.mark.parametrize(
    ("thrown", "days"),
    [
        ([(4, 40)], 0),
        ([(4, 40), (5, 30)], 2),  # 70 in a run of two
        ([(3, 30), (4, 20), (5, 20)], 2),  # 70 in a run of three
        ([(3, 30), (5, 45)], 0),  # a day off ends the run
    ],
)
def test_days_in_a_row_are_one_run(thrown: list[tuple[int, int]], days: int) -> None:
    assert required(book("tournament"), ANYONE, pitched(*thrown)).days == days


def test_practice_has_limits_of_its_own() -> None:
    practised = [Thrown(may(4), "bullpen", pitches=25), Thrown(may(4), pitches=10, game=1)]

    bullpen = answer(book("tournament"), ANYONE, practised, may(4), kind="live")
    game = answer(book("tournament"), ANYONE, practised, may(4), game=2)

    assert bullpen.pitches_allowed == 15
    assert game.pitches_allowed == 50


def test_days_of_practice_are_counted_apart() -> None:
    practised = [Thrown(may(day), "bullpen", pitches=5) for day in (1, 3)]

    found = answer(book("tournament"), ANYONE, practised, may(4), kind="bullpen")

    assert (found.eligible, found.next_eligible) == (False, may(8))
    assert answer(book("tournament"), ANYONE, practised, may(4)).eligible


@pytest.mark.parametrize(("bullpen", "allowed"), [(34, 50), (35, 30)])
def test_a_long_bullpen_can_limit_the_next_game(bullpen: int, allowed: int) -> None:
    practised = [Thrown(may(3), "bullpen", pitches=bullpen)]

    assert answer(book("tournament"), ANYONE, practised, may(4)).pitches_allowed == allowed
