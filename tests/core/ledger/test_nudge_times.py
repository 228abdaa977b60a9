"""When a family is reminded of rest days: local times, whatever the clocks do.

The hours 08:00 and 20:00 are the usual ones of youth-sport policies on electronic contact.
Clock changes of 2026 and 2027 in America/Chicago: the IANA time-zone database.
"""

from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest

from core.ledger.rest_days import nudge_at

CHICAGO = "America/Chicago"


def local(text: str, zone: str = CHICAGO) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)


def reminded(on: str, logged: str, *, game: bool = False, zone: str = CHICAGO) -> str:
    at = nudge_at(date.fromisoformat(on), local(logged, zone), zone, game_tomorrow=game)
    return at.astimezone(ZoneInfo(zone)).isoformat(timespec="minutes")[:16]


@pytest.mark.parametrize(
    ("on", "logged", "game", "expected"),
    [
        ("2026-05-02", "2026-05-02T18:00", False, "2026-05-03T08:00"),
        ("2026-05-02", "2026-05-02T18:00", True, "2026-05-02T19:30"),
        ("2026-05-02", "2026-05-02T19:31", True, "2026-05-03T08:00"),
        ("2026-05-02", "2026-05-02T23:50", True, "2026-05-03T08:00"),
        ("2026-05-02", "2026-05-03T08:00", False, "2026-05-03T08:00"),
        ("2026-05-02", "2026-05-03T09:10", False, "2026-05-03T09:30"),
        ("2026-05-02", "2026-05-03T19:40", False, "2026-05-04T08:00"),
        ("2026-12-31", "2026-12-31T18:00", False, "2027-01-01T08:00"),
        ("2028-02-28", "2028-02-28T18:00", False, "2028-02-29T08:00"),
        ("2028-02-29", "2028-02-29T18:00", False, "2028-03-01T08:00"),
        ("2026-03-07", "2026-03-07T18:00", False, "2026-03-08T08:00"),  # clocks go forward
        ("2026-10-31", "2026-10-31T18:00", False, "2026-11-01T08:00"),  # and back
    ],
)
def test_the_reminder_comes_at_its_local_hour(
    on: str, logged: str, game: bool, expected: str
) -> None:
    assert reminded(on, logged, game=game) == expected


def test_a_zone_of_its_own_half_hours_has_the_same_hours() -> None:
    assert reminded("2026-05-02", "2026-05-02T18:00", zone="Asia/Kolkata") == "2026-05-03T08:00"
