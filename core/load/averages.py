"""Acute and chronic load: rolling means and exponentially weighted means of daily throws.

The windows are 7 days (acute), 28 days (chronic, coupled) and the 21 days before the acute
week (chronic, uncoupled). Coupled and uncoupled ratios: J. Windt and T. J. Gabbett, Br J
Sports Med 53 (2019) 988-990, doi 10.1136/bjsports-2017-098925. Exponentially weighted means:
S. Williams, S. West, M. J. Cross and K. A. Stokes, Br J Sports Med 51 (2017) 209-210, doi
10.1136/bjsports-2016-096589; that they begin with the first day's load is a common
convention, no source. F. M. Impellizzeri et al., J Athl Train 55 (2020) 893-901, doi
10.4085/1062-6050-501-19, set out why no such number says whether risk went up or down: none
of these is ever shown as one, and a low one clears no arm.
"""

from collections.abc import Sequence
from dataclasses import dataclass

ACUTE, CHRONIC = 7, 28


@dataclass(frozen=True, slots=True)
class Averages:
    """The averages that end on one day (throws a day); none where too few days are on record.

    `unknown` counts the days of the last 28 (or of fewer, early on) that nobody logged.
    """

    acute: float | None
    chronic: float | None
    uncoupled: float | None
    ewma_acute: float | None
    ewma_chronic: float | None
    unknown: int

    @property
    def coupled_ratio(self) -> float | None:
        """Acute over chronic, 0 to 4; none while the month holds nothing."""
        return _ratio(self.acute, self.chronic)

    @property
    def uncoupled_ratio(self) -> float | None:
        """Acute over the 21 days before it; unbounded."""
        return _ratio(self.acute, self.uncoupled)

    @property
    def ewma_ratio(self) -> float | None:
        """Of the weighted pair; before day 28 the first day still weighs too much to read it."""
        return _ratio(self.ewma_acute, self.ewma_chronic)


def averages(loads: Sequence[float | None]) -> list[Averages]:
    """The averages at the end of each day; `loads` are throws by day, oldest first.

    None is a day that nobody logged: unknown, not zero. Means are taken over the known days
    of their window, and the weighted means stay where they are on an unknown day. Raises
    `ValueError` for a load below zero.
    """
    if any(load is not None and load < 0 for load in loads):
        raise ValueError("a day cannot have fewer than zero throws")
    weighted = list(zip(_ewma(loads, ACUTE), _ewma(loads, CHRONIC), strict=True))
    return [_at(loads, last, *pair) for last, pair in enumerate(weighted)]


def _at(
    loads: Sequence[float | None], last: int, acute: float | None, chronic: float | None
) -> Averages:
    week, month = loads[max(0, last - 6) : last + 1], loads[max(0, last - 27) : last + 1]
    whole_month = len(month) == CHRONIC
    return Averages(
        acute=_mean(week) if len(week) == ACUTE else None,
        chronic=_mean(month) if whole_month else None,
        uncoupled=_mean(month[:-ACUTE]) if whole_month else None,
        ewma_acute=acute,
        ewma_chronic=chronic,
        unknown=sum(load is None for load in month),
    )


def _mean(loads: Sequence[float | None]) -> float | None:
    known = [load for load in loads if load is not None]
    return sum(known) / len(known) if known else None


def _ewma(loads: Sequence[float | None], days: int) -> list[float | None]:
    """Weighted means with weight 2 / (days + 1) on the newest day."""
    weight = 2 / (days + 1)
    so_far: float | None = None
    found: list[float | None] = []
    for load in loads:
        if load is not None:
            so_far = load if so_far is None else weight * load + (1 - weight) * so_far
        found.append(so_far)
    return found


def _ratio(part: float | None, whole: float | None) -> float | None:
    return part / whole if part is not None and whole else None
