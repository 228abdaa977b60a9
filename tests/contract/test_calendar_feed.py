"""The calendar that families and staff carry, against the rules of RFC 5545 (IETF, 2009)."""

from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar
from sqlmodel import Session, select

from bot.calendar_command import CommandError, export_calendar
from bot.calendar_file import as_ics
from bot.settings import Settings
from core.calendar.feed import Item, ItemKind, feed_of_person, feed_of_team
from core.ledger.binding import Books
from core.model import Person, Team
from core.rulebooks import load_books
from tests.support.club import Club
from tests.support.hours import chicago

BOOKS: Books = load_books
#: Words that would tell of pain, an injury or why somebody does not throw.
TELLING = ("pain", "hurt", "elbow", "hold", "injur", "clinic", "clear", "doctor", "sore")


def team_items(club: Club) -> list[Item]:
    with club.store.reading() as session:
        team = session.exec(select(Team)).one()
        return feed_of_team(session, team, club.clock.now(), BOOKS)


def _person(session: Session, name: str) -> Person:
    return session.exec(select(Person).where(Person.name == name)).one()


def family_items(club: Club, name: str) -> list[Item]:
    with club.store.reading() as session:
        return feed_of_person(session, _person(session, name), club.clock.now(), BOOKS)


def events(club: Club, items: list[Item]) -> list[Any]:
    """The events of the file as the library reads them back."""
    parsed = Calendar.from_ical(as_ics(items, "Herons", club.clock.now()))
    assert parsed.errors == []
    return list(parsed.walk("VEVENT"))


def told(items: list[Item]) -> list[str]:
    return [f"{one.whose} {one.kind} {one.first:%m-%d}" for one in items if one.is_of_an_arm]


def test_the_rest_days_of_an_outing_are_whole_days(club: Club) -> None:
    # Pitch Smart (MLB and USA Baseball), 17-18: 62 pitches on Sat 2 May, 3 days of rest.
    club.say("mateo", "62p 11cb vs Summit")

    found = events(club, family_items(club, "Elena Cruz"))

    assert [(one.start, one.end) for one in found] == [
        (date(2026, 5, 2 + n), date(2026, 5, 3 + n)) for n in (1, 2, 3)
    ]
    assert {str(one["SUMMARY"]) for one in found} == {"Mateo Cruz: rest day"}
    assert {str(one["TRANSP"]) for one in found} == {"TRANSPARENT"}


def test_a_family_sees_its_own_children_alone_and_the_staff_everybody(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    club.say("priya", "Leo 45 pitches 6 cb")

    assert {one.whose for one in family_items(club, "Carmen Ortiz")} == {"Leo Ortiz"}
    assert {one.whose for one in family_items(club, "Elena Cruz")} == {"Mateo Cruz"}
    assert {one.whose for one in team_items(club)} == {"Leo Ortiz", "Mateo Cruz"}
    assert family_items(club, "Priya Venn") == []


def test_an_arm_that_must_not_throw_is_named_without_a_word_of_why(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit. elbow hurts 6/10")

    found = family_items(club, "Elena Cruz")
    text = as_ics([*found, *team_items(club)], "Herons", club.clock.now()).decode().casefold()

    assert {one.kind for one in found} == {ItemKind.NO_THROWING}
    assert found[0].first == date(2026, 5, 2)
    assert [word for word in TELLING if word in text] == []


def test_a_pitcher_without_consent_is_in_no_calendar(club: Club) -> None:
    club.say("dana", "Ben 40 pitches 4 cb vs Summit", club.staff)

    assert told(team_items(club)) == []
    assert told(family_items(club, "Joan Oduya")) == []


def test_games_and_practices_have_their_times_and_called_off_ones_say_so(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    club.say("dana", "game sat 10am vs Summit", club.staff)
    club.say("dana", "practice tue 5-7pm", club.staff)
    before = {str(one["UID"]): one for one in events(club, team_items(club))}

    club.say("dana", "no game sat", club.staff)
    after = {str(one["UID"]): one for one in events(club, team_items(club))}

    assert sorted(str(one["SUMMARY"]) for one in before.values()) == [
        "Herons: game (Summit)",
        "Herons: practice",
    ]
    # RFC 5545, 3.8.4.7 and 3.8.7.4: the same event has the same UID, and SEQUENCE grows.
    assert before.keys() == after.keys()
    (uid,) = [key for key, one in after.items() if str(one["STATUS"]) == "CANCELLED"]
    assert int(after[uid]["SEQUENCE"]) > int(before[uid]["SEQUENCE"])
    assert before[uid].start == chicago("05-09", "10:00")
    (practice,) = [one for key, one in after.items() if key != uid]
    assert practice.end - practice.start == timedelta(hours=2)


def test_a_game_that_moves_keeps_its_uid_and_counts_the_change(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    said = club.say("dana", "game sat 10am vs Summit", club.staff)
    (before,) = events(club, team_items(club))

    club.edit(said, "game sun 10am vs Summit")
    (after,) = events(club, team_items(club))

    assert str(before["UID"]) == str(after["UID"])
    assert int(after["SEQUENCE"]) > int(before["SEQUENCE"])
    assert after["DTSTAMP"].dt > before["DTSTAMP"].dt


def test_the_file_keeps_to_the_rules_of_the_format(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    club.say("dana", "game sat 10am vs Niños de la Bahía Grande", club.staff)
    club.say("priya", "Leo 45 pitches yesterday", club.log)
    raw = as_ics(team_items(club), "Herons; the first, and only", club.clock.now())

    lines = raw.split(b"\r\n")
    # 3.1: CRLF ends every line, and a line holds at most 75 octets.
    assert raw.endswith(b"END:VCALENDAR\r\n")
    assert b"\n" not in raw.replace(b"\r\n", b"")
    assert max(map(len, lines)) <= 75
    # 3.6: VERSION and PRODID are required, once each.
    assert sorted(line for line in lines if line.startswith((b"VERSION", b"PRODID"))) == [
        b"PRODID:-//Spinkeeper//Pitching log//EN",
        b"VERSION:2.0",
    ]
    # 3.3.11: a semicolon and a comma in a text are escaped.
    assert b"X-WR-CALNAME:Herons\\; the first\\, and only" in lines
    found = events(club, team_items(club))
    # 3.6.1: UID and DTSTAMP are required; 3.8.4.7: a UID is globally unique.
    assert len({str(one["UID"]) for one in found}) == len(found) > 1
    for one in found:
        # 3.8.7.2: DTSTAMP is in UTC. 3.8.2.2: DTEND is later than DTSTART.
        assert one["DTSTAMP"].to_ical()[-1:] == b"Z"
        assert "DTEND" not in one or one.end > one.start


def test_the_same_record_gives_the_same_events(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    before = {one.uid for one in family_items(club, "Elena Cruz")}

    club.clock.set(chicago("05-03", "09:00"))

    assert {one.uid for one in family_items(club, "Elena Cruz")} == before


def test_the_command_writes_a_file_that_only_its_owner_reads(club: Club, tmp_path: Path) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    file = tmp_path / "mateo.ics"
    settings = Settings(database_url=str(club.store.engine.url))

    said = export_calendar(settings, "", "elena cruz", file, club.clock.now())

    assert said == (
        f"{file}: 3 events for Elena Cruz. The file shows how things stand now; export it again "
        "when they change. It is about a minor: send it to that family alone."
    )
    assert file.stat().st_mode & 0o777 == 0o600
    assert len(Calendar.from_ical(file.read_bytes()).walk("VEVENT")) == 3


@pytest.mark.parametrize(
    ("team", "person", "said"),
    [
        ("", "", "Say for whom"),
        ("Herons", "Elena Cruz", "Say for whom"),
        ("", "Nobody Known", "nobody is called “Nobody Known”"),
        ("Owls", "", "Which team is “Owls”?"),
    ],
)
def test_whom_it_is_for_must_be_clear(
    club: Club, tmp_path: Path, team: str, person: str, said: str
) -> None:
    settings = Settings(database_url=str(club.store.engine.url))

    with pytest.raises(CommandError) as wrong:
        export_calendar(settings, team, person, tmp_path / "a.ics", club.clock.now())

    assert said in str(wrong.value)
