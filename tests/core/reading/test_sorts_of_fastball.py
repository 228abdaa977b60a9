"""Fastballs told by sort are summed, each sort once (common practice, no published source)."""

from datetime import datetime

import pytest

from core.reading import read
from core.reading.reader import explain
from tests.support.soundness import derivable, faults

POSTED = datetime.fromisoformat("2026-05-20T20:00")
TOLD_AGAIN = (
    "25 fb 8 cb 5 ch ins = 46 lanz. Hugo: 15 rectas y 5 sliders = 20 lanz. de hoy.; "
    "25 fb 8 cb 5 ch ins = 46 lanz. Hugo: 15 rectas y 5 sliders = 20 lanz. de hoy."
)


@pytest.mark.parametrize(
    ("text", "fastballs"),
    [("20 four seam 10 two seam 4 cb", 30), ("12 fastballs, 9 two seam, 7 sinkers", 28)],
)
def test_each_sort_counts_once(text: str, fastballs: int) -> None:
    (entry,) = read(text, POSTED).entries

    assert entry.fastball == fastballs


def test_a_sort_told_again_is_asked_about_and_not_added() -> None:
    reading, numbers = explain(TOLD_AGAIN, POSTED, "guardian", roster=("Leo", "Max"))

    assert [entry.fastball for entry in reading.entries] == [25, None]
    assert "15 rectas" in [unread.text for unread in reading.unread]
    assert list(faults(TOLD_AGAIN, POSTED, reading, numbers)) == []


def test_the_checker_takes_sums_of_the_typed_numbers_only() -> None:
    assert derivable(30, "20 four seam 10 two seam")
    assert derivable(28, "12 fb, 9 sinkers, 7 heaters", terms=3)
    assert not derivable(28, "12 fb, 9 sinkers, 7 heaters")
    assert not derivable(56, "12 fb, 9 sinkers, 7 heaters", terms=3)


def test_the_checker_takes_the_rest_of_a_whole() -> None:
    assert derivable(23, "pen. 35. 7 cb. 5 ch. rest fb")
    assert not derivable(24, "pen. 35. 7 cb. 5 ch. rest fb")
    assert not derivable(23, "pen. 35. 7 cb. 5 ch. fb")
