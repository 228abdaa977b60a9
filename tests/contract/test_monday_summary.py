"""The Monday summary as the staff read it, and when it comes."""

from datetime import date, timedelta

from sqlmodel import select

from bot.due import Due
from core.model import Pitcher, PitcherTeam, Team, key
from tests.support.club import Club
from tests.support.hours import chicago, go_to, start

GOLDEN = """\
*Monday summary, Herons*, Mon 4 to Sun 10 May
4 arms: 1 has its rest done, 2 are resting, 1 is on hold.

*Leo Ortiz*: resting, earliest Wed 13 May by rule.
1 outing, 52 pitches. Breaking balls 17 % (9 of 52), the week before 13 % (6 of 45). \
Spin reps 12 of 36.

*Mateo Cruz*: resting, earliest Wed 13 May by rule.
1 outing, 71 pitches. Breaking balls 20 % (14 of 71), the week before 18 % (11 of 62). \
Spin reps 12 of 36.

*Sam Oduya*: on hold, pain reported on Sat 9 May.
1 outing, 30 pitches. Breaking balls 13 % (4 of 30), none counted before. Spin reps 0 of 36.

*Sam Ruiz*: rest done.
No line last week. Spin reps 0 of 36.

*To decide*
• Sam Oduya is on hold since Sat 9 May: no throwing until an adult records a licensed clinician's \
clearance.
• 1 question unanswered: Priya Venn (Sat 9 May).
• No line for ten days or more: Sam Ruiz (none yet).
• No consent on file, so nothing is counted: Ben Abara.

*Who can throw by rule, if nobody throws before*
Mon 11 and Tue 12 May: Sam Ruiz (1 of 4)
Wed 13 to Sun 17 May: also Leo Ortiz and Mateo Cruz (3 of 4)
Stopped, so no day is named: Sam Oduya.

A day without a line is unknown, not a day off. League and local rules govern. The coach decides."""


def summaries(club: Club) -> list[str]:
    return [text for text in club.in_staff_channel() if "Monday summary" in text]


def two_weeks(club: Club) -> None:
    start(club)
    club.say("mateo", "62p 11cb vs Summit")
    club.say("dana", "Leo 45 pitches 6 curves yesterday vs Summit", club.staff)
    go_to(club, chicago("05-06", "18:00"))
    club.say("mateo", "catch 40 throws 12 spins")
    club.say("carmen", "catch 30 throws 12 spins")
    go_to(club, chicago("05-09", "18:00"))
    club.say("mateo", "71p 14cb vs Summit")
    club.say("priya", "Leo 52 pitches 9 cb")
    club.say("priya", "Lou 40 pitches vs Summit")
    club.say("sam_o", "30p 4cb vs Summit. elbow hurts 4/10")
    go_to(club, chicago("05-10", "12:00"))


def test_the_summary_says_what_matters_first_then_arm_by_arm(club: Club) -> None:
    two_weeks(club)

    go_to(club, chicago("05-11", "07:00"))

    assert summaries(club)[-1] == GOLDEN


def test_the_blocks_say_the_same_as_the_text(club: Club) -> None:
    two_weeks(club)
    go_to(club, chicago("05-11", "07:00"))

    message = club.ws.bot_messages(club.staff)[-1]

    assert "\n\n".join(block["text"]["text"] for block in message.blocks) == message.text


def test_it_comes_on_monday_at_seven_and_no_minute_sooner(club: Club) -> None:
    start(club)

    go_to(club, chicago("05-04", "06:59"))
    assert summaries(club) == []
    go_to(club, chicago("05-04", "07:00"))

    assert len(summaries(club)) == 1


def test_a_correction_after_it_left_does_not_send_it_again(club: Club) -> None:
    start(club)
    said = club.say("mateo", "62p 11cb vs Summit")
    go_to(club, chicago("05-04", "08:00"))

    club.edit(said, "72p 11cb vs Summit")
    go_to(club, chicago("05-10", "23:00"))

    assert len(summaries(club)) == 1


def test_a_late_one_comes_once_for_its_own_week(club: Club) -> None:
    start(club)
    club.say("mateo", "62p 11cb vs Summit")

    club.clock.set(chicago("05-05", "23:30"))
    go_to(club, chicago("05-06", "12:00"))

    (text,) = summaries(club)
    assert text.startswith("*Monday summary, Herons*, Mon 27 Apr to Sun 3 May")


def test_after_tuesday_night_it_is_not_begun_any_more(club: Club) -> None:
    start(club)

    club.clock.set(chicago("05-06", "00:01"))
    go_to(club, chicago("05-10", "12:00"))

    assert summaries(club) == []


def test_two_weeks_of_downtime_owe_one_summary(club: Club) -> None:
    start(club)

    club.clock.set(chicago("05-18", "10:00"))
    go_to(club, chicago("05-19", "10:00"))

    (text,) = summaries(club)
    assert "Mon 11 to Sun 17 May" in text


def test_three_processes_and_one_minute_make_one_summary(club: Club) -> None:
    start(club)
    processes = [Due(club.store) for _ in range(3)]
    club.clock.set(chicago("05-04", "07:00"))

    for process in processes:
        process.owe(club.clock.now())
    go_to(club, chicago("05-04", "09:00"))

    assert len(summaries(club)) == 1


def test_a_team_that_moves_to_another_zone_gets_no_second_one(club: Club) -> None:
    start(club)
    go_to(club, chicago("05-04", "07:30"))

    with club.store.writing() as session:
        session.exec(select(Team)).one().time_zone = "America/Los_Angeles"
    go_to(club, chicago("05-10", "12:00"))

    assert len(summaries(club)) == 1


def test_more_than_twenty_pitchers_go_on_in_the_thread(club: Club) -> None:
    add_arms(club, 41)
    start(club)

    go_to(club, chicago("05-04", "07:05"))

    (first,) = [one for one in club.ws.bot_messages(club.staff) if one.thread_ts is None]
    pages = [one for one in club.ws.bot_messages(club.staff) if one.thread_ts == first.ts]
    assert "25 more arms in the thread." in first.text
    assert [page.text.splitlines()[0] for page in pages] == [
        "*Page 2*, Herons",
        "*Page 3*, Herons",
    ]
    told = "\n".join(one.text for one in [first, *pages])
    assert all(f"*Arm {n:02}*:" in told for n in range(41))


def add_arms(club: Club, number: int) -> None:
    with club.store.writing() as session:
        team = session.exec(select(Team)).one()
        for place in range(number):
            pitcher = Pitcher(
                workspace_id=team.workspace_id,
                name=f"Arm {place:02}",
                birth_date=date(2010, 1, 1) + timedelta(days=place),
                consent_on=date(2026, 2, 1),
            )
            session.add(pitcher)
            session.flush()
            session.add(
                PitcherTeam(
                    workspace_id=team.workspace_id, pitcher_id=key(pitcher), team_id=key(team)
                )
            )


def test_two_counts_of_one_outing_are_told_with_what_stands(club: Club) -> None:
    start(club)
    go_to(club, chicago("05-09", "18:00"))
    club.say("mateo", "42p 5cb vs Summit")
    club.say("priya", "Mateo 50 vs Summit")
    go_to(club, chicago("05-11", "07:05"))

    told = summaries(club)[-1]
    assert (
        "• Mateo Cruz: 50 pitches by Priya Venn, 42 pitches by Mateo Cruz (asked on Sat 9 May). "
        "One outing, or two? The larger number stands until that is answered."
    ) in told
    assert "question unanswered" not in told
