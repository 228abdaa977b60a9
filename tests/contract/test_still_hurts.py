"""A family is asked after 1, 3 and 7 days whether pain is gone; silence ends nothing."""

from datetime import timedelta

import pytest
from sqlmodel import select

from bot.presses import PRESSES
from core.ledger.by_hand import ByHandError, Hand
from core.ledger.crew import find_person
from core.model import GuardianLink, OutboxMessage, Person, Pitcher, key
from tests.support.club import Club
from tests.support.hours import chicago, go_to
from tests.support.taps import answer_to, tap

MILD = "elbow pain 1/10"
YES, NO = "Yes, it is gone", "No, not yet"


def asked(club: Club, who: str = "elena") -> list[str]:
    return [one for one in club.heard(who) if "Is it gone, all of it?" in one]


def slots(club: Club) -> list[str]:
    with club.store.reading() as session:
        rows = select(OutboxMessage.slot).where(OutboxMessage.kind == "still hurts")
        return list(session.exec(rows))


def test_the_guardian_is_asked_on_the_first_third_and_seventh_morning(club: Club) -> None:
    club.say("mateo", MILD)

    counts = []
    for day in range(3, 13):
        go_to(club, chicago(f"05-{day:02}", "08:30"))
        counts.append(len(asked(club)))

    assert counts == [1, 1, 2, 2, 2, 2, 3, 3, 3, 3]
    assert asked(club)[0] == (
        "On Sat 2 May pain of Mateo Cruz was reported. Is it gone, all of it? Until you say so, no "
        "answer of mine says that this arm may throw. A licensed clinician should have checked it. "
        "I'm a bot, not a doctor; a licensed clinician decides."
    )
    assert asked(club, "mateo") == []


def test_yes_is_kept_as_the_guardians_own_line_and_the_staff_hear_who_said_so(club: Club) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))

    tap(club, "elena", answer_to(club, "elena"), YES)

    assert asked(club) == []
    assert "Answered: the report about Mateo Cruz's arm no longer stands." in club.heard("elena")
    assert any("Elena Cruz says that Mateo Cruz's pain is gone." in one
               for one in club.in_staff_channel())  # fmt: skip
    go_to(club, chicago("05-12", "09:00"))
    assert asked(club) == []


def test_not_yet_ends_nothing_is_no_new_report_and_it_is_asked_again(club: Club) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))
    staff = len(club.in_staff_channel())

    tap(club, "elena", answer_to(club, "elena"), NO)

    assert (
        "Elena Cruz says that Mateo Cruz's pain is not gone yet: no throwing."
        in (club.heard("elena")[-1])
    )
    assert len(club.in_staff_channel()) == staff
    go_to(club, chicago("05-05", "08:30"))
    assert len(asked(club)) == 1


def test_a_held_arm_is_not_asked_after(club: Club) -> None:
    club.say("mateo", "elbow pain 5/10")
    go_to(club, chicago("05-10", "09:00"))

    assert slots(club) == []


def test_a_hold_since_is_said_in_place_of_the_question(club: Club) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))
    club.say("mateo", "elbow pain 4/10")

    assert asked(club) == []
    assert any("only a licensed clinician's clearance ends that" in one
               for one in club.heard("elena"))  # fmt: skip


def test_no_pain_typed_by_the_guardian_answers_the_question_too(club: Club) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))
    club.tell_bot("elena", "no pain today")
    tap(club, "elena", answer_to(club, "elena"), "Yes, it is gone")

    assert asked(club) == []


def test_where_no_guardian_can_be_reached_the_staff_are_asked_to_ask(club: Club) -> None:
    club.say("sam_r", MILD)
    go_to(club, chicago("05-04", "09:00"))

    told = [one for one in club.in_staff_channel() if "I can reach no guardian of Sam Ruiz" in one]
    assert len(told) == 1


def test_a_guardian_who_left_the_workspace_is_not_asked_and_the_staff_are(club: Club) -> None:
    with club.store.writing() as session:
        elena = session.exec(select(Person).where(Person.name == "Elena Cruz")).one()
        elena.slack_id = None
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))

    assert any("I can reach no guardian of Mateo Cruz" in one for one in club.in_staff_channel())


def test_an_adult_pitcher_speaks_for_himself(club: Club) -> None:
    club.clock.set(chicago("08-10", "12:00"))  # Sam Oduya turned 18 on 8 August
    club.say("sam_o", MILD)
    go_to(club, chicago("08-11", "08:30"))

    assert "On Mon 10 Aug you reported pain. Is it gone, all of it?" in asked(club, "sam_o")[0]
    assert asked(club, "joan") == []
    tap(club, "sam_o", answer_to(club, "sam_o"), YES)
    assert asked(club, "sam_o") == []


@pytest.mark.parametrize("who", ["carmen", "dana", "mateo", "priya"])
@pytest.mark.parametrize("press", ["pain_gone", "pain_not_yet"])
def test_nobody_else_can_answer_whatever_the_button_carries(
    club: Club, who: str, press: str
) -> None:
    club.say("mateo", MILD)

    with club.store.writing() as session:
        person = find_person(session, club.ws.team_id, club.people[who].id)
        assert person is not None
        with pytest.raises(ByHandError):
            PRESSES[press].work(Hand(session, person, club.clock.now()), {"report": 1, "step": 1})


def test_a_day_of_which_nobody_looked_is_made_up_for_once(club: Club) -> None:
    club.say("mateo", MILD)
    club.clock.advance(timedelta(days=4))

    for _ in range(2):
        club.bot.tick(club.clock.now())
    club.settle()

    assert len(asked(club)) == 1


@pytest.mark.parametrize(
    "typed", ["it's gone", "its gone", "Gone!", "yes it's all gone now", "the pain is gone, thanks"]
)
def test_gone_is_typed_instead_of_pressed(club: Club, typed: str) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))

    said = club.tell_bot("elena", typed)

    assert asked(club) == []
    assert club.heard("elena")[-1].startswith("On record: Mateo Cruz's pain is gone, as you say.")
    assert any("Elena Cruz says that Mateo Cruz's pain is gone." in one
               for one in club.in_staff_channel())  # fmt: skip
    club.delete(said)
    club.tell_bot("mateo", "can i throw today")
    assert club.heard("mateo")[-1].startswith("Pain was reported")


@pytest.mark.parametrize(
    "typed", ["not yet", "No", "nope, not yet", "still sore", "it's still sore a bit", "not gone",
              "it still hurts", "its still a little sore", "no better", "better but still sore",
              "todavía no"],
)  # fmt: skip
def test_not_yet_is_typed_instead_of_pressed(club: Club, typed: str) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))
    staff = len(club.in_staff_channel())

    said = club.tell_bot("elena", typed)

    assert asked(club) == []
    assert any(one.startswith("Elena Cruz says that Mateo Cruz's pain is not gone yet")
               for one in club.heard("elena"))  # fmt: skip
    assert club.heard("elena")[-1].startswith("Kept: not gone yet for Mateo Cruz")
    assert len(club.in_staff_channel()) == staff
    club.edit(said, "it's gone")
    club.tell_bot("mateo", "can i throw today")
    assert club.heard("mateo")[-1].startswith("Pain was reported")  # asked again on the third day
    go_to(club, chicago("05-05", "08:30"))
    assert len(asked(club)) == 1


def test_gone_put_right_to_not_yet_lets_the_pain_stand(club: Club) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))
    said = club.tell_bot("elena", "it's gone")

    club.edit(said, "not yet")

    club.tell_bot("mateo", "can i throw today")
    assert club.heard("mateo")[-1].startswith("Pain was reported")
    assert any("is not gone yet" in one for one in club.heard("elena"))


@pytest.mark.parametrize("typed", ["better", "it's better", "much better", "yes"])
def test_better_does_not_say_gone_and_is_asked_once_more(club: Club, typed: str) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))

    club.tell_bot("elena", typed)

    assert "A report of pain of Mateo Cruz is still open." in club.heard("elena")[-1]
    club.tell_bot("mateo", "can i throw today")
    assert club.heard("mateo")[-1].startswith("Pain was reported")
    tap(club, "elena", answer_to(club, "elena"), YES)
    assert asked(club) == []


@pytest.mark.parametrize("typed", ["no, now his shoulder hurts 4/10", "still sore, shoulder too"])
def test_new_words_of_pain_are_a_report(club: Club, typed: str) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))

    club.tell_bot("elena", typed)

    assert any("Mateo Cruz: " in one and "shoulder" in one for one in club.in_staff_channel())


def test_where_two_arms_are_asked_after_a_word_alone_ends_nothing(club: Club) -> None:
    club.say("mateo", MILD)
    with club.store.writing() as session:
        elena = session.exec(select(Person).where(Person.name == "Elena Cruz")).one()
        leo = session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
        session.add(
            GuardianLink(workspace_id=leo.workspace_id, person_id=key(elena), pitcher_id=key(leo))
        )
    club.say("carmen", MILD)
    go_to(club, chicago("05-03", "08:30"))
    assert len(asked(club)) == 2

    club.tell_bot("elena", "it's gone")

    assert len(asked(club)) == 2


@pytest.mark.parametrize("typed", ["almost gone", "gone but sore", "gone for now", "not all gone"])
def test_less_than_gone_ends_nothing(club: Club, typed: str) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))

    club.tell_bot("elena", typed)

    club.tell_bot("mateo", "can i throw today")
    assert club.heard("mateo")[-1].startswith("Pain was reported")


def test_nobody_who_was_not_asked_answers_by_a_word(club: Club) -> None:
    club.say("mateo", MILD)
    go_to(club, chicago("05-03", "08:30"))

    for who in ("mateo", "dana", "carmen"):
        club.tell_bot(who, "it's gone")

    assert len(asked(club)) == 1
