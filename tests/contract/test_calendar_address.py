"""A calendar's address typed by the staff: read by the job, said once, read again each day."""

from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from sqlmodel import select

from bot.local.server import StandIn
from core.calendar.days import entries
from core.calendar.ics import CalendarError
from core.model import CalendarSource
from core.store import Store
from tests.support.club import Club, club_at
from tests.support.hours import chicago, go_to
from tests.support.ics import calendar, event, game
from tests.support.workspace import AppHost

ADDRESS = "https://calendar.example.org/secret-key.ics"
SEASON = calendar(
    game("s", ":20260509T150000Z", "Herons vs Summit"),
    event("UID:p", "DTSTART:20260505T220000Z", "RRULE:FREQ=WEEKLY;COUNT=3", "SUMMARY:Practice"),
    event("UID:d", "DTSTART:20260506T220000Z", "SUMMARY:Team picnic"),
)


class Host:
    """What stands at the address; none: nothing answers."""

    def __init__(self) -> None:
        self.content: bytes | None = SEASON
        self.asked: list[str] = []

    def __call__(self, address: str) -> bytes:
        self.asked.append(address)
        if self.content is None:
            raise CalendarError("no answer")
        return self.content


@contextmanager
def club_with(stand_in: StandIn, app_host: AppHost, store: Store, host: Host) -> Iterator[Club]:
    with club_at(stand_in, app_host, store, fetch=host) as club:
        yield club


@pytest.fixture
def host() -> Host:
    return Host()


@pytest.fixture
def club(stand_in: StandIn, app_host: AppHost, store: Store, host: Host) -> Iterator[Club]:
    with club_with(stand_in, app_host, store, host) as running:
        yield running


def look(club: Club) -> None:
    """Let the job do what is due, and the outbox say it."""
    club.bot.calendars.run(club.clock.now())
    club.bot.calendars.finish()
    club.settle()


def titles(club: Club) -> list[str]:
    with club.store.reading() as session:
        first, last = chicago("05-01", "12:00").date(), chicago("06-30", "12:00").date()
        return [one.title for one in entries(session, [1], first, last)]


def test_an_address_is_read_by_the_job_and_what_was_found_is_said(club: Club) -> None:
    club.say("dana", f"calendar <{ADDRESS}>", club.staff)
    look(club)

    assert titles(club) == ["Practice", "Herons vs Summit", "Practice", "Practice"]
    promised, found = club.in_staff_channel()
    assert promised.startswith("I read that calendar for Herons within a minute or two")
    assert found == (
        "I read the calendar of Herons: 1 game and 3 practices. 1 event left out: neither “game”, "
        "“vs” nor “practice” in the title. Next: practice Tue 5 May, 5 pm (Practice). I read it "
        "again once a day; “stop the calendar” ends that."
    )
    assert not any("secret-key" in text for text in club.in_staff_channel())


def test_it_is_read_again_the_next_day_and_says_nothing_more(club: Club, host: Host) -> None:
    club.say("dana", f"calendar {ADDRESS}", club.staff)
    look(club)
    host.content = calendar(game("s", ":20260510T150000Z", "Herons vs Summit"))

    look(club)
    club.clock.set(chicago("05-03", "18:30"))
    look(club)

    assert host.asked == [ADDRESS, ADDRESS]
    assert titles(club) == ["Herons vs Summit"]
    assert len(club.in_staff_channel()) == 2


def test_a_failure_is_said_once_and_keeps_what_stands(club: Club, host: Host) -> None:
    club.say("dana", f"calendar {ADDRESS}", club.staff)
    look(club)
    host.content = None

    for hour in ("18:30", "21:00", "23:30"):
        club.clock.set(chicago("05-03", hour))
        look(club)

    assert len(titles(club)) == 4
    assert club.in_staff_channel()[-1] == (
        "I could not read the calendar of Herons: its server gave no answer. Check the address. "
        "What came from it before stays on the calendar. I try again every two hours and say so "
        "when it works. “stop the calendar” ends that."
    )
    assert len(club.in_staff_channel()) == 3


@pytest.mark.parametrize("how", ["line", "deletion"])
def test_it_ends_with_a_line_or_with_the_deletion_of_the_first_one(
    club: Club, host: Host, how: str
) -> None:
    said = club.say("dana", f"calendar {ADDRESS}", club.staff)
    look(club)

    if how == "line":
        club.say("dana", "stop the calendar", club.staff)
    else:
        club.delete(said)
    club.clock.set(chicago("05-04", "18:30"))
    look(club)

    assert host.asked == [ADDRESS]
    assert titles(club) == []


def test_two_processes_read_it_once(club: Club, host: Host) -> None:
    club.say("dana", f"calendar {ADDRESS}", club.staff)
    with club.store.writing() as session:
        source = session.exec(select(CalendarSource)).one()
        # Another process has just begun.
        source.lease_until = chicago("05-02", "18:05")

    look(club)

    assert host.asked == []


def test_a_plain_http_address_is_refused_in_words(club: Club, host: Host) -> None:
    club.say("dana", "calendar http://calendar.example.org/a.ics", club.staff)
    look(club)

    assert club.in_staff_channel()[-1].startswith(
        "I changed nothing: a calendar's address must begin with https://"
    )
    assert host.asked == []


def test_the_listener_fetches_nothing(club: Club, host: Host) -> None:
    club.ws.say(club.people["dana"], club.staff, f"calendar {ADDRESS}")
    club.ws.settle()

    assert host.asked == []
    go_to(club, chicago("05-02", "19:00"))
    club.bot.calendars.finish()
    assert host.asked == [ADDRESS]
