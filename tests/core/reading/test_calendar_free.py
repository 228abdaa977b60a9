"""Games and practices as staff type them in a hurry, and the talk that is none of it."""

from datetime import date, datetime, time

import pytest

from core.reading.calendar_free import free_calendar_line
from core.reading.calendar_lines import Planned, at_hour, calendar_line

#: Wednesday.
POSTED = datetime.fromisoformat("2026-05-06T18:00")
SAT = date(2026, 5, 9)


@pytest.mark.parametrize(
    ("text", "planned"),
    [
        ("game saturday 2pm Ridge", Planned(SAT, time(14), None, "Ridge")),
        ("game sat at Summit 10am", Planned(SAT, time(10), None, "Summit")),
        ("sat 10am vs Summit", Planned(SAT, time(10), None, "Summit")),
        ("we play Ridge saturday 2pm", Planned(SAT, time(14), None, "Ridge")),
        ("game vs Summit sat 10am", Planned(SAT, time(10), None, "Summit")),
        ("Ridge game saturday 2pm", Planned(SAT, time(14), None, "Ridge")),
        ("home game 5/9 Pine Hill 14U 2pm", Planned(SAT, time(14), None, "Pine Hill 14U")),
        ("game sat ridge 2pm", Planned(SAT, time(14), None, "ridge")),
        ("juego sab 2pm Ridge", Planned(SAT, time(14), None, "Ridge")),
    ],
)
def test_the_words_may_come_in_any_order(text: str, planned: Planned) -> None:
    assert calendar_line(text, POSTED) is None
    found = free_calendar_line(text, POSTED)
    assert found is not None
    assert found.planned == (planned,)


@pytest.mark.parametrize("text", ["game sat at Summit 10", "game sat 10 vs Summit"])
def test_a_bare_number_is_asked_about_and_becomes_the_hour(text: str) -> None:
    found = calendar_line(text, POSTED) or free_calendar_line(text, POSTED)
    assert found is not None
    assert found.hour == 10
    assert at_hour(found, time(10), POSTED).planned == (Planned(SAT, time(10), None, "Summit"),)


@pytest.mark.parametrize(
    "text",
    [
        "game sat was rough",
        "we play sat",
        "great game saturday Leo",
        "sat 10am vs Summit Leo starts",
        "can we play Ridge saturday 2pm",
        "plan 3 games saturday 60 each",
        "plan sat 2 games 75 each",
        "game sat 62p vs Summit",
        "today 50 pitches 6 curves vs Summit",
        "game sat 2pm Ridge?",
        "team dinner sat 6pm",
        "practice tue 5pm bring balls",
        "game yesterday Ridge 2pm",
    ],
)
def test_talk_and_logs_are_no_line_about_the_calendar(text: str) -> None:
    assert free_calendar_line(text, POSTED) is None


@pytest.mark.parametrize(
    "text", ["saturday 2pm game cancelled", "the 2pm game sat is rained out", "sat 2pm game is off"]
)
def test_a_game_is_called_off_in_any_order(text: str) -> None:
    found = calendar_line(text, POSTED) or free_calendar_line(text, POSTED)
    assert found is not None
    assert found.off
    assert found.planned == (Planned(SAT, time(14)),)


@pytest.mark.parametrize(
    "text", ["sat game moved to 11am", "practice moved to 5pm tue", "sat game changed to 11am"]
)
def test_a_moved_game_is_answered_and_nothing_is_guessed(text: str) -> None:
    found = free_calendar_line(text, POSTED)
    assert found is not None
    assert found.moved
    assert found.planned == ()


def test_a_practice_that_was_moved_without_a_day_is_talk() -> None:
    assert free_calendar_line("practice was moved", POSTED) is None
