"""Days in a row, several games in a day, catching beside pitching, two teams."""

from datetime import date, timedelta

import pytest

from core.alerts import Crossing, Key, Limits, Pitched, Record, crossings
from core.alerts.thresholds import DEFAULTS

TODAY = date(2026, 5, 30)


def ago(days: int) -> date:
    return TODAY - timedelta(days=days)


def pitched(days_ago: int, kind: str | None = "game", **more: int | None) -> Pitched:
    """An outing; its number tells the day, and the kind where there are several."""
    number = more.pop("number", None) or 100 + days_ago
    return Pitched(number, ago(days_ago), kind, 20, **more)


def found(key: Key, *outings: Pitched, limits: Limits = DEFAULTS) -> list[Crossing]:
    record = Record(tuple(sorted(outings, key=lambda one: one.on)))
    return [one for one in crossings(record, limits, TODAY) if one.key is key]


@pytest.mark.parametrize(
    ("days", "kinds", "runs"),
    [
        ([1, 2, 3], ["game", "game", "game"], 1),
        ([1, 2, 3], ["game", "bullpen", "live"], 1),
        ([1, 2, 3], ["game", None, "game"], 1),
        ([1, 2, 3], ["game", "catch", "game"], 0),
        ([1, 2, 4], ["game", "game", "game"], 0),
        ([1, 2, 3, 4, 6, 7, 8], ["game"] * 7, 2),
    ],
)
def test_a_third_day_in_a_row_is_told_once_for_its_run(
    days: list[int], kinds: list[str | None], runs: int
) -> None:
    outings = [pitched(day, kind) for day, kind in zip(days, kinds, strict=True)]

    assert len(found(Key.DAYS_IN_ROW, *outings)) == runs


def test_a_run_that_grows_is_the_same_alert_with_a_new_figure() -> None:
    three = found(Key.DAYS_IN_ROW, pitched(3), pitched(2), pitched(1))
    four = found(Key.DAYS_IN_ROW, pitched(3), pitched(2), pitched(1), pitched(0))

    assert [one.episode for one in three] == [one.episode for one in four]
    assert [one.found.value for one in (*three, *four)] == [3, 4]
    assert four[0].found.outings == (103, 102, 101, 100)


def test_a_day_behind_the_plate_breaks_a_run_of_days_on_the_mound() -> None:
    caught = Pitched(1, ago(2), "game", caught_outs=9)

    assert found(Key.DAYS_IN_ROW, pitched(3), caught, pitched(1)) == []


def test_two_games_as_pitcher_on_one_day() -> None:
    (one,) = found(Key.GAMES_A_DAY, pitched(1), pitched(1, number=7))

    assert one.episode == f"day/{ago(1)}"
    assert found(Key.GAMES_A_DAY, pitched(1), pitched(1, "bullpen", number=7)) == []
    assert found(Key.GAMES_A_DAY, pitched(1), pitched(2)) == []


@pytest.mark.parametrize(
    ("outings", "told"),
    [
        ([pitched(1, caught_outs=6)], True),
        ([pitched(1), Pitched(7, ago(1), "game", caught_outs=6)], True),
        ([pitched(1, "bullpen"), Pitched(7, ago(1), "game", caught_outs=6)], False),
        ([pitched(1), Pitched(7, ago(2), "game", caught_outs=6)], False),
        ([pitched(1, caught_outs=0)], False),
    ],
)
def test_pitcher_and_catcher_on_one_day(outings: list[Pitched], told: bool) -> None:
    assert bool(found(Key.CATCHING, *outings)) is told


@pytest.mark.parametrize(
    ("days", "teams", "told"),
    [
        ((1, 1), (1, 2), True),
        ((2, 1), (1, 2), True),
        ((3, 1), (1, 2), False),  # a day between them: their days do not clash
        ((2, 1), (1, 1), False),
        ((2, 1), (1, None), False),
    ],
)
def test_games_for_two_teams_are_told_only_where_their_days_clash(
    days: tuple[int, int], teams: tuple[int, int | None], told: bool
) -> None:
    outings = [
        pitched(day, number=n, team=team)
        for n, (day, team) in enumerate(zip(days, teams, strict=True), 1)
    ]

    assert bool(found(Key.TWO_TEAMS, *outings)) is told


def test_whoever_plays_for_two_teams_weeks_apart_hears_nothing() -> None:
    assert found(Key.TWO_TEAMS, pitched(20, team=1), pitched(9, team=2), pitched(2, team=1)) == []


def test_what_lies_a_month_back_is_old() -> None:
    (one,) = found(Key.GAMES_A_DAY, pitched(30), pitched(30, number=7))

    assert one.old


@pytest.mark.parametrize("key", [Key.DAYS_IN_ROW, Key.GAMES_A_DAY, Key.CATCHING, Key.TWO_TEAMS])
def test_each_can_be_switched_off(key: Key) -> None:
    outings = [
        pitched(3, team=1), pitched(2, team=2, caught_outs=9), pitched(1, team=1),
        pitched(1, team=1, number=7),
    ]  # fmt: skip

    assert found(key, *outings)
    assert found(key, *outings, limits={**DEFAULTS, key: None}) == []
