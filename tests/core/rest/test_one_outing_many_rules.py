"""Where several rules of one book look at the same day, none hides another; numbers by hand."""

from datetime import date, time

import pytest

from core.rest import Thrower, Thrown, answer, breaches
from core.rulebooks import RuleBook, parse_book

HEAD = """
format = 1
id = "invented"
title = "Invented"
publisher = "nobody: invented for tests"
edition = "test"
valid_from = 2026-01-01
source = "https://league.example/invented"
certainty = "invented"

[counting]
intentional_walk = 4
day_begins = "04:00"

[[band]]
name = "everyone"
"""
SATURDAY, SUNDAY, MONDAY, WEDNESDAY = (date(2026, 5, day) for day in (2, 3, 4, 6))
ANYONE = Thrower()


def book(*rules: str) -> tuple[RuleBook, ...]:
    typed = "".join(f'\n[[rule]]\nname = "r{n}"\ncite = "x"\n{r}' for n, r in enumerate(rules))
    return (parse_book(HEAD + typed, "invented.toml"),)


GAME_REST = """
verb = "rest"
unit = "pitches"
window = "day"
rows = [{ from = 1, to = 35, days = 0 }, { from = 36, days = 1 }]
"""
BULLPEN_REST = """
verb = "rest"
unit = "pitches"
window = "day"
kinds = ["bullpen"]
rows = [{ from = 1, to = 20, days = 0 }, { from = 21, days = 3 }]
"""


@pytest.mark.parametrize(("kind", "free"), [("game", MONDAY), ("bullpen", WEDNESDAY)])
def test_a_longer_rest_from_bullpens_does_not_hide_the_rest_that_a_game_owes(
    kind: str, free: date
) -> None:
    thrown = [Thrown(SATURDAY, pitches=40), Thrown(SATURDAY, "bullpen", pitches=30)]

    found = answer(book(GAME_REST, BULLPEN_REST), ANYONE, thrown, SUNDAY, kind=kind)

    assert (found.eligible, found.next_eligible) == (False, free)


def test_the_rest_that_is_listed_is_that_of_the_kind_asked_about() -> None:
    thrown = [Thrown(SATURDAY, pitches=40), Thrown(SATURDAY, "bullpen", pitches=30)]

    found = answer(book(GAME_REST, BULLPEN_REST), ANYONE, thrown, MONDAY)

    assert (found.eligible, [owed.days for owed in found.rest]) == (True, [1])


DAY_MAX = 'verb = "cap"\nunit = "pitches"\nwindow = "day"\nmax = 105\n'
AFTER_A_LONG_ONE = """
verb = "cap"
unit = "pitches"
window = "game"
max = 60
when = [{ unit = "pitches", window = { last = "outing", within = 5 }, at_least = 76 }]
"""


@pytest.mark.parametrize(("game", "allowed"), [(1, 25), (2, 25), (None, 25)])
def test_an_outing_that_goes_on_is_not_its_own_last_outing(game: int | None, allowed: int) -> None:
    thrown = [Thrown(SATURDAY, pitches=80, game=1)]

    found = answer(book(DAY_MAX, AFTER_A_LONG_ONE), ANYONE, thrown, SATURDAY, game=game)

    assert found.pitches_allowed == allowed


THREE_INNINGS = 'verb = "cap"\nunit = "innings-begun"\nwindow = "day"\nmax = 3\n'


@pytest.mark.parametrize(("begun", "over"), [(3, False), (4, True)])
def test_one_pitch_in_a_fourth_inning_goes_over_a_maximum_of_three(begun: int, over: bool) -> None:
    outing = Thrown(SATURDAY, outs=9, innings_begun=begun)

    assert bool(breaches(book(THREE_INNINGS), ANYONE, [outing], SATURDAY)) is over


@pytest.mark.parametrize(("walks", "over"), [(1, False), (2, True)])
def test_announced_walks_can_go_over_a_maximum(walks: int, over: bool) -> None:
    outing = Thrown(SATURDAY, pitches=99, intentional_walks=walks)  # 103 and 107 of 105

    assert bool(breaches(book(DAY_MAX), ANYONE, [outing], SATURDAY)) is over


ADVISED = 'verb = "cap"\nunit = "pitches"\nwindow = "day"\nmax = 80\nadvice = true\n'


def test_a_maximum_may_stand_beside_an_advised_one() -> None:
    thrown = [Thrown(SATURDAY, pitches=80, game=1)]

    found = answer(book(DAY_MAX, ADVISED), ANYONE, thrown, SATURDAY, game=2)

    assert found.pitches_allowed == 25
    assert [reason.rule for reason in found.why if not reason.binds] == ["r1"]


def test_a_game_past_midnight_is_held_against_the_limit_of_the_day_before() -> None:
    thrown = [Thrown(SATURDAY, pitches=80, game=1), Thrown(SUNDAY, pitches=25, at=time(0, 30))]
    over = [thrown[0], Thrown(SUNDAY, pitches=26, at=time(0, 30))]
    books = book(DAY_MAX, GAME_REST)

    assert breaches(books, ANYONE, thrown, SUNDAY) == ()
    assert [reason.rule for reason in breaches(books, ANYONE, over, SUNDAY)] == ["r0"]
