"""What a coach asks and sets between two innings: short answers that say what governs."""

import pytest
from sqlmodel import select

from core.model import CalendarEntry
from tests.contract.test_home import add_pitchers
from tests.support.club import Club
from tests.support.taps import answer_to, labels, tap


def in_staff_channel(club: Club, text: str) -> str:
    club.say("dana", text, club.staff)
    return club.in_staff_channel()[-1]


def test_a_dozen_arms_are_told_in_a_dozen_lines(club: Club) -> None:
    add_pitchers(club, 8)
    club.say("priya", "Arm 01 60, Arm 02 45, Mateo 70 vs Summit")

    told = in_staff_channel(club, "who can throw sunday")

    day = told.partition("\n\n")[0].splitlines()
    assert day[0] == "*Sun 3 May*: 9 of 12 arms have their rest done."
    assert len(day) <= 12
    assert "• Up to 105: Sam Ruiz and Sam Oduya." in day
    assert "• Rest, earliest Mon 4 May by rule: Arm 02 (45 on Sat 2 May)." in day
    assert "• By Pitch Smart; “rest” with a name gives the reason." in day


def test_a_plan_names_the_games_that_are_over_and_plans_the_others(club: Club) -> None:
    told = in_staff_channel(club, "plan sat 9am 80, sat 2pm 70, sun 10am 90")

    assert told.startswith("*Plan.* Every game is covered by rule.")
    assert "• Sun 3 May 10:00, 90 pitches: " in told
    assert "Not planned, in the past already: Sat 2 May 09:00 and Sat 2 May 14:00." in told


def test_a_plan_of_games_that_are_all_over_asks_for_the_day(club: Club) -> None:
    assert in_staff_channel(club, "plan sat 9am 80") == (
        "Sat 2 May 09:00 lies in the past already. Which day do you mean? Write a date, such as "
        "5/9."
    )


def test_a_limit_over_the_books_number_names_the_one_that_governs(club: Club) -> None:
    # Pitch Smart: at most 95 pitches a day for ages 13 and 14.
    assert "Pitch Smart allows no more than 95 pitches a day, so *95* still stands." in (
        in_staff_channel(club, "limit Leo 120")
    )
    assert "Where a rule book allows less, the book stands." in in_staff_channel(
        club, "limit Leo 45"
    )


@pytest.mark.parametrize("typed", ["game saturday 2pm Ridge", "game sat at Ridge 2pm"])
def test_a_game_needs_no_versus(club: Club, typed: str) -> None:
    told = in_staff_channel(club, typed)

    assert told == "On the calendar of Herons: game Sat 9 May, 2 pm, vs Ridge."


def test_a_bare_hour_is_asked_about_with_buttons(club: Club) -> None:
    asked = club.say("dana", "game sat at Summit 10", club.staff)
    question = club.ws.bot_messages(club.staff)[-1]
    assert "is “10” the time, 10 am or 10 pm?" in question.text
    assert labels(question) == ["10 am", "10 pm"]

    tap(club, "dana", question, "10 am")

    assert club.in_staff_channel() == [
        "On the calendar of Herons: game Sat 9 May, 10 am, vs Summit."
    ]
    club.delete(asked)
    with club.store.reading() as session:
        (entry,) = session.exec(select(CalendarEntry)).all()
        assert entry.withdrawn_at is not None


def test_a_parent_who_speaks_of_a_game_sets_nothing(club: Club) -> None:
    club.tell_bot("elena", "game saturday 2pm Ridge")

    with club.store.reading() as session:
        assert session.exec(select(CalendarEntry)).all() == []
    assert labels(answer_to(club, "elena")) == []


def test_a_game_is_called_off_and_a_moved_one_is_answered(club: Club) -> None:
    in_staff_channel(club, "game sat 2pm vs Ridge")

    assert "I cannot move a game. Call it off and put it on anew" in in_staff_channel(
        club, "sat game moved to 3pm"
    )
    assert in_staff_channel(club, "saturday 2pm game cancelled").startswith(
        "Called off for Herons: game Sat 9 May, 2 pm, vs Ridge"
    )


@pytest.mark.parametrize("asked", ["anyone hurt?", "who's hurt", "any injuries?"])
def test_who_is_hurt_is_answered_from_the_record(club: Club, asked: str) -> None:
    club.say("mateo", "elbow pain 4/10")

    assert "Mateo Cruz: on hold, pain reported on Sat 2 May." in in_staff_channel(club, asked)


def test_a_pitcher_who_says_who_hurts_is_still_heard(club: Club) -> None:
    club.tell_bot("mateo", "anyone hurt? my elbow hurts 4/10")

    assert any("*Pain report.* Mateo Cruz" in one for one in club.in_staff_channel())
