"""Crossings as properties: what stands depends on the record alone, and each is told once."""

from collections import Counter
from dataclasses import replace
from datetime import date, timedelta
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from core.alerts import Crossing, Felt, Key, Known, Pitched, Record, YearCap, compare, crossings
from core.alerts.crossings import WINDOWS
from core.alerts.thresholds import DEFAULTS

FIRST = date(2026, 4, 1)
LAST = FIRST + timedelta(days=60)
LIMITS = {**DEFAULTS, Key.LOW_MIX: 8, Key.WEEK_PITCHES: 90, Key.SPIN_WEEK: 20}

days = st.integers(0, 60).map(lambda n: FIRST + timedelta(days=n))
counts = st.none() | st.integers(0, 30)


@st.composite
def outings(draw: st.DrawFn) -> list[Pitched]:
    found = []
    for number in range(draw(st.integers(1, 9))):
        kind = draw(st.sampled_from(["game", "game", "bullpen", "catch", "off", None]))
        found.append(
            Pitched(
                number + 1, draw(days), kind, draw(st.none() | st.integers(30, 90)),
                draw(counts), draw(counts), draw(st.none() | st.integers(30, 100)),
                draw(st.none() | st.integers(0, 27)), draw(st.none() | st.integers(0, 9)),
                draw(st.none() | st.integers(1, 2)),
            )
        )  # fmt: skip
    return found


felt = st.lists(st.builds(Felt, days, st.booleans()), max_size=4)


class Book:
    """The stored alerts of one pitcher, brought up to date as the ledger does it."""

    def __init__(self) -> None:
        self.rows: dict[int, Known] = {}
        self.told: Counter[tuple[Key, str]] = Counter()

    def look(self, record: Record, on: date) -> int:
        """Bring the book to what stands; gives how many changes that took."""
        changes = compare(list(self.rows.values()), crossings(record, LIMITS, on))
        woken = 0
        for row_id, _ in changes.standing:
            woken += not self.rows[row_id].stands
            self.rows[row_id] = replace(self.rows[row_id], stands=True)
        for row_id in changes.gone:
            self.rows[row_id] = replace(self.rows[row_id], stands=False)
        for crossing in changes.raised:
            row = Known(len(self.rows) + 1, crossing.key, crossing.episode, stands=True)
            self.rows[row.id] = row
            self.told[crossing.key, crossing.episode] += 1
        return len(changes.raised) + len(changes.gone) + woken

    def knows(self, one: Crossing) -> bool:
        """Whether a crossing is one of those in the book."""
        return not compare(self.rows.values(), [replace(one, old=False)]).raised

    def standing(self) -> list[Key]:
        return sorted(row.key for row in self.rows.values() if row.stands)


def a_record(pitched: list[Pitched], how_felt: list[Felt]) -> Record:
    return Record(
        tuple(sorted(pitched, key=lambda one: (one.on, one.id))),
        tuple(how_felt),
        seasons=((FIRST, LAST),),
        year_cap=YearCap(60, "a book"),
    )


@given(outings(), felt, st.randoms(use_true_random=False))
@settings(max_examples=150, deadline=None)
def test_whatever_the_order_of_the_lines_the_same_stands_and_each_is_told_once(
    pitched: list[Pitched], how_felt: list[Felt], random: Random
) -> None:
    arriving = list(pitched)
    random.shuffle(arriving)
    book, at_once = Book(), Book()

    so_far: list[Pitched] = []
    for one in arriving:
        so_far.append(one)
        book.look(a_record(so_far, how_felt), LAST)
    at_once.look(a_record(pitched, how_felt), LAST)

    whole = crossings(a_record(pitched, how_felt), LIMITS, LAST)
    assert set(at_once.standing()) <= set(book.standing())
    assert book.standing() == sorted(one.key for one in whole if not one.old or book.knows(one))
    assert set(book.told.values()) <= {1}


@given(outings(), felt)
@settings(max_examples=150, deadline=None)
def test_looking_again_changes_nothing(pitched: list[Pitched], how_felt: list[Felt]) -> None:
    book, record = Book(), a_record(pitched, how_felt)
    book.look(record, LAST)

    assert book.look(record, LAST) == 0


@given(outings(), felt)
@settings(max_examples=100, deadline=None)
def test_a_line_taken_back_leaves_what_would_have_stood_without_it(
    pitched: list[Pitched], how_felt: list[Felt]
) -> None:
    book, without = Book(), a_record(pitched[:-1], how_felt)
    book.look(a_record(pitched, how_felt), LAST)

    book.look(without, LAST)

    expected = [one.key for one in crossings(without, LIMITS, LAST) if not one.old]
    assert [key for key in book.standing() if key in expected] == sorted(expected)
    assert len(book.standing()) == len([
        one for one in crossings(without, LIMITS, LAST)
        if not one.old or book.knows(one)
    ])  # fmt: skip


@given(outings(), felt)
@settings(max_examples=60, deadline=None)
def test_day_by_day_a_window_has_one_alert_at_a_time_and_a_day_stays_what_it_was(
    pitched: list[Pitched], how_felt: list[Felt]
) -> None:
    book = Book()

    for passed in range((LAST - FIRST).days + 1):
        on = FIRST + timedelta(days=passed)
        known = a_record([one for one in pitched if one.on <= on], how_felt)
        book.look(known, on)
        windows = Counter(
            row.key for row in book.rows.values() if row.stands and row.key in WINDOWS
        )
        assert set(windows.values()) <= {1}

    singles = [row for row in book.rows.values() if row.key not in WINDOWS]
    assert all(row.stands for row in singles)
    assert set(book.told.values()) <= {1}
