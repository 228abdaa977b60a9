"""The interval of a proportion: what a handful of pitches can and cannot say."""

from math import sqrt

#: The 97.5 % quantile of the normal distribution: a 95 % interval.
Z_95 = 1.959963984540054


def wilson(hits: int, trials: int, z: float = Z_95) -> tuple[float, float]:
    """Wilson's score interval of `hits` out of `trials`, as fractions of 1.

    Source: E. B. Wilson, "Probable inference, the law of succession, and statistical
    inference", J Am Stat Assoc 22 (1927) 209-212. One pitcher's outings are not independent
    trials, so the true uncertainty is larger.

    Raises `ValueError` unless 0 <= hits <= trials and trials > 0.
    """
    if trials <= 0 or not 0 <= hits <= trials:
        raise ValueError(f"{hits} of {trials} is no proportion")
    share = hits / trials
    spread = z * sqrt(share * (1 - share) / trials + z * z / (4 * trials * trials))
    centre = share + z * z / (2 * trials)
    scale = 1 + z * z / trials
    low = 0.0 if hits == 0 else (centre - spread) / scale
    high = 1.0 if hits == trials else (centre + spread) / scale
    return max(0.0, low), min(1.0, high)
