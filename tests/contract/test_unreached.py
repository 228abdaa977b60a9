"""A report of pain that Slack does not deliver: somebody who can pass it on hears of it."""

from dataclasses import replace
from datetime import timedelta

from bot.local.faults import Refused
from tests.support.club import Club

PAIN = "58p 11cb vs Summit, elbow pain 4/10"


def close_account(club: Club, who: str) -> None:
    """Somebody's account is gone, and the event that says so has not come."""
    with club.ws.changed:
        person = club.ws.state.person(club.people[who])
        club.ws.state.keep_person(replace(person, deleted=True))


def test_a_guardian_whom_slack_does_not_reach_is_named_to_the_staff(club: Club) -> None:
    close_account(club, "elena")

    club.say("mateo", PAIN)

    report, alert = club.in_staff_channel()
    assert "Told:" not in report
    assert alert == (
        "I could not reach Elena Cruz about the report of Mateo Cruz. Please tell the family "
        "yourself."
    )


def test_the_author_is_not_told_that_somebody_knows_who_could_not_be_reached(club: Club) -> None:
    close_account(club, "elena")

    club.say("mateo", PAIN)

    (answer,) = club.heard("mateo")
    assert "I've told the coaches." in answer
    assert "Elena" not in answer


def test_for_a_guardian_without_an_account_the_staff_get_words_to_pass_on(club: Club) -> None:
    club.say("carmen", "Leo 40 pitches vs Summit, elbow pain 2/10")

    (report,) = club.in_staff_channel()
    assert "Not in this workspace: Tom Ortiz. Please pass this on, in these words or your own:" in (
        report
    )
    assert "> Tom, a line in the pitching log says that Leo Ortiz has pain: elbow 2/10" in report
    assert "> Leo should stop throwing today." in report


def test_a_guardian_who_was_reached_is_named_as_told(club: Club) -> None:
    club.say("mateo", PAIN)

    (report,) = club.in_staff_channel()
    assert "Told: Elena Cruz." in report


def test_a_report_that_the_staff_channel_does_not_take_goes_to_the_coach(club: Club) -> None:
    club.ws.archive(club.staff, club.people["dana"])

    club.say("mateo", PAIN)

    told, fix = club.heard("dana")
    assert told.startswith("I cannot post in the staff channel any more, so this comes to you.")
    assert "it is archived. Unarchive it" in fix
    assert "*Pain report.* Mateo Cruz: elbow 4/10" in told


def test_somebody_who_gets_no_messages_is_named_to_the_staff_once(club: Club) -> None:
    for text in ("62p 11cb vs Summit", "9p 2cb vs Summit yesterday"):
        club.ws.faults.order("chat.postMessage", Refused("user_disabled"))
        club.say("mateo", text)

    assert club.in_staff_channel() == [
        "I cannot write to Mateo Cruz: the Slack account is closed. What I had to say there was "
        "not sent. Please pass on yourself what matters; where it is about a pitcher, to the "
        "family."
    ]
    assert club.heard("dana") == []


def test_when_messages_got_through_again_a_later_trouble_is_told_anew(club: Club) -> None:
    for refused in (True, False, True):
        if refused:
            club.ws.faults.order("chat.postMessage", Refused("messages_tab_disabled"))
        club.say("mateo", "62p 11cb vs Summit")
        club.clock.advance(timedelta(days=7))

    first, second = club.in_staff_channel()
    assert first == second
    assert first.startswith("I cannot write to Mateo Cruz: Slack lets me send no direct messages")


def test_a_fault_of_our_own_alarms_nobody(club: Club) -> None:
    club.ws.faults.order("chat.postMessage", Refused("invalid_blocks"))

    club.say("mateo", "62p 11cb vs Summit")

    assert club.in_staff_channel() == []
    assert club.heard("dana") == []
