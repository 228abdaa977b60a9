"""Weekly instants where clocks change and where they do not.

Dates of the changes: the IANA time-zone database (2026: America/Chicago 8 March and
1 November, Australia/Lord_Howe 4 October by half an hour; Phoenix and Kolkata never change).
"""

from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise

import pytest

from core.due.weekly import Weekly

MONDAY, WEDNESDAY, SUNDAY = 0, 2, 6


def instants(weekly: Weekly, start: datetime, weeks: int) -> list[str]:
    found, moment = [], start
    for _ in range(weeks):
        moment = weekly.next_due(moment)
        found.append(moment.astimezone(weekly.zone).isoformat(timespec="minutes"))
    return found


def test_seven_in_the_morning_stays_seven_when_the_clocks_go_forward() -> None:
    summary = Weekly(MONDAY, time(7), "America/Chicago")

    assert instants(summary, datetime(2026, 2, 28, tzinfo=UTC), 3) == [
        "2026-03-02T07:00-06:00",
        "2026-03-09T07:00-05:00",
        "2026-03-16T07:00-05:00",
    ]


def test_a_time_that_the_clocks_skip_comes_once_just_after() -> None:
    skipped = Weekly(SUNDAY, time(2, 30), "America/Chicago")

    assert instants(skipped, datetime(2026, 3, 2, tzinfo=UTC), 2) == [
        "2026-03-08T03:30-05:00",
        "2026-03-15T02:30-05:00",
    ]


def test_a_time_that_the_clocks_show_twice_comes_once() -> None:
    twice = Weekly(SUNDAY, time(1, 30), "America/Chicago")

    assert instants(twice, datetime(2026, 10, 26, tzinfo=UTC), 2) == [
        "2026-11-01T01:30-05:00",
        "2026-11-08T01:30-06:00",
    ]


def test_a_change_of_half_an_hour_is_followed() -> None:
    weekly = Weekly(SUNDAY, time(7), "Australia/Lord_Howe")

    assert instants(weekly, datetime(2026, 9, 28, tzinfo=UTC), 2) == [
        "2026-10-04T07:00+11:00",
        "2026-10-11T07:00+11:00",
    ]


@pytest.mark.parametrize(("zone", "offset"), [("America/Phoenix", -7.0), ("Asia/Kolkata", 5.5)])
def test_a_zone_without_changes_keeps_its_instant_all_year(zone: str, offset: float) -> None:
    weekly = Weekly(MONDAY, time(7), zone)
    moment = datetime(2026, 1, 1, tzinfo=UTC)

    for _ in range(53):
        moment = weekly.next_due(moment)
        assert (moment + timedelta(hours=offset)).time() == time(7)


def test_the_last_instant_is_the_one_just_passed_to_the_second() -> None:
    summary = Weekly(MONDAY, time(7), "America/Chicago")
    due = datetime(2026, 6, 1, 12, tzinfo=UTC)

    assert summary.last_due(due) == due
    assert summary.last_due(due - timedelta(seconds=1)) == due - timedelta(days=7)


def test_a_late_one_lapses_when_the_day_after_is_over() -> None:
    summary = Weekly(MONDAY, time(7), "America/Chicago")
    due = datetime(2026, 6, 1, 12, tzinfo=UTC)

    assert summary.lapses(due) == datetime(2026, 6, 3, 5, tzinfo=UTC)  # Tuesday 24:00 in Chicago


@pytest.mark.parametrize(
    ("now", "week"),
    [
        (datetime(2027, 1, 2, tzinfo=UTC), date(2026, 12, 28)),  # ISO 8601: still 2026-W53
        (datetime(2028, 3, 2, tzinfo=UTC), date(2028, 2, 28)),  # the week of 29 February
    ],
)
def test_the_period_is_the_monday_of_the_iso_week(now: datetime, week: date) -> None:
    reminder = Weekly(WEDNESDAY, time(16), "America/Chicago")

    due = reminder.last_due(now)

    assert due is not None
    assert reminder.week(due) == week


def test_twenty_years_of_mondays_are_each_a_week_after_the_last() -> None:
    summary = Weekly(MONDAY, time(7), "Europe/Berlin")
    moment = datetime(2026, 1, 1, tzinfo=UTC)

    days = []
    for _ in range(20 * 52):
        moment = summary.next_due(moment)
        days.append(summary.local_day(moment))

    assert {after - before for before, after in pairwise(days)} == {timedelta(days=7)}
