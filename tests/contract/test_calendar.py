"""The team's calendar by lines: put on, changed, called off, undone; and what follows from it."""

import pytest
from sqlmodel import select

from core.calendar.days import entries, is_game_day
from core.model import AuditEntry, CalendarEntry, Membership, Team, key
from tests.support.club import Club
from tests.support.hours import chicago, go_to
from tests.support.taps import answer_to, tap

SATURDAY, SUNDAY = chicago("05-09", "00:00").date(), chicago("05-10", "00:00").date()


def on_calendar(club: Club) -> list[str]:
    """What stands on the calendar, as "kind day time title"."""
    with club.store.reading() as session:
        team = session.exec(select(Team)).one()
        rows = entries(session, [key(team)], chicago("05-01", "12:00").date(), SUNDAY)
        return [
            f"{one.kind} {one.on:%m-%d} {one.at:%H:%M} {one.title}".strip()
            if one.at
            else f"{one.kind} {one.on:%m-%d} {one.title}".strip()
            for one in rows
        ]


def test_the_staff_put_a_game_on_the_calendar_and_read_it_back(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))

    club.say("dana", "game sat 10am vs Summit", club.staff)

    assert on_calendar(club) == ["game 05-09 10:00 Summit"]
    assert club.in_staff_channel() == [
        "On the calendar of Herons: game Sat 9 May, 10 am, vs Summit."
    ]


def test_it_works_in_a_direct_message_and_undo_takes_it_back(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    club.tell_bot("dana", "practice tue 5-7pm")
    assert on_calendar(club) == ["practice 05-05 17:00"]

    tap(club, "dana", answer_to(club, "dana"), "Undo")

    assert on_calendar(club) == []


def test_an_edit_moves_the_game_and_a_deletion_takes_it_off(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    said = club.say("dana", "game sat 10am vs Summit", club.staff)

    club.edit(said, "game sun 2pm vs Summit")
    moved = on_calendar(club)
    with club.store.reading() as session:
        row = session.exec(select(CalendarEntry)).one()
    club.delete(said)

    assert moved == ["game 05-10 14:00 Summit"]
    assert row.sequence > 0
    assert on_calendar(club) == []


def test_a_game_is_called_off_and_the_undoing_of_that_puts_it_back(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    club.say("dana", "game sat 10am vs Summit", club.staff)

    off = club.say("dana", "no game sat", club.staff)
    assert on_calendar(club) == []
    assert club.in_staff_channel()[-1] == (
        "Called off for Herons: game Sat 9 May, 10 am, vs Summit."
    )
    club.delete(off)

    assert on_calendar(club) == ["game 05-09 10:00 Summit"]


def test_the_same_game_typed_twice_is_one_game(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    club.say("dana", "game sat 10am vs Summit", club.staff)

    club.say("dana", "game sat 10am", club.staff)

    assert on_calendar(club) == ["game 05-09 10:00 Summit"]
    assert "is on the calendar already" in club.in_staff_channel()[-1]


def test_no_game_sat_said_on_a_saturday_without_one_means_the_next(club: Club) -> None:
    club.say("dana", "game 5/9 10am vs Summit", club.staff)

    club.say("dana", "no game sat", club.staff)

    assert on_calendar(club) == []


def test_nothing_to_call_off_is_said_so(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))

    club.say("dana", "no game sat", club.staff)

    (text,) = club.in_staff_channel()
    assert text.startswith("I changed nothing: there is no such game on the calendar on Sat 9 May.")


def test_a_number_that_may_be_a_count_or_an_hour_is_asked_about(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))

    club.say("dana", "game sat 10 vs Summit", club.staff)

    assert on_calendar(club) == []
    asked = club.in_staff_channel()[-1]
    assert asked.startswith("I changed nothing yet: is “10” the time, 10 am or 10 pm?")
    assert "a count needs the pitcher's name" in asked


def test_a_day_that_fits_two_readings_is_asked_about(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))

    club.say("dana", "game next saturday 9am", club.staff)

    assert club.in_staff_channel()[-1].startswith(
        "I changed nothing: “next saturday” is not clear."
    )


@pytest.mark.parametrize("who", ["mateo", "elena", "priya"])
def test_nobody_but_the_staff_keeps_the_calendar(club: Club, who: str) -> None:
    club.clock.set(chicago("05-04", "09:00"))

    club.tell_bot(who, "game sat 10am vs Summit")

    assert club.heard(who)[-1].startswith("Only the staff can set this.")
    assert on_calendar(club) == []


def test_the_same_words_in_the_log_channel_are_talk(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))

    club.say("dana", "game sat 10am vs Summit")

    assert on_calendar(club) == []
    assert club.in_log_channel() == []


def test_a_log_line_in_the_staff_channel_stays_a_log_line(club: Club) -> None:
    club.say("dana", "game sat Mateo 62p 11cb vs Summit", club.staff)

    assert on_calendar(club) == []
    assert "62 pitches" in club.in_staff_channel()[-1]


def test_a_coach_of_two_teams_is_asked_which(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    with club.store.writing() as session:
        team = session.exec(select(Team)).one()
        staff = session.exec(select(Membership).where(Membership.role == "coach")).first()
        assert staff is not None
        other = Team(
            workspace_id=team.workspace_id, name="Herons 14U", time_zone=team.time_zone,
            log_channel="C8", staff_channel="C9",
        )  # fmt: skip
        session.add(other)
        session.flush()
        session.add(
            Membership(
                workspace_id=team.workspace_id, team_id=key(other), person_id=staff.person_id,
                role="coach",
            )
        )  # fmt: skip

    club.tell_bot("dana", "game sat 10am vs Summit")
    asked = club.heard("dana")[-1]
    club.tell_bot("dana", "game sat 10am vs Summit for 14U")

    assert "you coach more than one team" in asked
    with club.store.reading() as session:
        assert is_game_day(session, [2], SATURDAY)
        assert not is_game_day(session, [1], SATURDAY)


def test_anybody_of_the_team_reads_the_calendar(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    club.say("dana", "game sat 10am vs Summit", club.staff)
    club.say("dana", "practice tue 5-7pm", club.staff)

    club.tell_bot("elena", "calendar")

    assert club.heard("elena")[-1] == (
        "*Calendar of Herons*, until Mon 25 May\n"
        "• Practice Tue 5 May, 5 pm to 7 pm\n"
        "• Game Sat 9 May, 10 am, vs Summit"
    )
    club.tell_bot("dana", "calendar")
    assert club.heard("dana")[-1].endswith(
        "Put one on with “game sat 10am vs Summit” or “practice tue 5pm”, call one off with "
        "“no game sat”. “calendar https://…” reads a calendar address once a day."
    )


def test_every_change_is_audited(club: Club) -> None:
    club.clock.set(chicago("05-04", "09:00"))
    club.say("dana", "game sat 10am vs Summit", club.staff)
    club.say("dana", "no game sat", club.staff)

    with club.store.reading() as session:
        subjects = session.exec(select(AuditEntry.subject)).all()

    assert {"calendarentry", "calledoff"} <= set(subjects)


def test_a_family_is_told_the_same_evening_when_a_game_is_on_tomorrow(club: Club) -> None:
    club.say("dana", "game tomorrow 10am vs Ridge", club.staff)
    club.say("mateo", "62p 11cb vs Summit")

    go_to(club, chicago("05-02", "19:30"))

    assert len([text for text in club.heard("elena") if "about rest" in text]) == 1
