"""The weekly spin reminder: a post for everybody, a line for one, and when there is none."""

from datetime import date, timedelta

import pytest
from sqlmodel import select

from core.due.spin_reps import allows_throwing
from core.model import ScheduleKind, Season, SeasonKind, Team, TeamEvent, TeamSchedule, key
from tests.support.club import Club
from tests.support.hours import chicago, go_to, start

POST = """\
*Spin this week.* Half effort, spin first.
The plan: 3 sessions of catch play with 12 spin reps each. Log one in a line here: \
“catch 40 throws 12 spins”.
On a rest day only what the coach allows; none at all when the arm hurts or is tired."""
TO_MATEO = """\
Your spin reps this week: 12 of 36 so far. Any catch play that is not in the log yet? One line \
is enough: “catch 40 throws 12 spins”.
Half effort, and none at all when the arm hurts or is tired: then stop and tell an adult."""
TO_CARMEN = """\
Carmen Ortiz, spin reps this week so far: Leo Ortiz 0 of 36. Any catch play that is not in the \
log yet? One line is enough: “Leo catch 40 throws 12 spins”.
Half effort, and none at all when the arm hurts or is tired: then stop and tell an adult."""

WEDNESDAY = chicago("05-06", "16:00")


def posts(club: Club) -> list[str]:
    return [one.text for one in club.in_log_channel()]


def private(club: Club, who: str) -> list[str]:
    return [text for text in club.heard(who) if "pin reps this week" in text]


def questions(club: Club) -> list[str]:
    return [text for text in club.in_staff_channel() if "logged no spin reps" in text]


def test_everybody_reads_the_cue_and_each_reads_about_himself_alone(club: Club) -> None:
    start(club)
    go_to(club, chicago("05-05", "18:00"))
    club.say("mateo", "catch 40 throws 12 spins")

    go_to(club, WEDNESDAY)

    assert posts(club) == [POST]
    assert private(club, "mateo") == [TO_MATEO]
    assert private(club, "carmen") == [TO_CARMEN]
    assert private(club, "elena") == []  # her son is of account age: it is his to read


def test_a_coachs_words_go_to_the_channel_and_never_to_a_minor_alone(club: Club) -> None:
    start(club)
    with club.store.writing() as session:
        rows = select(TeamSchedule).where(TeamSchedule.kind == ScheduleKind.SPIN)
        session.exec(rows).one().cues = ["Thumb under, slow arm."]

    go_to(club, WEDNESDAY)

    assert "*Spin this week.* Thumb under, slow arm." in posts(club)[0]
    assert "Thumb" not in private(club, "mateo")[0]


def test_a_pitcher_with_the_weeks_reps_logged_is_left_alone(club: Club) -> None:
    start(club)
    for day in ("05-04", "05-05", "05-06"):
        go_to(club, chicago(day, "10:00"))
        club.say("mateo", "catch 40 throws 12 spins")

    go_to(club, WEDNESDAY)

    assert private(club, "mateo") == []
    assert len(private(club, "sam_r")) == 1


def test_an_arm_that_is_not_cleared_is_not_reminded(club: Club) -> None:
    start(club)
    club.say("mateo", "elbow hurts 4/10")

    go_to(club, WEDNESDAY)

    assert private(club, "mateo") == []


@pytest.mark.parametrize(
    ("words", "reminded"),
    [({}, False), ({"catch": "no catch play"}, False), ({"catch": "20 easy throws"}, True)],
)
def test_on_a_rest_day_the_coachs_list_decides(
    club: Club, words: dict[str, str], reminded: bool
) -> None:
    start(club)
    with club.store.writing() as session:
        session.exec(select(Team)).one().rest_day = words
    go_to(club, chicago("05-05", "18:00"))
    club.say("mateo", "62p 11cb vs Summit")

    go_to(club, WEDNESDAY)

    assert bool(private(club, "mateo")) is reminded


@pytest.mark.parametrize(
    ("words", "allowed"),
    [
        ({}, False),
        ({"hit": "hitting is fine"}, False),
        ({"catch": "light catch"}, True),
        ({"throw": "No throwing at all", "catch": "light"}, False),
        ({"throw": "none."}, False),
    ],
)
def test_silence_and_a_refusal_allow_no_throwing_on_a_rest_day(
    words: dict[str, str], allowed: bool
) -> None:
    assert allows_throwing(words) is allowed


def test_nobody_is_reminded_in_the_months_off(club: Club) -> None:
    start(club)
    with club.store.writing() as session:
        team = session.exec(select(Team)).one()
        session.add(
            Season(
                workspace_id=team.workspace_id, team_id=key(team), kind=SeasonKind.OFF,
                starts_on=date(2026, 5, 1), ends_on=date(2026, 5, 31),
            )
        )  # fmt: skip

    go_to(club, chicago("05-08", "12:00"))

    assert posts(club) == private(club, "mateo") == []


def test_nobody_is_reminded_on_a_day_of_games(club: Club) -> None:
    start(club)
    with club.store.writing() as session:
        team = session.exec(select(Team)).one()
        session.add(
            TeamEvent(
                workspace_id=team.workspace_id, team_id=key(team), name="Cup",
                starts_on=date(2026, 5, 6), ends_on=date(2026, 5, 6),
            )
        )  # fmt: skip

    go_to(club, chicago("05-08", "12:00"))

    assert posts(club) == private(club, "mateo") == []


def test_a_late_one_waits_for_the_morning_and_lapses_when_thursday_is_over(club: Club) -> None:
    start(club)
    club.clock.set(chicago("05-06", "21:00"))
    go_to(club, chicago("05-07", "07:55"))
    at_night = [*posts(club), *private(club, "mateo")]
    go_to(club, chicago("05-07", "08:05"))
    assert at_night == []
    assert [len(posts(club)), len(private(club, "mateo"))] == [1, 1]

    club.clock.set(chicago("05-15", "00:30"))
    go_to(club, chicago("05-15", "12:00"))

    assert [len(posts(club)), len(private(club, "mateo"))] == [1, 1]


def test_after_four_unanswered_the_coach_is_asked_once_instead(club: Club) -> None:
    start(club)
    for week in range(7):
        go_to(club, WEDNESDAY + timedelta(weeks=week, minutes=5))

    assert len(private(club, "mateo")) == 4
    assert [text for text in questions(club) if text.startswith("Mateo")] == [
        "Mateo Cruz logged no spin reps after 4 reminders in a row (none are on record). I stop "
        "reminding until some are logged; would you ask in person?"
    ]


def test_reps_that_are_logged_again_start_the_reminders_again(club: Club) -> None:
    start(club)
    for week in range(5):
        go_to(club, WEDNESDAY + timedelta(weeks=week, minutes=5))
    club.say("mateo", "catch 40 throws 12 spins")

    go_to(club, WEDNESDAY + timedelta(weeks=5, minutes=5))

    assert len(private(club, "mateo")) == 5
