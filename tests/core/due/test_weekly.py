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


def test_half_past_two_in_a_zone_that_skips_it_in_spring_and_shows_it_twice_in_autumn() -> None:
    # Europe/Berlin: 29 March and 25 October 2026, between 02:00 and 03:00 (IANA database).
    weekly = Weekly(SUNDAY, time(2, 30), "Europe/Berlin")

    assert instants(weekly, datetime(2026, 3, 23, tzinfo=UTC), 2) == [
        "2026-03-29T03:30+02:00",
        "2026-04-05T02:30+02:00",
    ]
    assert instants(weekly, datetime(2026, 10, 19, tzinfo=UTC), 2) == [
        "2026-10-25T02:30+02:00",
        "2026-11-01T02:30+01:00",
    ]


def test_the_instant_shown_twice_is_past_when_it_comes_again() -> None:
    weekly = Weekly(SUNDAY, time(2, 30), "Europe/Berlin")
    first = datetime(2026, 10, 25, 0, 30, tzinfo=UTC)

    for minutes in (0, 30, 60, 61, 120):
        assert weekly.last_due(first + timedelta(minutes=minutes)) == first


@pytest.mark.parametrize("zone", ["America/Phoenix", "Asia/Kolkata", "Pacific/Honolulu"])
@pytest.mark.parametrize("at", [time(2, 30), time(7)])
def test_a_zone_without_changes_shows_the_same_time_every_week(zone: str, at: time) -> None:
    found = instants(Weekly(SUNDAY, at, zone), datetime(2026, 1, 1, tzinfo=UTC), 53)

    assert {moment[11:] for moment in found} == {f"{at:%H:%M}{found[0][16:]}"}


def test_seven_in_the_morning_stays_seven_when_the_clocks_go_back() -> None:
    summary = Weekly(MONDAY, time(7), "America/Chicago")

    assert instants(summary, datetime(2026, 10, 24, tzinfo=UTC), 3) == [
        "2026-10-26T07:00-05:00",
        "2026-11-02T07:00-06:00",
        "2026-11-09T07:00-06:00",
    ]


@pytest.mark.parametrize(
    ("weekday", "start", "expected"),
    [
        (1, datetime(2028, 2, 23, tzinfo=UTC), ["2028-02-29", "2028-03-07"]),
        (0, datetime(2026, 12, 22, tzinfo=UTC), ["2026-12-28", "2027-01-04"]),
        (3, datetime(2026, 12, 26, tzinfo=UTC), ["2026-12-31", "2027-01-07"]),
    ],
    ids=["29 February", "the last Monday of a year", "31 December"],
)
def test_leap_days_and_year_ends_are_days_like_others(
    weekday: int, start: datetime, expected: list[str]
) -> None:
    found = instants(Weekly(weekday, time(7), "America/Chicago"), start, 2)

    assert [moment[:10] for moment in found] == expected


@pytest.mark.parametrize(
    ("day", "monday"),
    [
        (date(2027, 1, 1), date(2026, 12, 28)),  # 2026 has 53 ISO weeks
        (date(2027, 1, 4), date(2027, 1, 4)),
        (date(2024, 12, 30), date(2024, 12, 30)),  # in ISO week 2025-W01 already
        (date(2028, 2, 29), date(2028, 2, 28)),
    ],
)
def test_the_week_is_the_iso_week_of_the_local_day(day: date, monday: date) -> None:
    weekly = Weekly(day.weekday(), time(7), "America/Chicago")
    due = weekly.next_due(datetime.combine(day, time(0), UTC))

    assert weekly.week(due) == monday
    assert monday.isocalendar()[:2] == day.isocalendar()[:2]


def test_two_weeks_of_downtime_leave_the_newest_one_only() -> None:
    summary = Weekly(MONDAY, time(7), "America/Chicago")
    back = datetime(2026, 6, 16, 3, tzinfo=UTC)  # Monday 15 June, 22:00 in Chicago

    due = summary.last_due(back)

    assert due == datetime(2026, 6, 15, 12, tzinfo=UTC)
    assert summary.lapses(due) > back
