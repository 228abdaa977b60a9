"""No plan breaks a rule, in any book, even if one pitcher throws the most that he is given."""

from datetime import date, timedelta
from pathlib import Path

from hypothesis import HealthCheck, given, reject, settings
from hypothesis import strategies as st

from core.rest import Arm, Game, RestError, Thrower, Thrown, breaches, weekend_plan
from core.rest.breakpoints import planned
from core.rulebooks import RuleBook, load_books

FRIDAY = date(2026, 5, 8)
INNING = 19
INVENTED = Path(__file__).parent / "books"
EVERY = [
    load_books([name], INVENTED)[0]
    for name in (
        *("pitch-smart", "pitch-smart-2014", "little-league", "minnesota-high-school"),
        *("missouri-high-school", "day-sums", "tournament", "week-innings"),
    )
]


def pitcher(book: RuleBook) -> Thrower:
    level = "majors" if book.id == "week-innings" else "varsity"
    return Thrower(age=14, grade=9, level=level)


pasts = st.lists(st.tuples(st.integers(-4, -1), st.integers(1, 80)), max_size=3)
wanted = st.tuples(st.integers(0, 3), st.integers(1, 2), st.integers(1, 140), st.booleans())


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.sampled_from(EVERY),
    st.lists(pasts, min_size=1, max_size=4),
    st.lists(wanted, min_size=1, max_size=5, unique_by=lambda game: game[:2]),
)
def test_no_plan_breaks_a_rule(
    book: RuleBook,
    staff_pasts: list[list[tuple[int, int]]],
    games_wanted: list[tuple[int, int, int, bool]],
) -> None:
    games = {
        f"g{day}{number}": Game(f"g{day}{number}", FRIDAY + timedelta(day), number, pitches, win)
        for day, number, pitches, win in games_wanted
    }
    staff = [
        Arm(
            f"p{n}",
            [book],
            pitcher(book),
            [planned(FRIDAY + timedelta(day), pitches, inning=INNING) for day, pitches in past],
        )
        for n, past in enumerate(staff_pasts)
    ]

    try:
        plan = weekend_plan(list(games.values()), staff, inning=INNING)
    except RestError:
        reject()  # a machine that is busy with other work may find none in the time given

    for arm in staff:
        mine = [a for a in plan.assignments if a.pitcher == arm.key]
        for full in mine:
            thrown: list[Thrown] = [
                planned(
                    games[a.game].on,
                    a.at_most if a is full else a.pitches,
                    inning=INNING,
                    game=games[a.game].number,
                )
                for a in mine
            ]
            for day in {outing.on for outing in thrown}:
                assert breaches([book], arm.thrower, [*arm.outings, *thrown], day) == ()
