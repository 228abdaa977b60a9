"""A written line reads back to exactly the fields it was written from."""

from dataclasses import replace
from datetime import date, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from core.reading import read
from core.reading.entry import Entry, Pain
from core.reading.writing import WHEN, write, write_game

POSTED = datetime.fromisoformat("2026-05-02T18:00")
ROSTER = ("Mateo Cruz", "Leo Ortiz", "Sam Ruiz", "Sam Oduya", "Zoë O'Neil-Pérez", "Bo Li")
SIDED = ("elbow", "shoulder", "forearm", "wrist", "hand", "finger", "bicep", "tricep", "arm",
         "lat", "hip", "knee", "leg")  # fmt: skip
MIDDLE = ("back", "neck", "head", "chest")

days = st.integers(1, 59).map(lambda ago: POSTED.date() - timedelta(days=ago))
names = st.sampled_from([None, *ROSTER])


def count(most: int) -> st.SearchStrategy[int | None]:
    """A count that may be left empty."""
    return st.none() | st.integers(0, most)


def innings(pitches: int) -> st.SearchStrategy[int | None]:
    """Outs at a pace that is seen: the reader asks about two innings in three pitches."""
    return count(27).filter(lambda n: n is None or n < 6 or 8 * n <= pitches * 3 <= 44 * n)


@st.composite
def entries(draw: st.DrawFn, kinds: tuple[str, ...] = ("game", "bullpen", "live")) -> Entry:
    """An outing whose counts fit together, as a form lets pass."""
    pitches = draw(st.integers(1, 130))
    curve, slider = draw(count(pitches // 3)), draw(count(pitches // 3))
    kind = draw(st.sampled_from(kinds))
    typed = draw(count(pitches)) if curve is slider is None else (curve or 0) + (slider or 0)
    return Entry(
        who=draw(names),
        kind=kind,
        pitches=pitches,
        curve=curve,
        slider=slider,
        breaking=typed,
        changeup=draw(count((pitches - (typed or 0)) // 2)),
        # Strikes beside as many breaking balls may be theirs: the reader asks then.
        strikes=draw(count(pitches).filter(lambda n: n is None or n > (typed or 0))),
        outs=draw(innings(pitches)) if kind == "game" else None,
        effort=draw(st.none() | st.integers(1, 100)) if kind != "game" else None,
        day_named=True,
    )


def reads_back(text: str, wanted: list[Entry], on: date) -> None:
    """Assert that a line says these entries, dated, and leaves nothing open."""
    reading = read(text, POSTED, "coach", roster=ROSTER)
    assert reading.unread == ()
    assert list(reading.entries) == [replace(one, on=on, day_named=True) for one in wanted], text


@given(entries(), days)
def test_an_outing_reads_back(entry: Entry, on: date) -> None:
    reads_back(write(entry, on), [entry], on)


@given(names, st.integers(1, 150), count(60), st.none() | st.integers(1, 100), days)
def test_catch_play_reads_back(
    who: str | None, throws: int, spins: int | None, effort: int | None, on: date
) -> None:
    spins = spins if spins is None else min(spins, throws)
    entry = Entry(who=who, kind="catch", pitches=throws, breaking=spins, effort=effort)
    reads_back(write(entry, on), [entry], on)


@given(st.sets(st.sampled_from(ROSTER)), st.integers(1, 150), st.integers(0, 60), days)
def test_a_roll_call_reads_back(absent: set[str], throws: int, spins: int, on: date) -> None:
    left_out = tuple(sorted(absent))
    entry = Entry(
        who="everyone", except_=left_out, kind="catch", pitches=throws, breaking=min(spins, throws)
    )
    reads_back(write(entry, on), [entry], on)


@given(st.lists(st.sampled_from(ROSTER), min_size=1, unique=True), st.data(), days)
def test_the_counts_of_a_game_read_back(who: list[str], data: st.DataObject, on: date) -> None:
    staff = []
    for name in who:
        pitches = data.draw(st.integers(1, 130))
        staff.append(
            Entry(
                who=name,
                kind="game",
                pitches=pitches,
                breaking=data.draw(count(pitches)),
                outs=data.draw(innings(pitches)),
            )
        )
    reads_back(write_game(staff, on), staff, on)


@given(
    names,
    st.tuples(st.sampled_from(SIDED), st.sampled_from(("left", "right")))
    | st.tuples(st.sampled_from(SIDED + MIDDLE), st.none()),
    st.none() | st.integers(1, 10),
    st.none() | st.sampled_from(sorted(WHEN)),
    st.booleans(),
    days,
)
def test_a_report_of_pain_reads_back(
    who: str | None,
    where: tuple[str, str | None],
    severity: int | None,
    when: str | None,
    sore: bool,
    on: date,
) -> None:
    site, side = where
    pain = Pain(site, severity, side, when, sore)
    entry = Entry(who=who, pain=(pain,))
    reads_back(write(entry, on), [entry], on)


def test_a_day_off_reads_back() -> None:
    on = date(2026, 5, 1)
    reads_back(write(Entry(who="Leo Ortiz", kind="off"), on), [Entry("Leo Ortiz", kind="off")], on)
