from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.mix import Game, Mix, Window, mix_of, windows

SATURDAY = date(2026, 5, 2)


def test_share_is_breaking_balls_over_typed_pitches() -> None:
    mix = mix_of([Game(SATURDAY, pitches=62, breaking=11, curve=11)])

    assert mix == Mix(breaking=11, typed=62, curve=11, slider=0, untyped=0, games=1)
    assert mix.share == pytest.approx(11 / 62)


def test_pitches_without_types_are_reported_apart() -> None:
    typed = Game(SATURDAY, pitches=60, breaking=9)
    untyped = Game(SATURDAY, pitches=40)

    mix = mix_of([typed, untyped])

    assert (mix.breaking, mix.typed, mix.untyped) == (9, 60, 40)


def test_breaking_balls_of_an_uncounted_game_make_no_share() -> None:
    mix = mix_of([Game(SATURDAY, breaking=9)])

    assert mix.share is None


def test_a_normal_three_pitch_mix_is_fifteen_percent_breaking_balls() -> None:
    # About 70/15/15 in a three-pitch mix: common practice, no source.
    mix = mix_of([Game(SATURDAY, pitches=80, breaking=12)])

    assert mix.share == pytest.approx(0.15)


@pytest.mark.parametrize(
    ("days_ago", "inside"),
    [
        (0, {Window.WEEK, Window.MONTH, Window.SEASON}),
        (6, {Window.WEEK, Window.MONTH, Window.SEASON}),
        (7, {Window.MONTH, Window.SEASON}),
        (27, {Window.MONTH, Window.SEASON}),
        (28, {Window.SEASON}),
        (62, {Window.SEASON}),
        (63, set()),
    ],
)
def test_windows_hold_their_days_and_no_others(days_ago: int, inside: set[Window]) -> None:
    game = Game(SATURDAY - timedelta(days=days_ago), pitches=50, breaking=5)

    found = windows([game], SATURDAY, season_start=date(2026, 3, 1))

    assert {window for window, mix in found.items() if mix.games} == inside


def test_a_later_game_is_in_no_window() -> None:
    game = Game(SATURDAY + timedelta(days=1), pitches=50, breaking=5)

    assert all(mix.games == 0 for mix in windows([game], SATURDAY).values())


def test_the_season_begins_with_the_year_where_no_day_is_set() -> None:
    winter = Game(date(2026, 1, 1), pitches=50, breaking=5)
    autumn = Game(date(2025, 12, 31), pitches=50, breaking=5)

    assert windows([winter, autumn], SATURDAY)[Window.SEASON].typed == 50


COUNTS = st.integers(0, 120).flatmap(
    lambda n: st.builds(
        Game,
        on=st.dates(date(2026, 3, 1), SATURDAY),
        pitches=st.none() | st.just(n),
        breaking=st.none() | st.integers(0, n),
    )
)


@given(st.lists(COUNTS, max_size=12))
def test_no_pitch_is_counted_twice_or_lost(games: list[Game]) -> None:
    mix = mix_of(games)

    assert mix.typed + mix.untyped == sum(game.pitches or 0 for game in games)
    assert 0 <= mix.breaking <= mix.typed
