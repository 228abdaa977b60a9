from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.local.stamps import Ids, Stamps, moment_of

NOON = datetime(2026, 5, 2, 12, tzinfo=UTC)


@settings(max_examples=50)
@given(st.lists(st.integers(min_value=-5_000_000, max_value=5_000_000), max_size=20))
def test_stamps_grow_even_when_the_clock_stands_still_or_goes_back(steps: list[int]) -> None:
    clock = iter(NOON + timedelta(microseconds=step) for step in steps)
    stamps = Stamps(lambda: next(clock))

    given_out = [moment_of(stamps.next()) for _ in steps]

    assert given_out == sorted(set(given_out))


def test_a_stamp_is_the_simulated_time_in_microsecond_form() -> None:
    moment = datetime(2026, 5, 2, 12, 0, 0, 250, tzinfo=UTC)

    assert Stamps(lambda: moment).next() == f"{int(NOON.timestamp())}.000250"


def test_a_clock_without_a_zone_is_refused() -> None:
    naive = NOON.replace(tzinfo=None)

    with pytest.raises(ValueError, match="zone"):
        Stamps(lambda: naive).next()


@pytest.mark.parametrize("wrong", ["", "1", "1.5", "x.000001", "1767225600.0000010"])
def test_what_is_no_stamp_is_refused(wrong: str) -> None:
    with pytest.raises(ValueError, match="timestamp"):
        moment_of(wrong)


def test_two_workspaces_share_no_id() -> None:
    first, second = Ids(1), Ids(2)

    assert not {first.next("U") for _ in range(100)} & {second.next("U") for _ in range(100)}
