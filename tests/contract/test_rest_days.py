"""Rest days as a guardian hears of them: one message a family, true when it leaves."""

from datetime import date, timedelta

from sqlmodel import select

from core.ledger import NoticeKind
from core.model import (
    GuardianLink,
    MessageState,
    OutboxMessage,
    Person,
    Pitcher,
    Team,
    TeamEvent,
    key,
)
from tests.support.club import Club
from tests.support.hours import chicago, go_to

GOLDEN = """\
Elena Cruz, about rest from pitching:

*Mateo Cruz* rests Sun 3 to Tue 5 May. Earliest Wed 6 May by rule; the coach decides the count.
62 pitches on Sat 2 May: 3 days (Pitch Smart, 17–18).
On a rest day the coach says, catching: “not behind the plate”; hitting: “hitting is fine”. \
For the rest, ask the coach.

League and local rules govern."""


def about_rest(club: Club, who: str) -> list[str]:
    return [text for text in club.heard(who) if "about rest from pitching" in text]


def states(club: Club) -> list[str]:
    with club.store.reading() as session:
        rows = select(OutboxMessage.state).where(OutboxMessage.kind == NoticeKind.REST_DAYS)
        return list(session.exec(rows))


def test_a_guardian_reads_which_days_why_and_who_decides(club: Club) -> None:
    with club.store.writing() as session:
        words = {"hit": "hitting is fine", "catcher": "not behind the plate"}
        session.exec(select(Team)).one().rest_day = words
    club.say("mateo", "62p 11cb vs Summit")

    go_to(club, chicago("05-03", "08:00"))

    assert about_rest(club, "elena") == [GOLDEN]


def test_it_comes_at_eight_the_next_morning_and_no_sooner(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    go_to(club, chicago("05-03", "07:55"))

    assert about_rest(club, "elena") == []


def test_it_comes_the_same_evening_when_a_game_is_known_for_tomorrow(club: Club) -> None:
    with club.store.writing() as session:
        team = session.exec(select(Team)).one()
        session.add(
            TeamEvent(
                workspace_id=team.workspace_id, team_id=key(team), name="Sunday game",
                starts_on=date(2026, 5, 3), ends_on=date(2026, 5, 3),
            )
        )  # fmt: skip
    club.say("mateo", "62p 11cb vs Summit")

    go_to(club, chicago("05-02", "19:30"))

    (text,) = about_rest(club, "elena")
    assert "*Mateo Cruz* rests Sun 3 to Tue 5 May." in text


def test_an_outing_that_owes_no_rest_reminds_nobody(club: Club) -> None:
    club.say("mateo", "15p 2cb vs Summit")

    go_to(club, chicago("05-03", "12:00"))

    assert about_rest(club, "elena") == []
    assert states(club) == [MessageState.DROPPED]


def test_children_and_outings_of_one_family_come_in_one_message(club: Club) -> None:
    with club.store.writing() as session:
        elena = session.exec(select(Person).where(Person.name == "Elena Cruz")).one()
        leo = session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
        session.add(
            GuardianLink(workspace_id=leo.workspace_id, person_id=key(elena), pitcher_id=key(leo))
        )
    club.say("mateo", "62p 11cb game 1 vs Summit")
    club.say("mateo", "20p 2cb game 2 vs Summit")
    club.say("priya", "Leo 45 pitches 6 cb")

    go_to(club, chicago("05-03", "12:00"))

    (text,) = about_rest(club, "elena")
    assert "*Mateo Cruz* rests" in text
    assert "*Leo Ortiz* rests" in text
    (to_carmen,) = about_rest(club, "carmen")
    assert "Mateo" not in to_carmen


def test_a_correction_before_it_leaves_changes_what_it_says(club: Club) -> None:
    said = club.say("mateo", "62p 11cb vs Summit")

    club.edit(said, "52p 11cb vs Summit")
    go_to(club, chicago("05-03", "12:00"))

    (text,) = about_rest(club, "elena")
    assert "Earliest Tue 5 May" in text
    assert "Changed" not in text


def test_a_correction_after_it_left_changes_it_and_says_so(club: Club) -> None:
    said = club.say("mateo", "42p 11cb vs Summit")
    go_to(club, chicago("05-03", "09:00"))

    club.edit(said, "62p 11cb vs Summit")

    (text,) = about_rest(club, "elena")
    assert text.startswith("_Changed since I first wrote this:_")
    assert "Earliest Wed 6 May" in text


def test_a_correction_of_something_else_leaves_it_as_it_is(club: Club) -> None:
    said = club.say("mateo", "62p 11cb vs Summit")
    go_to(club, chicago("05-03", "09:00"))

    club.edit(said, "62p 12cb vs Summit")

    (text,) = about_rest(club, "elena")
    assert "Changed" not in text


def test_an_outing_taken_back_before_it_leaves_is_not_spoken_of(club: Club) -> None:
    said = club.say("mateo", "62p 11cb vs Summit")

    club.delete(said)
    go_to(club, chicago("05-03", "12:00"))

    assert about_rest(club, "elena") == []
    assert states(club) == [MessageState.DROPPED]


def test_an_outing_taken_back_afterwards_is_taken_back_in_words(club: Club) -> None:
    said = club.say("mateo", "62p 11cb vs Summit")
    go_to(club, chicago("05-03", "09:00"))

    club.delete(said)

    (text,) = about_rest(club, "elena")
    assert "after a correction of the log, no rest day is owed by rule any more" in text


def test_one_of_two_outings_taken_back_leaves_the_rest_that_the_other_owes(club: Club) -> None:
    club.clock.set(chicago("05-03", "09:00"))
    said = club.say("mateo", "62p 11cb yesterday vs Summit")
    go_to(club, chicago("05-03", "10:00"))
    club.say("mateo", "48p 4cb today vs Ridge")
    go_to(club, chicago("05-04", "09:00"))

    club.delete(said)

    assert all("rests Mon 4 and Tue 5 May" in text for text in about_rest(club, "elena"))


def test_another_outing_changes_the_words_and_has_a_message_of_its_own(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    go_to(club, chicago("05-04", "18:00"))

    club.say("mateo", "48p 4cb vs Summit")
    changed = about_rest(club, "elena")
    go_to(club, chicago("05-05", "08:00"))

    assert len(changed) == 1
    assert "rests Tue 5 and Wed 6 May. Earliest Thu 7 May" in changed[0]
    assert len(about_rest(club, "elena")) == 2


def test_a_message_whose_rest_is_over_is_left_as_it_is(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    go_to(club, chicago("05-06", "18:00"))
    before = about_rest(club, "elena")

    club.say("mateo", "48p 4cb vs Ridge")

    assert about_rest(club, "elena") == before


def test_an_outing_that_owed_nothing_is_silent_when_a_later_one_owes(club: Club) -> None:
    club.say("mateo", "15p 2cb vs Summit")
    go_to(club, chicago("05-03", "09:00"))

    club.say("mateo", "yesterday was 15p, today 62p 11cb vs Ridge")
    go_to(club, chicago("05-03", "20:00"))
    assert about_rest(club, "elena") == []
    go_to(club, chicago("05-04", "08:00"))

    assert len(about_rest(club, "elena")) == 1


def test_rest_that_was_over_during_downtime_is_dropped_and_recorded_so(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    club.clock.set(chicago("05-06", "09:00"))
    go_to(club, chicago("05-06", "12:00"))

    assert about_rest(club, "elena") == []
    assert states(club) == [MessageState.DROPPED]


def test_two_weeks_of_downtime_lose_nothing_that_is_still_true(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    club.clock.set(chicago("05-16", "18:00"))
    club.say("mateo", "62p 11cb vs Ridge")
    go_to(club, chicago("05-17", "12:00"))

    (text,) = about_rest(club, "elena")
    assert "rests Sun 17 to Tue 19 May" in text


def test_a_process_that_comes_back_at_night_waits_for_the_morning(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    club.clock.set(chicago("05-03", "21:00"))
    go_to(club, chicago("05-04", "07:55"))
    at_night = about_rest(club, "elena")
    go_to(club, chicago("05-04", "08:00"))

    assert at_night == []
    assert len(about_rest(club, "elena")) == 1


def test_pain_is_not_kept_back_by_a_message_that_waits_for_the_morning(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    club.clock.set(chicago("05-03", "21:00"))
    club.settle()

    club.say("mateo", "elbow hurts 4/10")

    assert "has pain" in club.heard("elena")[-1]


def test_an_arm_that_is_not_cleared_is_named_no_date(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit. elbow hurts 4/10")

    go_to(club, chicago("05-03", "08:00"))

    assert about_rest(club, "elena") == [
        "Elena Cruz, about rest from pitching:\n\n"
        "*Mateo Cruz*: pain was reported on Sat 2 May, so I name no day. Please have a "
        "licensed clinician check the arm before any more throwing. I'm a bot, not a doctor; a "
        "licensed clinician decides."
    ]


def test_a_date_that_was_named_is_taken_away_when_the_arm_hurts(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    go_to(club, chicago("05-03", "09:00"))

    club.say("mateo", "elbow hurts 4/10")

    assert not [text for text in about_rest(club, "elena") if "Earliest" in text]


def test_what_is_logged_late_comes_as_one_message_at_the_next_half_hour(club: Club) -> None:
    club.clock.set(chicago("05-03", "12:10"))
    club.say("carmen", "Leo 45 pitches 6 cb yesterday vs Summit")
    club.clock.advance(timedelta(minutes=5))
    club.say("carmen", "Leo catch 20 throws 5 spins")

    go_to(club, chicago("05-03", "12:25"))
    before = about_rest(club, "carmen")
    go_to(club, chicago("05-03", "12:31"))

    assert [len(before), len(about_rest(club, "carmen"))] == [0, 1]
