"""The sites of the throwing arm, by the names that the reader gives them."""

from datetime import datetime

import pytest

from core.pain import ARM_SITES, Report, stops_throwing
from core.reading import read

POSTED = datetime.fromisoformat("2026-05-02T18:00")


@pytest.mark.parametrize(
    "typed",
    ["elbow", "shoulder", "forearm", "arm", "upper arm", "bicep", "biceps", "tricep", "triceps"],
)
def test_pain_in_any_part_of_the_throwing_arm_stops_throwing(typed: str) -> None:
    (entry,) = read(f"{typed} hurts 4/10", POSTED).entries

    assert entry.pain is not None
    (pain,) = entry.pain
    assert stops_throwing(Report(pain.site, pain.severity, pain.side, pain.sore), "R")


@pytest.mark.parametrize("site", sorted(ARM_SITES))
def test_every_site_of_the_arm_is_one_that_the_reader_gives(site: str) -> None:
    (entry,) = read(f"{site} hurts 4/10", POSTED).entries

    assert entry.pain is not None
    assert [pain.site for pain in entry.pain] == [site]


def test_a_knee_does_not_stop_an_arm() -> None:
    assert not stops_throwing(Report("knee", 4), "R")
