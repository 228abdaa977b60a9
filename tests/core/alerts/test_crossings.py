from datetime import date, timedelta

import pytest

from core.alerts import Crossing, Felt, Key, Limits, Pitched, Record, YearCap, crossings
from core.alerts.thresholds import DEFAULTS

TODAY = date(2026, 5, 30)


def ago(days: int) -> date:
    return TODAY - timedelta(days=days)


def game(number: int, days_ago: int, pitches: int, breaking: int) -> Pitched:
    return Pitched(number, ago(days_ago), "game", pitches, breaking)


def keys(record: Record, limits: Limits = DEFAULTS, on: date = TODAY) -> list[Key]:
    return [one.key for one in crossings(record, limits, on)]


def of(record: Record, key: Key, limits: Limits = DEFAULTS) -> Crossing:
    return next(one for one in crossings(record, limits, TODAY) if one.key is key)


@pytest.mark.parametrize(("breaking", "stands"), [(12, False), (13, True)])
def test_the_mix_stands_when_it_is_over_the_line_and_not_when_it_is_at_it(
    breaking: int, stands: bool
) -> None:
    assert (Key.MIX in keys(Record((game(1, 1, 60, breaking),)))) is stands


def test_the_mix_waits_for_sixty_typed_pitches() -> None:
    assert keys(Record((game(1, 1, 59, 15),))) == []


def test_the_mix_is_that_of_the_last_three_games() -> None:
    games = (game(1, 20, 60, 40), *(game(n, 10 - n, 60, 6) for n in (2, 3, 4)))

    assert Key.MIX not in keys(Record(games))


def test_a_crossing_names_its_figures_its_outings_and_the_day_it_began() -> None:
    record = Record((game(1, 9, 60, 6), game(2, 5, 40, 15), game(3, 1, 40, 12)))

    found = of(record, Key.MIX)

    assert found.episode == ago(5).isoformat()
    assert found.found.figures == {"of": 33, "typed": 140, "games": 3}
    assert found.found.outings == (1, 2, 3)


def test_pitches_whose_type_nobody_counted_take_no_part_in_the_mix() -> None:
    untyped = Pitched(2, ago(1), "game", 80, None)

    assert keys(Record((game(1, 3, 60, 13), untyped))) == [Key.MIX]


@pytest.mark.parametrize(
    ("pitches", "breaking", "stands"),
    [
        (80, 16, False),
        (80, 17, True),
        (100, 20, False),  # 0.20 of 100 allows twenty
        (100, 21, True),
        (130, 25, True),  # urgent whatever the share
        (19, 19, True),  # more than sixteen, and all of them
        (19, 12, False),  # under 20 pitches the share says nothing
        (24, 12, True),  # half of 20 pitches or more
        (None, 17, True),
        (None, 16, False),
    ],
)
def test_breaking_balls_in_one_game(pitches: int | None, breaking: int, stands: bool) -> None:
    record = Record((Pitched(1, ago(1), "game", pitches, breaking),))

    assert (Key.GAME_BREAKING in keys(record)) is stands


def test_forty_and_half_alert_though_everything_is_off() -> None:
    off: Limits = dict.fromkeys(Key)

    assert keys(Record((game(1, 1, 120, 40),)), off) == [Key.GAME_BREAKING]
    assert keys(Record((game(1, 1, 30, 15),)), off) == [Key.GAME_BREAKING]
    assert keys(Record((game(1, 1, 120, 39),)), off) == []


def test_bullpens_are_no_games() -> None:
    assert keys(Record((Pitched(1, ago(1), "bullpen", 60, 30),))) == []


def test_the_low_share_is_off_until_the_coach_switches_it_on() -> None:
    record = Record((game(1, 1, 80, 4),))

    assert keys(record) == []
    assert keys(record, {**DEFAULTS, Key.LOW_MIX: 8}) == [Key.LOW_MIX]


def test_few_changeups_are_told_only_where_they_were_counted() -> None:
    few = Pitched(1, ago(1), "game", 60, 6, changeup=4)
    enough = Pitched(1, ago(1), "game", 60, 6, changeup=5)

    assert keys(Record((few,))) == [Key.CHANGEUP]
    assert keys(Record((enough,))) == []
    assert keys(Record((game(1, 1, 60, 6),))) == []


@pytest.mark.parametrize("hurts", [True, False])
def test_two_days_with_a_report_within_14_days(hurts: bool) -> None:
    key = Key.PAIN_REPORTS if hurts else Key.TIRED_REPORTS

    assert keys(Record(felt=(Felt(ago(13), hurts), Felt(TODAY, hurts)))) == [key]
    assert keys(Record(felt=(Felt(ago(14), hurts), Felt(TODAY, hurts)))) == []
    assert keys(Record(felt=(Felt(TODAY, hurts), Felt(TODAY, hurts)))) == []


def test_pitches_of_seven_days_are_told_once_the_coach_names_a_number() -> None:
    record = Record((game(1, 6, 60, 0), Pitched(2, ago(1), "bullpen", 41)))

    assert keys(record) == []
    assert keys(record, {**DEFAULTS, Key.WEEK_PITCHES: 100}) == [Key.WEEK_PITCHES]
    assert keys(record, {**DEFAULTS, Key.WEEK_PITCHES: 101}) == []


def month(week: int) -> tuple[Pitched, ...]:
    """Ten throws a day for three weeks, then `week` a day."""
    return tuple(Pitched(n, ago(n), "catch", week if n < 7 else 10) for n in range(28))


def test_more_throws_than_usual_are_told_and_not_in_build_up() -> None:
    assert keys(Record(month(20))) == [Key.MORE_THROWS]
    assert keys(Record(month(18))) == []
    assert keys(Record(month(20), build_ups=((ago(40), TODAY),))) == []


def test_spin_reps_of_one_session_and_their_effort() -> None:
    many = Pitched(1, ago(1), "catch", 40, 21, effort=50)
    hard = Pitched(2, ago(1), "catch", 40, 10, effort=70)

    assert keys(Record((many,))) == [Key.SPIN_REPS]
    assert keys(Record((hard,))) == [Key.SPIN_EFFORT]


def test_days_without_a_line_count_in_season_alone() -> None:
    last = (Pitched(1, ago(7), "catch", 30),)
    season = ((ago(30), TODAY),)

    assert keys(Record(last, seasons=season, begins=ago(7))) == [Key.SILENT_DAYS]
    assert keys(Record(last, begins=ago(7))) == []
    assert keys(Record((Pitched(1, ago(6), "off"),), seasons=season, begins=ago(6))) == []


def test_nobody_was_silent_before_the_teams_record_began() -> None:
    season = ((ago(30), TODAY),)

    assert keys(Record(seasons=season)) == []
    assert keys(Record(seasons=season, begins=ago(5))) == []
    assert keys(Record(seasons=season, begins=ago(6))) == [Key.SILENT_DAYS]


def test_games_in_nine_of_twelve_months() -> None:
    games = tuple(Pitched(n, date(2025, 9, 1) + timedelta(days=31 * n), "game") for n in range(9))

    assert keys(Record(games)) == [Key.MONTHS]
    assert keys(Record(games[1:])) == []


def innings(outs: int, *more: Pitched) -> Record:
    """A game of twelve months ago less a day, and one of today, with so many outs in all."""
    first = Pitched(1, date(2025, 5, 31), "game", outs=outs - 9)
    last = Pitched(2, TODAY, "game", outs=9)
    return Record((first, *more, last), year_cap=YearCap(300, "Pitch Smart"))


@pytest.mark.parametrize(
    ("outs", "told"),
    [
        (239, []),
        (240, [Key.INNINGS]),  # 80 innings of 100
        (299, [Key.INNINGS]),
        (300, [Key.INNINGS, Key.ALL_INNINGS]),
    ],
)
def test_innings_of_twelve_months_near_the_cap_and_at_it(outs: int, told: list[Key]) -> None:
    assert keys(innings(outs)) == told


def test_innings_of_a_year_ago_are_past_and_uncounted_ones_are_told_apart() -> None:
    past = Pitched(3, date(2025, 5, 30), "game", outs=27)
    uncounted = Pitched(4, ago(3), "game", pitches=40)

    found = of(innings(240, past, uncounted), Key.INNINGS).found

    assert found.figures == {"outs": 240, "cap": 300, "uncounted": 1}
    assert found.as_json()["source"] == "Pitch Smart"


def test_without_a_book_that_caps_innings_nothing_is_said_of_them() -> None:
    assert keys(Record((Pitched(1, TODAY, "game", outs=900),))) == []


def test_spin_reps_of_the_last_full_week_under_the_plan() -> None:
    # 30 May 2026 is a Saturday; the last full week is Mon 18 to Sun 24 May.
    limits = {**DEFAULTS, Key.SPIN_WEEK: 36}
    week = tuple(Pitched(n, date(2026, 5, 18 + 2 * n), "catch", 30, 12) for n in range(3))
    later = Pitched(9, date(2026, 5, 26), "catch", 30, 12)

    assert Key.SPIN_WEEK not in keys(Record(week), limits)
    assert Key.SPIN_WEEK in keys(Record((*week[:2], later)), limits)
    assert Key.SPIN_WEEK not in keys(Record((later,)), limits)  # nothing logged: unknown
    assert Key.SPIN_WEEK not in keys(Record(week[:2]))  # off until the coach switches it on


def test_a_game_of_long_ago_stays_what_it_was() -> None:
    (one,) = crossings(Record((game(1, 45, 80, 20),)), DEFAULTS, TODAY)

    assert (one.key, one.old) == (Key.GAME_BREAKING, True)
