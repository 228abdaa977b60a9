"""What holds for every book, record and count."""

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from core.rest import (
    Outlook,
    Thrower,
    Thrown,
    answer,
    breaches,
    most_leaving,
    required,
    standing,
    what_if,
)
from core.rulebooks import RuleBook, load_books

FIRST = date(2026, 5, 1)
INVENTED = Path(__file__).parent / "books"
PITCHER = Thrower(age=14, grade=9, level="varsity")
EVERY = [
    load_books([name], INVENTED)[0]
    for name in (
        *("pitch-smart", "pitch-smart-2014", "little-league", "minnesota-high-school"),
        *("missouri-high-school", "day-sums", "tournament"),
    )
]

books = st.sampled_from(EVERY)
counts = st.one_of(st.none(), st.integers(0, 120))


@st.composite
def outings(draw: st.DrawFn) -> Thrown:
    pitches = draw(counts)
    begun = draw(st.none() | st.integers(0, pitches)) if pitches is not None else None
    return Thrown(
        FIRST + timedelta(draw(st.integers(0, 9))),
        kind=draw(st.sampled_from(["game", "game", "scrimmage", "bullpen"])),
        pitches=pitches,
        outs=draw(st.none() | st.integers(0, 21)),
        last_batter_from=begun,
        game=draw(st.none() | st.integers(1, 2)),
        caught_outs=draw(st.none() | st.integers(0, 18)),
        about=draw(st.booleans()),
    )


records = st.lists(outings(), max_size=6)
days = st.integers(0, 14).map(lambda n: FIRST + timedelta(n))
QUICK = settings(max_examples=120, deadline=None)


@QUICK
@given(books, st.integers(1, 150), st.integers(0, 149), st.booleans())
def test_more_pitches_never_mean_fewer_days(
    book: RuleBook, more: int, begun: int, about: bool
) -> None:
    begun = min(begun, more - 1)
    fewer = [Thrown(FIRST, pitches=max(1, more - 1), about=about)]
    outing = [Thrown(FIRST, pitches=more, about=about)]
    finished = [Thrown(FIRST, pitches=more, last_batter_from=begun, about=about)]
    longer = [Thrown(FIRST, pitches=more + 1, last_batter_from=begun, about=about)]

    assert required([book], PITCHER, fewer).days <= required([book], PITCHER, outing).days
    assert required([book], PITCHER, finished).days <= required([book], PITCHER, longer).days


@QUICK
@given(books, records, outings(), days)
def test_one_more_outing_never_makes_anyone_eligible_earlier(
    book: RuleBook, record: list[Thrown], extra: Thrown, on: date
) -> None:
    without = answer([book], PITCHER, record, on)
    with_it = answer([book], PITCHER, [*record, extra], on)

    never = date.max
    assert (without.next_eligible or never) <= (with_it.next_eligible or never)
    assert with_it.pitches_allowed <= without.pitches_allowed


@QUICK
@given(books, books, records, days)
def test_one_more_book_never_allows_more(
    book: RuleBook, other: RuleBook, record: list[Thrown], on: date
) -> None:
    alone = answer([book], PITCHER, record, on)
    both = answer([book, other], PITCHER, record, on)

    assert both.pitches_allowed <= alone.pitches_allowed
    assert (alone.next_eligible or date.max) <= (both.next_eligible or date.max)


@QUICK
@given(books, records, days)
def test_what_is_allowed_passes_and_one_more_does_not(
    book: RuleBook, record: list[Thrown], on: date
) -> None:
    past = [outing for outing in record if outing.on < on]
    allowed = answer([book], PITCHER, past, on).pitches_allowed

    at_most = [*past, Thrown(on, pitches=allowed, outs=1)]
    over = [*past, Thrown(on, pitches=allowed + 1, outs=1)]

    assert not allowed or not breaches([book], PITCHER, at_most, on)
    assert breaches([book], PITCHER, over, on)


@QUICK
@given(books, records, days, st.integers(1, 120))
def test_a_what_if_agrees_with_recording_it(
    book: RuleBook, record: list[Thrown], on: date, pitches: int
) -> None:
    outing = Thrown(on, pitches=pitches)

    asked = what_if([book], PITCHER, record, outing)
    told = answer([book], PITCHER, [*record, outing], on + timedelta(1))

    assert asked.after == told
    assert asked.next_eligible == told.next_eligible


@QUICK
@given(books, records, days, st.integers(1, 6))
def test_the_most_that_leaves_him_eligible_is_the_most(
    book: RuleBook, record: list[Thrown], on: date, later: int
) -> None:
    free_on = on + timedelta(later)
    most = most_leaving([book], PITCHER, record, on, free_on)

    def eligible(pitches: int) -> bool:
        thrown = [*record, Thrown(on, pitches=pitches)] if pitches else record
        return answer([book], PITCHER, thrown, free_on).eligible

    if most is None:
        assert not eligible(0)
    else:
        assert eligible(most)
        allowed = answer([book], PITCHER, record, on).pitches_allowed
        assert most == allowed or not eligible(most + 1)


@QUICK
@given(books, records, days)
def test_the_order_of_the_record_does_not_matter_between_days(
    book: RuleBook, record: list[Thrown], on: date
) -> None:
    one_a_day = {outing.on: replace(outing, game=None) for outing in record}.values()

    forwards = answer([book], PITCHER, list(one_a_day), on)
    backwards = answer([book], PITCHER, list(one_a_day)[::-1], on)

    assert forwards == backwards


@QUICK
@given(books, books, records, st.lists(days, min_size=1, max_size=4))
def test_an_outlook_says_what_the_answers_of_its_days_say(
    book: RuleBook, other: RuleBook, record: list[Thrown], on: list[date]
) -> None:
    outlook = Outlook([book, other], PITCHER, record)

    for day in on:
        told = answer([book, other], PITCHER, record, day)
        assert outlook.allows(day) == told.eligible
        assert outlook.next_eligible(day) == told.next_eligible
        assert outlook.standing(day) == standing([book, other], PITCHER, record, day)


@QUICK
@given(books, records, days)
def test_what_was_thrown_afterwards_changes_no_total_of_a_day(
    book: RuleBook, record: list[Thrown], on: date
) -> None:
    past = [outing for outing in record if outing.on <= on]

    assert standing([book], PITCHER, record, on) == standing([book], PITCHER, past, on)
