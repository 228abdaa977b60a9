"""What is still open the next morning: one message to one person, with each question once."""

from tests.support.club import Club
from tests.support.hours import chicago, go_to
from tests.support.taps import answer_to, labels, tap


def asked(club: Club, who: str = "elena") -> list[str]:
    return [one for one in club.heard(who) if one.startswith("Still open from")]


def test_several_lines_are_asked_about_in_one_message_with_each_question_once(club: Club) -> None:
    club.say("dana", "Sam 30p")
    club.say("dana", "Sam 24p in the pen")
    club.say("dana", "Leo 20 pitches")
    go_to(club, chicago("05-03", "08:30"))

    (told,) = asked(club, "dana")
    assert told.count("“Sam” fits Sam Ruiz or Sam Oduya") == 1
    assert told.startswith("Still open from Sat 2 May; I ask only this once more. You wrote: “Sam")
    assert "You wrote: “Leo 20 pitches”" in told
    assert told.count("Press, type the answer here, or edit your line.") == 1


def test_once_answered_what_the_other_line_asks_takes_its_place(club: Club) -> None:
    club.say("dana", "Sam 30p in the pen")
    club.say("dana", "Sam 24p in the pen")
    go_to(club, chicago("05-03", "08:30"))
    assert labels(answer_to(club, "dana")) == ["Sam Ruiz", "Sam Oduya"]

    tap(club, "dana", answer_to(club, "dana"), "Sam Ruiz")

    (told,) = asked(club, "dana")
    assert "You wrote: “Sam 24p in the pen”" in told
    tap(club, "dana", answer_to(club, "dana"), "Sam Oduya")
    assert asked(club, "dana") == []
    assert "Answered, thank you." in club.heard("dana")


def test_no_pain_said_twice_is_asked_about_once(club: Club) -> None:
    club.say("mateo", "elbow pain 1/10")
    club.tell_bot("elena", "no pain today")
    club.tell_bot("elena", "no pain")
    go_to(club, chicago("05-03", "08:30"))

    (told,) = asked(club)
    assert told.count("Is the pain gone") == 1
    message = next(m for m in club.ws.dm_messages(club.people["elena"]) if m.text == told)
    tap(club, "elena", message, "Yes, it is gone")
    assert asked(club) == []
