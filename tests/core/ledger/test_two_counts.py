"""While it is open whether two counts tell of one outing, rest goes by the larger one."""

from datetime import date, timedelta
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from core.ledger.history import larger, thrown
from core.ledger.joined import put_together
from core.ledger.logged import Logged
from core.model import JoinedAs
from core.rest import Thrower, Thrown, answer
from core.rulebooks import load_books

ON = date(2026, 5, 2)
ASKED = ON + timedelta(days=1)
BOOKS = [load_books([name]) for name in ("pitch-smart", "little-league")]
PITCHER = Thrower(age=14, grade=9, level="varsity")

counts = st.none() | st.integers(0, 120)
kinds = st.sampled_from([None, "game", "bullpen"])


@st.composite
def logs(draw: st.DrawFn, number: int) -> Logged:
    pitches = draw(counts)
    columns: dict[str, Any] = dict.fromkeys(Logged._fields)
    columns.update(
        {
            "id": number,
            "pitcher_id": 1,
            "line_id": number,
            "on": ON,
            "kind": draw(kinds),
            "pitches": pitches,
            "outs": draw(st.none() | st.integers(0, 21)),
            "last_batter_from": draw(st.none() | st.integers(0, pitches)) if pitches else None,
            "about": draw(st.booleans()),
            "waiting": ["same"] if number > 1 else [],
            "joins": 1 if number > 1 else None,
            "joined_as": JoinedAs.OPEN if number > 1 else None,
            "open_logs": (),
        }
    )
    return Logged(**columns)


def eligible(record: list[Thrown], books: int) -> date:
    """The first day on which the book lets him pitch again; the last date there is for none."""
    return answer(BOOKS[books], PITCHER, record, ASKED).next_eligible or date.max


@settings(max_examples=200, deadline=None)
@given(logs(1), st.lists(logs(2), max_size=1), st.lists(logs(3), max_size=1), st.integers(0, 1))
def test_rest_is_never_shorter_than_with_the_larger_count_alone(
    first: Logged, second: list[Logged], third: list[Logged], book: int
) -> None:
    record = [first, *second, *third]
    counted = [one for one in record if one.pitches is not None]
    largest = max(counted, key=lambda one: one.pitches or 0) if counted else first

    open_now = thrown(put_together(record))

    assert len(open_now) == 1
    alone = thrown([largest._replace(joins=None)])
    assert eligible(open_now, book) >= eligible(alone, book)
    assert eligible(open_now, book) >= eligible(thrown([first]), book)


def test_a_first_log_without_a_count_stays_uncounted() -> None:
    both = larger(Thrown(ON, pitches=None), Thrown(ON, pitches=20))

    assert both.pitches is None


def test_the_last_batter_shortens_no_rest_that_the_other_log_does_not_know_of() -> None:
    both = larger(Thrown(ON, pitches=52, last_batter_from=48), Thrown(ON, pitches=51))

    assert (both.pitches, both.last_batter_from) == (52, None)
