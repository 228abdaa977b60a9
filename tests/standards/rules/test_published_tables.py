"""Every number of the built-in books, typed from its publication, over all counts and ages.

Pitch Smart: https://www.mlb.com/pitch-smart/pitching-guidelines and the 2017 announcement,
https://usabaseball.com/news/mlb-usa-baseball-announce-updates-to-pitch-smart-program-251090688;
2014 edition: http://m.mlb.com/pitchsmart/pitching-guidelines/.
Regulation VI: member leagues' pitching pages, https://www.mclittleleague.org/rules/pitch-count
and https://www.missoulalittleleague.org/Default.aspx?tabid=2119399.
MSHSL: http://www.inforum.com/sports/4171349-mshsl-implements-pitch-count-2017-baseball-season.
MSHSAA: https://www.missourinet.com/2016/12/08/mshsaa-sets-new-pitch-count-standards-for-high-school-ball-players-rules-start-in-2017/
and the association's baseball news of 10 February 2020.
"""

from dataclasses import dataclass
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.rest import Thrower, Thrown, answer, required
from core.rulebooks import load_books

DAY = date(2026, 5, 4)


@dataclass(frozen=True)
class Published:
    """The last count of 0, 1, 2 ... days, then the daily maximum; more than all owes `top`."""

    book: str
    throwers: tuple[Thrower, ...]
    ends: tuple[int, ...]
    top: int
    daily: int
    phase: str = "regular"

    def days(self, pitches: int) -> int:
        return next((days for days, end in enumerate(self.ends) if pitches <= end), self.top)


def ages(*years: int) -> tuple[Thrower, ...]:
    return tuple(Thrower(age=year) for year in years)


def grades(*years: int) -> tuple[Thrower, ...]:
    return tuple(Thrower(grade=year) for year in years)


YOUNG = (20, 35, 50, 65)
OLDER = (30, 45, 60, 75)
VARSITY = (Thrower(level="varsity"),)
JUNIOR = (Thrower(level="junior-varsity"),)

TABLES = [
    Published("pitch-smart", ages(7, 8), (20, 35, 50), 2, 50),
    Published("pitch-smart", ages(9, 10), YOUNG, 4, 75),
    Published("pitch-smart", ages(11, 12), YOUNG, 4, 85),
    Published("pitch-smart", ages(13, 14), YOUNG, 4, 95),
    Published("pitch-smart", ages(15, 16), OLDER, 4, 95),
    Published("pitch-smart", ages(17, 18), (30, 45, 60, 80), 4, 105),
    # 19-22: the rows below three days and 120 were seen in the 2014 table only (inference).
    Published("pitch-smart", ages(19, 20, 21, 22), (30, 45, 60, 80, 105), 5, 120),
    Published("pitch-smart-2014", ages(7, 8), (20, 35, 50), 2, 50),
    Published("pitch-smart-2014", ages(9, 10), YOUNG, 4, 75),
    Published("pitch-smart-2014", ages(11, 12), YOUNG, 4, 85),
    Published("pitch-smart-2014", ages(13, 14), YOUNG, 4, 95),
    Published("pitch-smart-2014", ages(15, 16), OLDER, 4, 95),
    Published("pitch-smart-2014", ages(17, 18), OLDER, 4, 105),
    Published("pitch-smart-2014", ages(19, 20, 21, 22), OLDER, 4, 120),
    Published("little-league", ages(7, 8), (20, 35, 50), 2, 50),
    Published("little-league", ages(9, 10), YOUNG, 4, 75),
    Published("little-league", ages(11, 12), YOUNG, 4, 85),
    Published("little-league", ages(13, 14), YOUNG, 4, 95),
    Published("little-league", ages(15, 16), OLDER, 4, 95),
    Published("minnesota-high-school", VARSITY, (30, 50, 75), 3, 105),
    Published("minnesota-high-school", VARSITY, (30, 50, 75), 3, 115, "playoffs"),
    Published("minnesota-high-school", JUNIOR, (25, 35, 60), 3, 85),
    # Below varsity no playoff limit is published; the regular one is kept (inference).
    Published("minnesota-high-school", JUNIOR, (25, 35, 60), 3, 85, "playoffs"),
    Published("missouri-high-school", grades(7, 8), YOUNG, 4, 85),
    Published("missouri-high-school", grades(9, 10), OLDER, 4, 95),
    Published("missouri-high-school", grades(11, 12), OLDER, 4, 105),
]
NAMES = [f"{t.book}-{t.daily}-{n}" for n, t in enumerate(TABLES)]


@pytest.mark.parametrize("table", TABLES, ids=NAMES)
def test_every_count_owes_the_published_days(table: Published) -> None:
    books = load_books([table.book])

    for thrower in table.throwers:
        for pitches in range(1, table.daily + 25):
            outings = [Thrown(DAY, pitches=pitches)]
            owed = required(books, thrower, outings, phase=table.phase)
            assert owed.days == table.days(pitches), (thrower, pitches)


@pytest.mark.parametrize("table", TABLES, ids=NAMES)
def test_a_rested_arm_may_throw_the_published_maximum(table: Published) -> None:
    books = load_books([table.book])

    for thrower in table.throwers:
        found = answer(books, thrower, [], DAY, phase=table.phase)
        assert found.pitches_allowed == table.daily


@dataclass(frozen=True)
class Week:
    """Some days' pitches, and the published rules worked on them a second time."""

    table: Published
    thrown: dict[int, int]

    def allowed(self, day: int) -> int:
        resting = any(d < day <= d + self.table.days(n) for d, n in self.thrown.items())
        third_day = {day - 1, day - 2} <= set(self.thrown)
        # The edition of 2014 has no rule on days in a row.
        barred = resting or (third_day and self.table.book != "pitch-smart-2014")
        return 0 if barred else self.table.daily

    def next_day(self, day: int) -> int:
        return next(later for later in range(day, 100) if self.allowed(later))


@settings(max_examples=150, deadline=None)
@given(st.sampled_from(TABLES), st.dictionaries(st.integers(0, 9), st.integers(1, 120)))
def test_weeks_of_outings_come_out_as_worked_a_second_time(
    table: Published, thrown: dict[int, int]
) -> None:
    week = Week(table, thrown)
    outings = [Thrown(DAY + timedelta(day), pitches=n) for day, n in thrown.items()]
    day = max(thrown, default=0) + 1

    found = answer(
        *(load_books([table.book]), table.throwers[-1], outings, DAY + timedelta(day)),
        phase=table.phase,
    )

    assert found.pitches_allowed == week.allowed(day)
    assert found.next_eligible == DAY + timedelta(week.next_day(day))


# Innings in any 12 months, all teams together; 19-22 has no number.
INNINGS = {7: 60, 8: 60, **dict.fromkeys(range(9, 13), 80), **dict.fromkeys(range(13, 19), 100)}


@pytest.mark.parametrize("book", ["pitch-smart", "pitch-smart-2014"])
def test_innings_in_twelve_months_stop_at_the_published_number(book: str) -> None:
    for age, innings in INNINGS.items():
        before = [Thrown(date(2025, 9, 1), pitches=1, outs=innings * 3 - 1)]
        full = [Thrown(date(2025, 9, 1), pitches=1, outs=innings * 3)]

        assert answer(load_books([book]), Thrower(age=age), before, DAY).outs_allowed == 1
        assert not answer(load_books([book]), Thrower(age=age), full, DAY).eligible


def test_ages_19_to_22_have_no_innings_number() -> None:
    many = [Thrown(date(2025, 9, 1), pitches=1, outs=900)]

    assert answer(load_books(["pitch-smart"]), Thrower(age=20), many, DAY).eligible


@pytest.mark.parametrize(
    ("book", "thrower", "third_day"),
    [
        ("pitch-smart", Thrower(age=14), False),
        ("pitch-smart", Thrower(age=20), False),
        ("pitch-smart-2014", Thrower(age=14), True),
        ("little-league", Thrower(age=9), False),
        ("little-league", Thrower(age=16), False),
        ("minnesota-high-school", Thrower(level="varsity"), False),
        ("minnesota-high-school", Thrower(level="junior-varsity"), False),
        ("missouri-high-school", Thrower(grade=8), False),
        ("missouri-high-school", Thrower(grade=12), False),
    ],
)
def test_a_third_day_in_a_row(book: str, thrower: Thrower, third_day: bool) -> None:
    two = [Thrown(date(2026, 5, 4), pitches=5), Thrown(date(2026, 5, 5), pitches=5)]

    assert answer(load_books([book]), thrower, two, date(2026, 5, 6)).eligible is third_day
    assert answer(load_books([book]), thrower, two, date(2026, 5, 7)).eligible


@pytest.mark.parametrize(
    ("book", "age", "first", "second_game"),
    [
        # Pitch Smart: should not; 2014: avoid. Regulation VI: one game to age 12; above,
        # none after 31 or more in the first (from memory).
        ("pitch-smart", 14, 10, 0),
        ("pitch-smart-2014", 14, 10, 85),
        ("little-league", 12, 10, 0),
        ("little-league", 13, 30, 65),
        ("little-league", 13, 31, 0),
        ("little-league", 16, 30, 65),
        ("little-league", 16, 31, 0),
    ],
)
def test_the_second_game_of_a_day(book: str, age: int, first: int, second_game: int) -> None:
    played = [Thrown(DAY, pitches=first, game=1)]

    found = answer(load_books([book]), Thrower(age=age), played, DAY, game=2)

    assert found.pitches_allowed == second_game


@pytest.mark.parametrize(
    ("age", "outing", "may_catch"),
    [
        # Regulation VI: 41 in a game; 21 (31 at 15-16) after catching; a batter begun at 40
        # (20, 30) may be finished.
        (12, Thrown(DAY, pitches=40), True),
        (12, Thrown(DAY, pitches=41), False),
        (12, Thrown(DAY, pitches=44, last_batter_from=39), True),
        (12, Thrown(DAY, pitches=44, last_batter_from=40), False),
        (12, Thrown(DAY, pitches=20, caught_outs=9), True),
        (12, Thrown(DAY, pitches=21, caught_outs=9), False),
        (14, Thrown(DAY, pitches=24, last_batter_from=19, caught_outs=3), True),
        (15, Thrown(DAY, pitches=30, caught_outs=9), True),
        (15, Thrown(DAY, pitches=31, caught_outs=9), False),
    ],
)
def test_catching_after_pitching(age: int, outing: Thrown, may_catch: bool) -> None:
    found = answer(load_books(["little-league"]), Thrower(age=age), [outing], DAY)

    assert found.may_catch is may_catch


@pytest.mark.parametrize(("innings", "allowed"), [(3, 85), (4, 0), (6, 0)])
def test_pitching_after_catching(innings: int, allowed: int) -> None:
    caught = [Thrown(DAY, pitches=0, caught_outs=innings * 3)]

    found = answer(load_books(["little-league"]), Thrower(age=12), caught, DAY)

    assert found.pitches_allowed == allowed


@pytest.mark.parametrize(
    ("age", "advice"),
    [(8, "no breaking"), (12, "no breaking"), (13, "may begin once"), (18, "may begin once")],
)
def test_when_breaking_pitches_may_begin(age: int, advice: str) -> None:
    (book,) = load_books(["pitch-smart"])
    band = book.band_for(age=age, grade=None, level=None)

    told = [r for r in book.rule if r.name == "breaking-pitches" and band.name in r.bands]

    assert [advice in getattr(rule, "text", "") for rule in told] == [True]


OFF = [  # months off of what, and weeks or months in one piece (lower end of two to three months)
    (range(7, 15), 4, "throwing", (2, None)),
    (range(15, 19), 4, "competition", (2, None)),
    (range(19, 23), 3, "competition", (None, 4)),
]


@pytest.mark.parametrize(("years", "months", "of", "piece"), OFF)
def test_months_off(
    years: range, months: int, of: str, piece: tuple[int | None, int | None]
) -> None:
    (book,) = load_books(["pitch-smart"])

    for age in years:
        band = book.band_for(age=age, grade=None, level=None).name
        off = {r.name: r for r in book.rule if r.verb == "off" and band in r.bands}
        assert (off["months-off"].months, off["months-off"].of) == (months, of)
        whole = off["continuous-months-off"]
        assert (whole.months, whole.weeks, whole.continuous) == (*piece, True)
