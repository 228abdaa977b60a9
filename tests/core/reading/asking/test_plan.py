"""A weekend plan: games by day, hour and expected pitches; after a win; guests."""

from datetime import date, datetime, time

import pytest

from core.reading.asking import Asked, PlannedGame, Topic, ask

WEDNESDAY = datetime.fromisoformat("2026-05-06T18:30")
SAT, SUN = date(2026, 5, 9), date(2026, 5, 10)


def plan(text: str) -> Asked:
    found = ask(text, WEDNESDAY, roster=("Mateo Rivas", "Owen Tarrant"))
    assert found is not None, text
    assert found.topic is Topic.PLAN
    return found


def test_a_game_without_a_day_is_on_the_day_of_the_one_before() -> None:
    found = plan("plan sat 9am 80 and 2pm 70")

    assert found.games == (
        PlannedGame(SAT, time(9), pitches=80),
        PlannedGame(SAT, time(14), pitches=70),
    )


@pytest.mark.parametrize(
    "text",
    [
        "plan sat 9am 80, sun 10am 90 if we win",
        "plan sat 9am 80, if we win sun 10am 90",
        "plan sat 9am 80, sun 10am 90, if we win",
        "plan sat 9am 80\nsun 10am 90 if we win",
    ],
)
def test_after_a_win_belongs_to_the_game_it_stands_beside(text: str) -> None:
    assert [game.only_after_win for game in plan(text).games] == [False, True]


def test_after_a_win_between_two_games_is_asked_about() -> None:
    assert plan("plan sat 9am 80 if we win sat 3pm 70").unclear == ("if we win",)


def test_a_game_after_a_loss_is_asked_about() -> None:
    assert plan("plan sat 9am 80, if we lose sun 8am 70").unclear == ("if we lose",)


@pytest.mark.parametrize(
    ("typed", "hour"), [("9", 9), ("9am", 9), ("9:00", 9), ("2", 14), ("1p", 13), ("noon", 12)]
)
def test_an_hour_without_am_or_pm_is_by_daylight(typed: str, hour: int) -> None:
    assert plan(f"plan sat {typed} 80").games == (PlannedGame(SAT, time(hour), pitches=80),)


def test_pitches_or_innings_can_be_expected() -> None:
    assert plan("plan sat 9am 6 innings").games == (PlannedGame(SAT, time(9), innings=6),)


def test_a_count_for_each_is_every_games() -> None:
    found = plan("plan sat 2 games 75 each, sun 10am")

    assert [(game.on, game.pitches) for game in found.games] == [(SAT, 75), (SAT, 75), (SUN, 75)]


def test_guests_come_in_and_those_left_out_stay_out() -> None:
    found = plan("plan sat 9am 80 without Owen, plus guests Nico and Sam")

    assert (found.guests, found.without) == (("Nico", "Sam"), ("Owen",))


@pytest.mark.parametrize(
    ("text", "unclear"), [("plan sat 9am 8", "8"), ("plan sat 9am 80-90", "80-90")]
)
def test_a_number_that_is_no_count_of_a_game_is_asked_about(text: str, unclear: str) -> None:
    assert plan(text).unclear == (unclear,)


def test_a_day_that_could_be_two_is_asked_about_and_the_game_is_not_made_up() -> None:
    found = plan("plan next sat 9am 80")

    assert (found.games, found.unclear) == ((), ("next sat",))


@pytest.mark.parametrize(
    "text", ["plan is to meet at 8 sat", "plan on 80 sat", "what's the plan for sat"]
)
def test_other_plans_are_no_question(text: str) -> None:
    assert ask(text, WEDNESDAY) is None


def test_a_count_after_a_comma_is_the_one_of_the_game_before_it() -> None:
    assert plan("plan sat 9am, 80").games == (PlannedGame(SAT, time(9), pitches=80),)


def test_a_game_may_have_pitches_and_innings() -> None:
    found = plan("plan sat 10am 85 pitches 7 innings")

    assert found.games == (PlannedGame(SAT, time(10), pitches=85, innings=7),)
