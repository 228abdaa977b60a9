from datetime import date, datetime

import pytest

from core.ledger.days import day_is_unclear, outing_day

SATURDAY = date(2026, 5, 2)


@pytest.mark.parametrize(
    ("posted", "day"),
    [
        ("2026-05-02T20:10", SATURDAY),
        ("2026-05-03T00:30", SATURDAY),
        ("2026-05-03T03:59", SATURDAY),
        ("2026-05-03T04:00", date(2026, 5, 3)),
    ],
)
def test_a_line_before_four_belongs_to_the_day_before(posted: str, day: date) -> None:
    assert outing_day(datetime.fromisoformat(posted), None) == day


def test_a_named_day_wins_over_the_small_hours() -> None:
    named = date(2026, 4, 29)

    assert outing_day(datetime.fromisoformat("2026-05-03T01:00"), named) == named


@pytest.mark.parametrize(
    ("posted", "named", "kind", "unclear"),
    [
        ("2026-05-03T09:00", False, "game", True),
        ("2026-05-03T11:59", False, "game", True),
        ("2026-05-03T12:00", False, "game", False),
        ("2026-05-03T03:00", False, "game", False),
        ("2026-05-03T09:00", True, "game", False),
        ("2026-05-03T09:00", False, "bullpen", False),
        ("2026-05-03T09:00", False, None, False),
    ],
)
def test_only_a_morning_game_without_a_day_is_asked(
    posted: str, named: bool, kind: str | None, unclear: bool
) -> None:
    assert day_is_unclear(datetime.fromisoformat(posted), named, kind) is unclear
