"""What the answer says beyond the published tables: unknown counts, several books, borders."""

from datetime import date

import pytest

from core.rest import (
    RestAnswer,
    RestError,
    Thrower,
    Thrown,
    answer,
    breaches,
    coach_limits,
    required,
)
from core.rulebooks import NotCoveredError, load_books

SATURDAY, SUNDAY, TUESDAY, WEDNESDAY = (date(2026, 5, day) for day in (2, 3, 5, 6))
SMART = load_books(["pitch-smart"])
LITTLE = load_books(["little-league"])
FOURTEEN = Thrower(age=14)


def says(found: RestAnswer) -> str:
    return " | ".join(reason.says for reason in found.why)


def test_the_reason_carries_what_a_sentence_needs() -> None:
    found = answer(SMART, FOURTEEN, [Thrown(SATURDAY, pitches=62)], TUESDAY)

    (reason,) = found.why
    assert (reason.title, reason.band, reason.rule) == ("Pitch Smart", "13–14", "rest")
    assert (reason.on, reason.pitches, reason.days) == (SATURDAY, 62, 3)
    assert (reason.until, reason.row_from, reason.row_to) == (WEDNESDAY, 51, 65)
    assert reason.says == "62 pitches on 2026-05-02: 3 days"
    assert reason.binds
    assert reason.citation.startswith("Pitch Smart, table of limits")


def test_three_days_after_saturday_end_on_tuesday() -> None:
    found = [
        answer(SMART, FOURTEEN, [Thrown(SATURDAY, pitches=62)], day).eligible
        for day in (SUNDAY, TUESDAY, WEDNESDAY)
    ]

    assert found == [False, False, True]


def test_an_uncounted_outing_owes_the_longest_rest_until_it_is_counted() -> None:
    found = answer(SMART, FOURTEEN, [Thrown(SATURDAY, outs=6)], SUNDAY)

    assert (found.rest[0].pitches, found.rest[0].days) == (None, 4)
    assert "not counted" in says(found)
    assert answer(SMART, FOURTEEN, [Thrown(SATURDAY, pitches=15, outs=6)], SUNDAY).eligible


def test_an_uncounted_outing_leaves_nothing_of_its_day() -> None:
    books = load_books(["pitch-smart-2014"])

    assert answer(books, FOURTEEN, [Thrown(SATURDAY)], SATURDAY).pitches_allowed == 0


@pytest.mark.parametrize(
    ("pitches", "days"), [(15, 0), (16, 1), (30, 1), (31, 2), (61, 4), (66, 4), (10, 0)]
)
def test_an_estimate_within_five_of_a_stricter_row_owes_that_row(pitches: int, days: int) -> None:
    owed = required(SMART, FOURTEEN, [Thrown(SATURDAY, pitches=pitches, about=True)])

    assert owed.days == days


def test_an_estimate_says_that_it_is_one() -> None:
    found = answer(SMART, FOURTEEN, [Thrown(SATURDAY, pitches=62, about=True)], SUNDAY)

    assert "about 62 pitches on 2026-05-02, an estimate within 5 of 66+: 4 days" in says(found)


@pytest.mark.parametrize("kind", ["bullpen", "catch", "live", "practice", "warm-up", "off"])
def test_load_that_no_book_counts_owes_nothing(kind: str) -> None:
    found = answer(SMART, FOURTEEN, [Thrown(SATURDAY, kind, pitches=90)], SUNDAY)

    assert (found.eligible, found.rest) == (True, ())


@pytest.mark.parametrize("kind", ["game", "scrimmage", "showcase", "tryout"])
def test_a_showcase_or_tryout_counts_like_a_game(kind: str) -> None:
    assert required(SMART, FOURTEEN, [Thrown(SATURDAY, kind, pitches=62)]).days == 3


def test_a_day_counts_as_a_whole_over_its_games() -> None:
    doubleheader = [Thrown(SATURDAY, pitches=22, game=1), Thrown(SATURDAY, pitches=27, game=2)]

    owed = required(SMART, FOURTEEN, doubleheader)

    assert (owed.pitches, owed.days) == (49, 2)


def test_only_the_last_batter_of_the_day_can_be_finished() -> None:
    first = Thrown(SATURDAY, pitches=20, last_batter_from=12, game=1)
    second = Thrown(SATURDAY, pitches=18, last_batter_from=14, game=2)

    # 20 and the first pitch to the last batter, number 15: 35.
    assert required(LITTLE, FOURTEEN, [first, second]).days == 1
    # In which order is not known: the full 38.
    unnumbered = [Thrown(SATURDAY, pitches=20), Thrown(SATURDAY, pitches=18, last_batter_from=14)]
    assert required(LITTLE, FOURTEEN, unnumbered).days == 2


def test_a_book_without_the_batter_rule_counts_every_pitch() -> None:
    outing = [Thrown(SATURDAY, pitches=52, last_batter_from=44)]

    assert required(SMART, FOURTEEN, outing).days == 3
    assert required(LITTLE, FOURTEEN, outing).days == 2


def test_the_stricter_book_wins_and_is_named() -> None:
    both = load_books(["pitch-smart", "missouri-high-school"])
    pitcher = Thrower(age=14, grade=9)

    found = answer(both, pitcher, [Thrown(SATURDAY, pitches=40)], SUNDAY)

    assert found.rest[0].days == 2  # Missouri alone: 1
    assert found.next_eligible == TUESDAY
    assert {r.rulebook for r in found.why if r.binds} == {"pitch-smart", "missouri-high-school"}


def test_a_birthday_changes_the_band_from_that_day() -> None:
    pitcher = Thrower(birth_date=date(2011, 5, 3))

    as_14 = required(SMART, pitcher, [Thrown(SATURDAY, pitches=66)])
    as_15 = required(SMART, pitcher, [Thrown(SUNDAY, pitches=66)])

    assert (as_14.days, as_15.days) == (4, 3)


def test_outings_later_than_the_date_do_not_count_for_it() -> None:
    later = [Thrown(TUESDAY, pitches=90)]

    assert answer(SMART, FOURTEEN, later, SUNDAY).pitches_allowed == 95


def test_an_age_that_no_band_covers_is_an_error_with_a_name() -> None:
    with pytest.raises(NotCoveredError, match="pitch-smart has no band for age 6"):
        answer(SMART, Thrower(age=6), [], SUNDAY)


def test_a_date_before_the_edition_is_an_error_with_a_name() -> None:
    with pytest.raises(NotCoveredError, match="valid from 2018-01-01"):
        answer(SMART, FOURTEEN, [], date(2017, 5, 1))


def test_a_book_by_grade_asks_for_the_grade() -> None:
    with pytest.raises(NotCoveredError, match="give the pitcher's grade"):
        answer(load_books(["missouri-high-school"]), FOURTEEN, [], SUNDAY)


def test_a_superseded_edition_answers_and_says_so() -> None:
    found = answer(load_books(["pitch-smart-2014"]), FOURTEEN, [], SUNDAY)

    assert found.pitches_allowed == 95
    assert "superseded on 2018-01-01 by pitch-smart" in says(found)


@pytest.mark.parametrize(
    ("outing", "message"),
    [
        ({"pitches": -1}, "pitches on 2026-05-02 is -1"),
        ({"outs": -1}, "outs on 2026-05-02 is -1"),
        ({"pitches": 5, "last_batter_from": 6}, "more than the 5 pitches thrown"),
        ({"game": 0}, "from 1"),
    ],
)
def test_an_impossible_outing_is_refused(outing: dict[str, int], message: str) -> None:
    with pytest.raises(RestError, match=message):
        Thrown(SATURDAY, **outing)  # type: ignore[arg-type]


def test_an_unknown_kind_or_phase_is_refused() -> None:
    with pytest.raises(RestError, match="no kind of outing is called gmae"):
        answer(SMART, FOURTEEN, [Thrown(SATURDAY, "gmae", pitches=5)], SUNDAY)
    with pytest.raises(RestError, match="no phase is called finals"):
        answer(SMART, FOURTEEN, [], SUNDAY, phase="finals")


def test_a_full_year_frees_its_first_innings_a_year_later() -> None:
    full = [Thrown(date(2025, 6, 1), pitches=90, outs=290), Thrown(SATURDAY, pitches=5, outs=10)]

    found = answer(SMART, FOURTEEN, full, SUNDAY)

    assert (found.eligible, found.next_eligible) == (False, date(2026, 6, 1))


def test_a_coach_can_lower_a_limit_and_never_raise_it() -> None:
    lower = (*SMART, coach_limits(pitches_per_day=70, days_after_any_outing=1))
    higher = (*SMART, coach_limits(pitches_per_day=150))

    assert answer(lower, FOURTEEN, [], SUNDAY).pitches_allowed == 70
    assert answer(higher, FOURTEEN, [], SUNDAY).pitches_allowed == 95
    assert answer(lower, FOURTEEN, [Thrown(SATURDAY, pitches=5)], SUNDAY).pitches_allowed == 0


def test_a_coach_without_limits_is_asked_for_one() -> None:
    with pytest.raises(RestError, match="give one"):
        coach_limits()
    with pytest.raises(RestError, match="below 0"):
        coach_limits(pitches_per_day=-1)


@pytest.mark.parametrize(
    ("outing", "broken"),
    [
        # Regulation VI, league age 10: 75 a day; W03 of the worked examples is legal.
        (Thrown(SUNDAY, pitches=75), set()),
        (Thrown(SUNDAY, pitches=76, last_batter_from=71), set()),
        (Thrown(SUNDAY, pitches=76, last_batter_from=75), {"daily-max"}),
        (Thrown(SUNDAY, pitches=76), {"daily-max"}),
        (Thrown(SUNDAY, kind="bullpen", pitches=120), set()),
    ],
)
def test_what_went_over_a_rule(outing: Thrown, broken: set[str]) -> None:
    found = breaches(LITTLE, Thrower(age=10), [outing], SUNDAY)

    assert {reason.rule for reason in found} == broken


def test_pitching_before_the_rest_is_over_is_named() -> None:
    # The case of 2018 that cost a game: more than 75 on Thursday, 20 on Monday.
    books = load_books(["missouri-high-school"])
    thrown = [Thrown(date(2018, 4, 26), pitches=76), Thrown(date(2018, 4, 30), pitches=20)]

    (reason,) = breaches(books, Thrower(grade=11), thrown, date(2018, 4, 30))

    assert (reason.rule, reason.until) == ("rest", date(2018, 5, 1))


def test_a_second_game_that_was_not_allowed_is_named() -> None:
    thrown = [Thrown(SUNDAY, pitches=31, game=1), Thrown(SUNDAY, pitches=5, game=2)]

    found = breaches(LITTLE, FOURTEEN, thrown, SUNDAY)

    assert {reason.rule for reason in found} == {"second-game"}


def test_a_bullpen_is_no_pitching_for_a_published_book() -> None:
    found = answer(SMART, FOURTEEN, [Thrown(SATURDAY, pitches=90)], SUNDAY, kind="bullpen")

    assert (found.eligible, found.pitches_limited) == (True, False)
    assert "bullpen is not among the outings that this rule book counts" in says(found)


def test_advice_is_told_and_not_enforced() -> None:
    books = load_books(["pitch-smart-2014"])
    found = answer(books, FOURTEEN, [Thrown(SATURDAY, pitches=10, game=1)], SATURDAY, game=2)

    assert found.pitches_allowed == 85
    assert "at most 1 game as pitcher in a day (advice, not enforced)" in says(found)
