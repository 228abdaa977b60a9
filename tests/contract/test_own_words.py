"""What players and parents ask about themselves in their own words: answered to them alone."""

import pytest
from sqlmodel import select

from core.model import Pitcher
from tests.support.club import Club
from tests.support.phone import fill, form
from tests.support.taps import answer_to, labels, tap


@pytest.mark.parametrize("text", ["stats", "my stats", "my log", "show me my stats please"])
def test_a_pitcher_sees_his_record_at_a_glance(club: Club, text: str) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    club.tell_bot("mateo", text)

    assert club.heard("mateo")[-1] == (
        "*Your log*\n"
        "Not on Sat 2 May; earliest Wed 6 May by rule. At most 1 game as pitcher in a day; 1 so "
        "far (Pitch Smart, 17–18).\n"
        "• Sat 2 May, game: 62 pitches, 11 breaking balls\n"
        "1 outing in all. Breaking balls this season: 11 of 62 (18 %).\n"
        "League and local rules govern. The coach decides."
    )


@pytest.mark.parametrize(
    ("who", "text"),
    [
        ("carmen", "stats"),
        ("carmen", "my son's stats"),
        ("dana", "stats Leo"),
        ("dana", "leos stats"),
    ],
)
def test_a_record_at_a_glance_of_a_child_or_by_name(club: Club, who: str, text: str) -> None:
    club.say("carmen", "catch 30 throws 12 spins")

    club.tell_bot(who, text)

    told = club.heard(who)[-1]
    assert told.startswith("*Leo Ortiz*\nRest done")
    assert "• Sat 2 May, catch play: 30 throws" in told


def test_pain_that_stands_is_the_first_thing_at_a_glance_and_a_clinician_decides(
    club: Club,
) -> None:
    club.say("mateo", "62p 11cb vs Summit, elbow hurts 2/10")

    for text in ("stats", "can i throw today", "is my arm ok to throw", "am i ok to pitch"):
        club.tell_bot("mateo", text)

        told = club.heard("mateo")[-1]
        assert told.removeprefix("*Your log*\n").startswith("Pain was reported on Sat 2 May"), text
        assert "linician decides" in told
        assert "coach decides" not in told


def test_what_is_kept_is_told_to_whoever_may_read_it(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit, elbow hurts 2/10")

    club.tell_bot("mateo", "what do you know about me?")
    club.tell_bot("elena", "what do you know about mateo")
    club.tell_bot("dana", "what do you have on Mateo")
    club.tell_bot("sam_r", "what do you know about Mateo")
    club.tell_bot("priya", "what do you know about Mateo")

    assert club.heard("mateo")[-1] == (
        "About you I keep: name and date of birth, 1 outing since Sat 2 May, 1 arm report and the "
        "lines behind them. Only you, Elena Cruz and the coaches of Herons can ask me for it."
    )
    assert club.heard("elena")[-1].endswith("can ask me for it. “delete my data” deletes it.")
    assert club.heard("dana")[-1].startswith("About Mateo Cruz I keep: name")
    assert club.heard("sam_r") == ["I can only answer you about Sam Ruiz."]
    assert club.heard("priya")[-1].startswith("There is no pitcher whose record you may ask about")


@pytest.mark.parametrize("text", ["delete everything", "delete my data"])
def test_a_guardian_gets_the_button_that_deletes_and_is_asked_once_more(
    club: Club, text: str
) -> None:
    club.tell_bot("carmen", text)

    asked = answer_to(club, "carmen")
    assert asked.text.startswith("Nothing is deleted yet. The button says what goes")
    tap(club, "carmen", asked, "Delete Leo Ortiz's record")
    assert "This deletes everything that I store about Leo Ortiz" in form(club, "carmen")
    fill(club, "carmen")
    with club.store.reading() as session:
        assert session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
    assert club.heard("carmen")[-1].startswith("Last question: delete everything")


def test_a_minor_is_told_who_can_have_it_deleted_and_the_staff_whom_to_ask(club: Club) -> None:
    club.tell_bot("mateo", "delete everything")
    club.tell_bot("dana", "delete everything")
    club.tell_bot("dana", "delete the record of Leo")

    (told,) = club.heard("mateo")
    assert told.startswith("Nothing was deleted. Until you are 18, Elena Cruz can have your record")
    assert all(one.startswith("Nothing was deleted. A guardian (") for one in club.heard("dana"))
    assert labels(answer_to(club, "mateo")) == []
    assert labels(answer_to(club, "dana")) == []


def test_settings_are_the_coaches_and_a_parent_is_told_what_is_theirs(club: Club) -> None:
    club.tell_bot("mateo", "settings")
    club.tell_bot("elena", "settings")

    assert club.heard("mateo") == [
        "The team's settings are for the coaches. A parent or guardian decides what I write to you."
    ]
    assert "“stop” ends reminders to you" in club.heard("elena")[0]


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("threw a pen", "How many pitches in the bullpen?"),
        ("did long toss", "How many throws in long toss?"),
        ("played catch", "How many throws? Type them, for example “catch 30 throws 12 spins”"),
        ("pitched today", "How many pitches? Type them, for example “62p 11cb vs Summit”"),
    ],
)
def test_a_kind_without_a_number_is_asked_for_it(club: Club, text: str, asked: str) -> None:
    club.tell_bot("mateo", text)

    assert club.heard("mateo")[0].startswith(asked)


@pytest.mark.parametrize(
    ("who", "text"),
    [
        ("mateo", "is my arm ok to throw"),
        ("mateo", "my arm is ok to throw right"),
        ("mateo", "am I ok to throw today"),
        ("mateo", "can i throw today"),
        ("elena", "is Mateo ok?"),
        ("elena", "how's Mateo's arm"),
        ("elena", "is mateo hurt"),
        ("dana", "is mateos arm ok"),
    ],
)
def test_a_question_about_an_arm_in_the_log_channel_is_answered_to_the_asker_alone(
    club: Club, who: str, text: str
) -> None:
    club.say("mateo", "elbow hurts 2/10")
    before = len(club.heard(who))

    said = club.say(who, text)

    assert club.reaction(said) == []
    assert club.in_log_channel() == []
    (told,) = club.heard(who)[before:]
    assert "Pain was reported on Sat 2 May" in told
    assert "linician decides" in told


def test_team_mates_who_ask_after_each_other_in_the_log_channel_are_left_alone(club: Club) -> None:
    for text in ("is mateo ok", "is he ok", "how's Mateo's arm"):
        said = club.say("sam_r", text)
        assert club.reaction(said) == []

    assert club.heard("sam_r") == []


def test_i_agree_leads_to_the_request_and_its_button_says_it(club: Club) -> None:
    club.tell_bot("joan", "i agree")

    asked = answer_to(club, "joan")
    assert asked.text.startswith("*May I keep Ben Abara's pitching record?*")
    assert "Sam Oduya's pitching record" in asked.text
    assert labels(asked) == ["I agree", "I do not agree", "Withdraw consent"]
    tap(club, "joan", asked, "I agree")
    club.tell_bot("joan", "stats Ben")
    assert club.heard("joan")[-1].startswith("*Ben Abara*\nRest done")


def test_a_minor_is_told_who_agrees(club: Club) -> None:
    club.tell_bot("mateo", "i agree")

    (told,) = club.heard("mateo")
    assert told.startswith("Only a guardian agrees to a pitcher's record")
    assert labels(answer_to(club, "mateo")) == []
