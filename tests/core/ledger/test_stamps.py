import pytest

from core.ledger.messages import newer


@pytest.mark.parametrize(
    ("stamp", "known", "is_newer"),
    [
        ("100.000000", None, True),
        ("100.000001", "100.000000", True),
        ("100.000000", "100.000000", False),
        ("99.999999", "100.000000", False),
        ("1000.0", "999.9", True),
        ("100.000000/101.000002", "100.000000/101.000001", True),
        ("100.000000/101.000001", "100.000000/101.000002", False),
        ("101.000000/101.000001", "100.000000/109.000001", True),
    ],
)
def test_the_later_stamp_wins_and_the_event_decides_within_a_second(
    stamp: str, known: str | None, is_newer: bool
) -> None:
    assert newer(stamp, known) is is_newer
