"""What the staff say of the calendar, and everything that is not that."""

from datetime import date, datetime, time

import pytest

from core.reading.calendar_lines import (
    GAME,
    PRACTICE,
    CalendarLine,
    Planned,
    SourceLine,
    calendar_line,
    source_line,
)

#: Wednesday.
POSTED = datetime.fromisoformat("2026-05-06T18:00")
SAT, SUN = date(2026, 5, 9), date(2026, 5, 10)
TEN = time(10)


@pytest.mark.parametrize(
    ("text", "kind", "planned"),
    [
        ("game sat 10am vs Summit", GAME, [Planned(SAT, TEN, None, "Summit")]),
        ("Game Saturday at 10:00 am vs. St. Mary's", GAME, [Planned(SAT, TEN, None, "St. Mary's")]),
        ("game 5/9 10:30 vs Summit 14U", GAME, [Planned(SAT, time(10, 30), None, "Summit 14U")]),
        ("we have a game tomorrow 5:30pm at Ridge", GAME,
         [Planned(date(2026, 5, 7), time(17, 30), None, "Ridge")]),
        ("scrimmage wed 6pm", GAME, [Planned(date(2026, 5, 6), time(18))]),
        ("game sun at noon", GAME, [Planned(SUN, time(12))]),
        ("doubleheader sun 9am vs Ridge", GAME,
         [Planned(SUN, time(9), None, "Ridge"), Planned(SUN, None, None, "Ridge")]),
        ("games sat 9am and 11:30am", GAME, [Planned(SAT, time(9)), Planned(SAT, time(11, 30))]),
        ("tournament sat-sun at Pine Hill", GAME,
         [Planned(SAT, title="Pine Hill"), Planned(SUN, title="Pine Hill")]),
        ("practice tue 5pm", PRACTICE, [Planned(date(2026, 5, 12), time(17))]),
        ("practice tue 5-7pm", PRACTICE, [Planned(date(2026, 5, 12), time(17), time(19))]),
        ("practice tue 11-1pm", PRACTICE, [Planned(date(2026, 5, 12), time(11), time(13))]),
        ("juego sab 10am vs Summit", GAME, [Planned(SAT, TEN, None, "Summit")]),
    ],
)  # fmt: skip
def test_what_is_put_on_the_calendar(text: str, kind: str, planned: list[Planned]) -> None:
    assert calendar_line(text, POSTED) == CalendarLine(kind, tuple(planned))


@pytest.mark.parametrize(
    "text",
    [
        "no game sat",
        "game sat cancelled",
        "game sat is off",
        "game sat rained out!",
        "cancel the game sat",
        "game sat canceled",
    ],
)
def test_what_is_called_off(text: str) -> None:
    assert calendar_line(text, POSTED) == CalendarLine(GAME, (Planned(SAT),), off=True)


@pytest.mark.parametrize(
    "text",
    [
        "game sat 62p 11cb vs Summit",
        "62p 11cb 4.1ip vs Summit",
        "game sat vs Summit, Leo 45",
        "plan sat 9am 80, sat 2pm 70",
        "practice today, elbow hurts",
        "practice was good today",
        "game day!",
        "game yesterday vs Summit",
        "game vs Summit",
        "game sat?",
        "is there a game sat?",
        "who can throw saturday",
        "no game",
        "game sat 10am vs a team that nobody has ever heard of",
    ],
)
def test_what_is_no_line_about_the_calendar(text: str) -> None:
    assert calendar_line(text, POSTED) is None


@pytest.mark.parametrize(
    ("text", "unclear"),
    [
        ("game sat 10 vs Summit", "10"),
        ("game next saturday 9am", "next saturday"),
        ("practice tue 7pm-5pm", "17:00"),
    ],
)
def test_what_fits_two_readings_is_asked_about(text: str, unclear: str) -> None:
    found = calendar_line(text, POSTED)

    assert found is not None
    assert found.unclear == unclear
    assert not any(one.at for one in found.planned)


@pytest.mark.parametrize(
    ("text", "on"),
    [
        ("game wed 10am vs Summit", date(2026, 5, 13)),
        ("game wed 7pm vs Summit", date(2026, 5, 6)),
        ("game wed vs Summit", date(2026, 5, 6)),
        ("game today 10am vs Summit", date(2026, 5, 6)),
        ("game 5/6 10am vs Summit", date(2026, 5, 6)),
    ],
)
def test_a_weekday_whose_hour_is_past_is_the_next_one(text: str, on: date) -> None:
    found = calendar_line(text, POSTED)

    assert found is not None
    assert [one.on for one in found.planned] == [on]


def test_every_tuesday_is_weekly_and_a_team_may_be_named() -> None:
    found = calendar_line("practice every tue 5pm for 14U", POSTED)

    assert found is not None
    assert (found.weekly, found.team) == (True, "14U")


@pytest.mark.parametrize(
    ("text", "address"),
    [
        ("calendar https://example.org/a.ics", "https://example.org/a.ics"),
        ("calendar <https://example.org/a.ics>", "https://example.org/a.ics"),
        ("team calendar: <webcal://example.org/a.ics|example.org>", "https://example.org/a.ics"),
        ("stop the calendar", ""),
    ],
)
def test_an_address_to_read_the_calendar_from(text: str, address: str) -> None:
    assert source_line(text) == SourceLine(address)


def test_an_address_in_talk_is_no_calendar() -> None:
    assert source_line("look at https://example.org/a.ics") is None
