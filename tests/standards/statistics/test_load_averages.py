"""The averages of daily load against a worked table and against pandas.

The table was computed with exact fractions from the formulas as published: coupled and
uncoupled rolling means (Windt and Gabbett 2019, doi 10.1136/bjsports-2017-098925) and
exponentially weighted means with weight 2 / (N + 1) (Williams et al. 2017, doi
10.1136/bjsports-2016-096589); that the weighted means begin with the first load is a common
convention, no source. No published table with daily loads was at hand.
"""

from typing import Any

import pytest

from core.load import Averages, averages

#: Day, load, acute, chronic, uncoupled, coupled ratio, uncoupled ratio, weighted 7 and 28, ratio.
TABLE: list[tuple[float | None, ...]] = [
    (1, 0, None, None, None, None, None, 0.000000, 0.000000, None),
    (2, 20, None, None, None, None, None, 5.000000, 1.379310, 3.625000),
    (3, 0, None, None, None, None, None, 3.750000, 1.284185, 2.920139),
    (4, 45, None, None, None, None, None, 14.062500, 4.299069, 3.271057),
    (5, 0, None, None, None, None, None, 10.546875, 4.002582, 2.635018),
    (6, 15, None, None, None, None, None, 11.660156, 4.761024, 2.449086),
    (7, 0, 11.428571, None, None, None, None, 8.745117, 4.432678, 1.972875),
    (8, 0, 11.428571, None, None, None, None, 6.558838, 4.126976, 1.589260),
    (9, 25, 12.142857, None, None, None, None, 11.169128, 5.566495, 2.006492),
    (10, 0, 12.142857, None, None, None, None, 8.376846, 5.182599, 1.616341),
    (11, 50, 12.857143, None, None, None, None, 18.782635, 8.273454, 2.270229),
    (12, 0, 12.857143, None, None, None, None, 14.086976, 7.702871, 1.828796),
    (13, 15, 12.857143, None, None, None, None, 14.315232, 8.206121, 1.744458),
    (14, 0, 12.857143, None, None, None, None, 10.736424, 7.640182, 1.405258),
    (15, 0, 12.857143, None, None, None, None, 8.052318, 7.113273, 1.132013),
    (16, 25, 12.857143, None, None, None, None, 12.289239, 8.346840, 1.472322),
    (17, 0, 12.857143, None, None, None, None, 9.216929, 7.771196, 1.186037),
    (18, 60, 14.285714, None, None, None, None, 21.912697, 11.373182, 1.926699),
    (19, 0, 14.285714, None, None, None, None, 16.434522, 10.588825, 1.552063),
    (20, 20, 15.000000, None, None, None, None, 17.325892, 11.237872, 1.541741),
    (21, 0, 15.000000, None, None, None, None, 12.994419, 10.462846, 1.241958),
    (22, 0, 15.000000, None, None, None, None, 9.745814, 9.741270, 1.000466),
    (23, 30, 15.714286, None, None, None, None, 14.809361, 11.138424, 1.329574),
    (24, 0, 15.714286, None, None, None, None, 11.107020, 10.370257, 1.071046),
    (25, 65, 16.428571, None, None, None, None, 24.580265, 14.137825, 1.738617),
    (26, 0, 16.428571, None, None, None, None, 18.435199, 13.162803, 1.400553),
    (27, 20, 16.428571, None, None, None, None, 18.826399, 13.634334, 1.380808),
    (28, 0, 16.428571, 13.928571, 13.095238, 1.179487, 1.254545, 14.119799, 12.694035, 1.112318),
    (29, 30, 20.714286, 15.000000, 13.095238, 1.380952, 1.581818, 18.089850, 13.887550, 1.302595),
    (30, 0, 16.428571, 14.285714, 13.571429, 1.150000, 1.210526, 13.567387, 12.929788, 1.049312),
    (31, 75, 27.142857, 16.964286, 13.571429, 1.600000, 2.000000, 28.925540, 17.210492, 1.680692),
    (32, 0, 17.857143, 15.357143, 14.523810, 1.162791, 1.229508, 21.694155, 16.023562, 1.353891),
    (33, 0, 17.857143, 15.357143, 14.523810, 1.162791, 1.229508, 16.270616, 14.918488, 1.090634),
    (34, 85, 27.142857, 17.857143, 14.761905, 1.520000, 1.838710, 33.452962, 19.751696, 1.693675),
    (35, 0, 27.142857, 17.857143, 14.761905, 1.520000, 1.838710, 25.089722, 18.389510, 1.364350),
]  # fmt: skip
LOADS = [row[1] for row in TABLE]


def figures(one: Averages) -> tuple[float | None, ...]:
    return (
        one.acute, one.chronic, one.uncoupled, one.coupled_ratio, one.uncoupled_ratio,
        one.ewma_acute, one.ewma_chronic, one.ewma_ratio,
    )  # fmt: skip


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"day {row[0]}")
def test_every_day_of_the_worked_table_to_six_decimals(row: tuple[float | None, ...]) -> None:
    found = figures(averages(LOADS)[int(row[0] or 0) - 1])

    assert [None if one is None else round(one, 6) for one in found] == list(row[2:])


def test_the_rolling_and_the_weighted_means_are_those_of_pandas() -> None:
    # Any: pandas carries no types of its own.
    pandas: Any = pytest.importorskip("pandas")
    series = pandas.Series(LOADS, dtype=float)

    found = averages(LOADS)

    assert [one.acute for one in found[6:]] == pytest.approx(
        list(series.rolling(7).mean()[6:]), abs=1e-12
    )
    assert [one.chronic for one in found[27:]] == pytest.approx(
        list(series.rolling(28).mean()[27:]), abs=1e-12
    )
    for days, mine in ((7, "ewma_acute"), (28, "ewma_chronic")):
        theirs = series.ewm(alpha=2 / (days + 1), adjust=False).mean()
        assert [getattr(one, mine) for one in found] == pytest.approx(list(theirs), abs=1e-12)


def test_the_weight_of_the_first_day_after_28_and_35_days() -> None:
    # (27/29)^27 and (27/29)^34: what is left of the first load in the slow mean.
    first_alone = averages([1.0] + [0.0] * 34)

    assert first_alone[27].ewma_chronic == pytest.approx(0.145236, abs=5e-7)
    assert first_alone[34].ewma_chronic == pytest.approx(0.088072, abs=5e-7)
