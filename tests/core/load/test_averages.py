import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.load import averages

DAYS = st.lists(st.integers(0, 150), min_size=28, max_size=50)


@given(DAYS)
@settings(max_examples=60)
def test_the_coupled_ratio_follows_from_the_uncoupled_one(loads: list[int]) -> None:
    # coupled = 4u / (3 + u): Windt and Gabbett 2019, doi 10.1136/bjsports-2017-098925.
    last = averages(loads)[-1]

    if last.uncoupled_ratio is not None:
        u = last.uncoupled_ratio
        assert last.coupled_ratio == pytest.approx(4 * u / (3 + u))
    elif last.coupled_ratio is not None:
        assert last.coupled_ratio == pytest.approx(4.0)


@given(st.integers(1, 150), st.integers(28, 60))
@settings(max_examples=30)
def test_the_same_load_every_day_is_every_average(load: int, days: int) -> None:
    last = averages([load] * days)[-1]

    for mean in (last.acute, last.chronic, last.uncoupled, last.ewma_acute, last.ewma_chronic):
        assert mean == pytest.approx(load)
    assert last.ewma_ratio == pytest.approx(1)


def test_one_load_after_27_days_off_is_four_times_the_month_and_no_uncoupled_ratio() -> None:
    last = averages([0] * 27 + [90])[-1]

    assert last.coupled_ratio == pytest.approx(4)
    assert last.uncoupled_ratio is None


def test_the_first_day_off_has_no_weighted_ratio() -> None:
    assert averages([0])[0].ewma_ratio is None


def test_rolling_means_wait_for_their_days() -> None:
    found = averages([10] * 28)

    assert found[5].acute is None
    assert found[6].acute == 10
    assert found[26].chronic is None
    assert found[27].uncoupled == 10


def test_a_day_without_a_line_is_unknown_and_not_zero() -> None:
    known, unknown = averages([30, 0, 30, 0, 30, 0, 30]), averages([30, None] * 3 + [30])

    assert known[-1].acute == pytest.approx(120 / 7)
    assert unknown[-1].acute == pytest.approx(30)
    assert (known[-1].unknown, unknown[-1].unknown) == (0, 3)


def test_a_week_that_nobody_logged_has_no_mean() -> None:
    last = averages([30] * 21 + [None] * 7)[-1]

    assert last.acute is None
    assert last.coupled_ratio is None
    assert last.ewma_acute == pytest.approx(30)


def test_no_day_has_fewer_than_zero_throws() -> None:
    with pytest.raises(ValueError, match="zero"):
        averages([10, -1])
