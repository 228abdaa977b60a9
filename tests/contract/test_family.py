"""What the staff write to a family: one conversation with a guardian in it, or nothing."""

from dataclasses import replace
from datetime import timedelta

import pytest
from sqlmodel import select

from bot.local.records import Message
from core.contact.family import family_of, write_to_family
from core.ledger.by_hand import ByHandError, Hand
from core.ledger.crew import find_person
from core.model import FamilyMessage, Membership, OutboxMessage, Person, Pitcher, key
from tests.support.club import Club
from tests.support.hours import chicago, go_to
from tests.support.phone import fill, form, is_open
from tests.support.taps import labels, tap

PAIN = "58p 11cb vs Summit, elbow pain 4/10"
WORDS = "How is the arm this morning?\nCall me when you can."


def open_form(club: Club, who: str = "dana") -> None:
    (report,) = [one for one in club.ws.bot_messages(club.staff) if "report" in one.text]
    tap(club, who, report, "Write to the family")


def groups(club: Club) -> list[tuple[set[str], list[Message]]]:
    """The group conversations: who is in each, by real name, and what the bot wrote there."""
    return [
        (
            {club.ws.state.people[one].real_name for one in channel.members} - {"Spinkeeper"},
            club.ws.bot_messages(channel),
        )
        for channel in club.ws.state.channels.values()
        if channel.kind == "mpim"
    ]


def test_it_goes_to_guardian_pitcher_and_coach_in_one_conversation(club: Club) -> None:
    club.say("mateo", PAIN)
    open_form(club)
    assert form(club, "dana").splitlines()[:2] == [
        "Write to the family",
        "Goes to Elena Cruz, Mateo Cruz and you, in one conversation. Between 20:00 and 08:00 it "
        "waits for the morning.",
    ]
    before = len(club.heard("mateo")), len(club.heard("elena"))

    assert fill(club, "dana", words=WORDS) == {}

    ((people, messages),) = groups(club)
    assert {"Dana Mercer", "Elena Cruz", "Mateo Cruz"} <= people
    assert [one.text for one in messages] == [
        "Dana Mercer writes about the report of Mateo Cruz's arm:\n> How is the arm this "
        "morning?\n> Call me when you can.\nPlease keep to this conversation, in which everybody "
        "reads along. I'm a bot, not a doctor; a licensed clinician decides."
    ]
    assert (len(club.heard("mateo")), len(club.heard("elena"))) == before
    assert club.in_log_channel() == []


def test_a_pitcher_without_an_account_is_not_in_it(club: Club) -> None:
    club.say("carmen", "Leo 40p vs Summit, elbow pain 2/10")
    open_form(club)
    fill(club, "dana", words=WORDS)

    ((people, _),) = groups(club)
    assert people - {"Spinkeeper"} >= {"Dana Mercer", "Carmen Ortiz"}
    assert not any("Leo" in one for one in people)


def test_where_no_guardian_is_in_the_workspace_nothing_can_be_sent_and_it_says_why(
    club: Club,
) -> None:
    club.say("sam_r", PAIN)
    open_form(club)

    assert "no guardian of Sam Ruiz is in this workspace" in form(club, "dana")
    assert "submit" not in club.ws.top_view(club.people["dana"]).content
    assert groups(club) == []


def test_a_child_who_is_not_to_be_written_to_is_left_out(club: Club) -> None:
    club.say("mateo", PAIN)
    club.tell_bot("elena", "do not message Mateo")
    open_form(club)
    fill(club, "dana", words=WORDS)

    ((people, _),) = groups(club)
    assert "Mateo Cruz" not in people
    assert "Elena Cruz" in people


def test_it_waits_for_the_morning_and_a_guardian_who_objects_meanwhile_is_heeded(
    club: Club,
) -> None:
    club.clock.set(chicago("05-02", "21:00"))
    club.say("mateo", PAIN)
    open_form(club)
    fill(club, "dana", words=WORDS)
    assert groups(club) == []

    club.tell_bot("elena", "do not message Mateo")
    go_to(club, chicago("05-03", "08:30"))

    assert all(not messages for _, messages in groups(club))
    assert club.heard("dana")[-1].startswith("Not sent: I could not open a conversation")
    assert "> How is the arm this morning?" in club.heard("dana")[-1]


def test_it_leaves_in_the_morning(club: Club) -> None:
    club.clock.set(chicago("05-02", "21:00"))
    club.say("mateo", PAIN)
    open_form(club)
    fill(club, "dana", words=WORDS)

    go_to(club, chicago("05-03", "08:30"))

    ((_, messages),) = groups(club)
    assert len(messages) == 1


def test_where_slack_opens_no_conversation_the_coach_hears_that_it_did_not_go(club: Club) -> None:
    club.say("mateo", PAIN)
    open_form(club)
    with club.ws.changed:
        gone = replace(club.ws.state.person(club.people["elena"]), deleted=True)
        club.ws.state.keep_person(gone)

    fill(club, "dana", words=WORDS)

    assert groups(club) == []
    assert club.heard("dana")[-1].startswith("Not sent: I could not open a conversation")


def test_what_was_written_is_kept_once(club: Club) -> None:
    club.say("mateo", PAIN)
    with club.store.writing() as session:
        dana = find_person(session, club.ws.team_id, club.people["dana"].id)
        assert dana is not None
        hand = Hand(session, dana, club.clock.now())
        first = write_to_family(hand, 1, 1, WORDS, "V1")
        second = write_to_family(hand, 1, 1, WORDS, "V1")

        assert (len(first), second) == (1, [])
        assert [row.text for row in session.exec(select(FamilyMessage))] == [WORDS]


@pytest.mark.parametrize("who", ["mateo", "elena", "carmen", "priya"])
def test_nobody_but_the_pitchers_own_staff_writes(club: Club, who: str) -> None:
    club.say("mateo", PAIN)

    with club.store.writing() as session:
        person = find_person(session, club.ws.team_id, club.people[who].id)
        assert person is not None
        hand = Hand(session, person, club.clock.now())
        assert family_of(hand, 1, 1) is None
        with pytest.raises(ByHandError):
            write_to_family(hand, 1, 1, WORDS, "V1")


def test_an_empty_message_is_refused_at_the_field(club: Club) -> None:
    club.say("mateo", PAIN)
    open_form(club)

    assert fill(club, "dana", words="  ") == {"words": "Write something. Nothing was sent."}
    assert is_open(club, "dana")


def test_no_conversation_is_ever_owed_without_a_guardian_in_it(club: Club) -> None:
    for who, text in (("mateo", PAIN), ("sam_r", PAIN), ("carmen", "Leo elbow pain 2/10")):
        club.say(who, text)
    with club.store.writing() as session:
        dana = session.exec(select(Person).where(Person.name == "Dana Mercer")).one()
        hand = Hand(session, dana, club.clock.now())
        for line_id in (1, 2, 3):
            for pitcher in session.exec(select(Pitcher)).all():
                family = family_of(hand, line_id, key(pitcher))
                adults = {"Elena Cruz", "Carmen Ortiz", "Joan Oduya"}
                if family is not None and family.is_open:
                    assert adults & {one.name for one in family.readers}


def add_assistant(club: Club) -> None:
    club.people["hank"] = club.ws.add_person("Hank Bell")
    with club.store.writing() as session:
        hank = Person(
            workspace_id=club.ws.team_id, slack_id=club.people["hank"].id, name="Hank Bell"
        )
        session.add(hank)
        session.flush()
        session.add(
            Membership(
                workspace_id=club.ws.team_id, team_id=1, person_id=key(hank), role="assistant"
            )
        )


def test_without_a_guardian_on_file_a_second_adult_gets_a_copy(club: Club) -> None:
    add_assistant(club)
    club.say("sam_r", PAIN)

    (copy,) = club.heard("hank")
    assert copy.startswith("No guardian is on file for this pitcher, so this is copied to you")
    assert "*Pain report.* Sam Ruiz" in copy
    (report,) = club.in_staff_channel()
    assert "No guardian is on file: please tell the family yourself, and add a guardian." in report
    assert "Copied to Hank Bell as a second adult." in report


def test_where_there_is_no_second_adult_the_staff_are_told_to_add_one(club: Club) -> None:
    club.say("sam_r", PAIN)

    (report,) = club.in_staff_channel()
    assert "There is no second adult on this staff to copy either: please add one." in report


def test_with_a_guardian_on_file_nobody_gets_a_copy(club: Club) -> None:
    add_assistant(club)
    club.say("mateo", PAIN)
    club.say("carmen", "Leo elbow pain 2/10")

    assert club.heard("hank") == []


def test_the_button_stands_under_every_report_of_an_arm(club: Club) -> None:
    club.say("mateo", "arm tired")
    club.clock.advance(timedelta(days=1))

    (report,) = club.ws.bot_messages(club.staff)
    assert labels(report) == ["Write to the family"]
    with club.store.reading() as session:
        assert session.exec(select(OutboxMessage).where(OutboxMessage.kind == "family")).all() == []
