"""Wilson's interval against published worked cases and a reference library.

Newcombe, "Two-sided confidence intervals for the single proportion", Stat Med 17 (1998)
857-872, works 81/263, 15/148, 0/20 and 1/29; the values below were recomputed by the formula
of Wilson 1927 in statsmodels `proportion_confint(method="wilson")` and scipy
`binomtest(...).proportion_ci("wilson")`, which agree to 1e-12 (the printed table itself was
compared from memory).
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest

from core.mix import wilson

WORKED = [
    (81, 263, 0.255289, 0.366210),
    (15, 148, 0.062386, 0.160487),
    (0, 20, 0.000000, 0.161125),
    (1, 29, 0.006113, 0.171755),
    (29, 29, 0.883030, 1.000000),
    (9, 60, 0.080974, 0.261146),
    (12, 80, 0.087940, 0.244132),
    (40, 80, 0.392974, 0.607026),
    (2, 8, 0.071479, 0.590725),
]


@pytest.mark.parametrize(("hits", "trials", "low", "high"), WORKED)
def test_interval_is_the_published_one(hits: int, trials: int, low: float, high: float) -> None:
    assert wilson(hits, trials) == pytest.approx((low, high), abs=5e-7)


@given(st.integers(1, 500).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_interval_holds_the_share_and_stays_within_nought_and_one(case: tuple[int, int]) -> None:
    hits, trials = case

    low, high = wilson(hits, trials)

    assert 0.0 <= low <= hits / trials <= high <= 1.0


@given(st.integers(1, 500).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_interval_is_that_of_scipy(case: tuple[int, int]) -> None:
    hits, trials = case

    published = binomtest(hits, trials).proportion_ci(confidence_level=0.95, method="wilson")

    assert wilson(hits, trials) == pytest.approx((published.low, published.high), abs=1e-12)


@pytest.mark.parametrize(("hits", "trials"), [(1, 0), (-1, 5), (6, 5)])
def test_what_is_no_proportion_is_refused(hits: int, trials: int) -> None:
    with pytest.raises(ValueError, match="no proportion"):
        wilson(hits, trials)
