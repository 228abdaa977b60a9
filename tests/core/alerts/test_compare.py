from core.alerts import Crossing, Key, Known, compare
from core.alerts.found import Found

FOUND = Found(29.0, 20)
MIX = Crossing(Key.MIX, "2026-05-02", FOUND)
GAME = Crossing(Key.GAME_BREAKING, "outing/7", FOUND)


def test_what_is_not_known_is_raised() -> None:
    assert compare([], [MIX, GAME]).raised == (MIX, GAME)


def test_what_stands_already_is_not_raised_again() -> None:
    changes = compare([Known(1, Key.MIX, "2026-05-02", stands=True)], [MIX])

    assert (changes.raised, changes.standing, changes.gone) == ((), ((1, MIX),), ())


def test_a_window_whose_run_begins_on_another_day_is_the_same_alert() -> None:
    changes = compare([Known(1, Key.MIX, "2026-04-25", stands=True)], [MIX])

    assert changes.standing == ((1, MIX),)


def test_what_is_gone_is_closed_and_what_was_closed_is_left_alone() -> None:
    known = [
        Known(1, Key.MIX, "2026-05-02", stands=True),
        Known(2, Key.MIX, "2026-04-02", stands=False),
    ]

    assert compare(known, []).gone == (1,)


def test_the_same_episode_comes_back_as_the_same_alert() -> None:
    changes = compare([Known(1, Key.MIX, "2026-05-02", stands=False)], [MIX])

    assert (changes.raised, changes.standing) == ((), ((1, MIX),))


def test_a_new_run_after_a_return_is_a_new_alert() -> None:
    assert compare([Known(1, Key.MIX, "2026-04-02", stands=False)], [MIX]).raised == (MIX,)


def test_each_outing_has_an_alert_of_its_own() -> None:
    changes = compare([Known(1, Key.GAME_BREAKING, "outing/6", stands=True)], [GAME])

    assert (changes.raised, changes.gone) == ((GAME,), (1,))


def test_what_is_old_is_not_raised_any_more_and_stays_where_it_is_known() -> None:
    old = Crossing(Key.GAME_BREAKING, "outing/7", FOUND, old=True)

    assert compare([], [old]).raised == ()
    assert compare([Known(1, Key.GAME_BREAKING, "outing/7", stands=True)], [old]).gone == ()


def test_a_run_of_days_whose_first_day_is_logged_last_is_the_same_alert() -> None:
    run = Crossing(Key.DAYS_IN_ROW, "run/2026-05-01", Found(4, 3))

    known = Known(1, Key.DAYS_IN_ROW, "run/2026-05-02", stands=True)
    earlier = Known(1, Key.DAYS_IN_ROW, "run/2026-04-27", stands=True)

    assert compare([known], [run]).standing == ((1, run),)
    assert compare([earlier], [run]).raised == (run,)
