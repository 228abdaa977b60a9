"""A bare number after a count: one button makes it the new count, and nothing is guessed."""

import pytest

from tests.support.club import Club
from tests.support.phone import fill, form, home, press_home
from tests.support.taps import answer_to, labels, tap


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("oops it was 26", "Make it 26"),
        ("it was 26", "Make it 26"),
        ("sorry, 26 not 24", "Make it 26"),
        ("26", "26 pitches, not 24"),
    ],
)
def test_the_new_count_is_one_press_away(club: Club, text: str, label: str) -> None:
    club.say("mateo", "24p 5cb vs Summit")
    club.say("mateo", text)
    asked = answer_to(club, "mateo")
    assert labels(asked)[0] == label

    tap(club, "mateo", asked, label)

    club.tell_bot("mateo", "how many did I throw sat")
    assert club.heard("mateo")[-1].startswith("*Mateo Cruz*, Sat 2 May: 26 pitches.")


def test_until_it_is_pressed_the_count_before_stands(club: Club) -> None:
    club.say("mateo", "24p 5cb vs Summit")
    club.say("mateo", "oops it was 26")

    club.tell_bot("mateo", "how many did I throw sat")
    assert club.heard("mateo")[-1].startswith("*Mateo Cruz*, Sat 2 May: 24 pitches.")


def test_of_a_line_about_two_each_is_offered(club: Club) -> None:
    club.say("priya", "Leo 35, Sam R 40 vs Summit")
    club.say("priya", "oops it was 37")

    assert labels(answer_to(club, "priya"))[:2] == [
        "Leo Ortiz: 37 pitches, not 35",
        "Sam Ruiz: 37 pitches, not 40",
    ]


@pytest.mark.parametrize("text", ["it was 95", "it was 72 degrees", "good game, won by 26"])
def test_another_number_is_no_new_count(club: Club, text: str) -> None:
    club.say("mateo", "24p 5cb vs Summit")
    club.say("mateo", text)

    assert not any("not 24" in label for label in labels(answer_to(club, "mateo")))


def test_the_staff_put_somebody_elses_count_right_by_one_press(club: Club) -> None:
    club.say("priya", "Leo 35, Sam R 61 vs Summit")
    club.say("dana", "change Sam R to 64", club.staff)
    asked = club.ws.bot_messages(club.staff)[-1]
    assert labels(asked)[0] == "64 pitches, not 61"

    tap(club, "dana", asked, "64 pitches, not 61")

    club.tell_bot("dana", "how many did Sam Ruiz throw sat")
    assert club.heard("dana")[-1].startswith("*Sam Ruiz*, Sat 2 May: 64 pitches.")


def two_counts(club: Club) -> None:
    club.say("mateo", "42p 5cb vs Summit")
    club.say("priya", "Mateo 50 vs Summit")


def test_home_tells_of_two_counts_and_settles_them(club: Club) -> None:
    two_counts(club)

    read = home(club, "dana")
    assert (
        "Mateo Cruz: 50 pitches by Priya Venn, 42 pitches by Mateo Cruz (asked on Sat 2 May). One "
        "outing, or two? The larger number stands until that is answered.\n"
        "[Answer]"
    ) in read
    assert "Two counts of one outing? Mateo Cruz, Sat 2 May." in read

    press_home(club, "dana", "Answer")
    assert "What is it?: The same outing" in form(club, "dana")
    assert fill(club, "dana", same="same") == {}
    assert "One outing, or two?" not in home(club, "dana")


def test_home_tells_of_waiting_questions_newest_first(club: Club) -> None:
    club.say("priya", "Lou 40 pitches vs Summit")
    club.say("mateo", "pen 24 pitches and 7")

    read = home(club, "dana")
    waiting = read.partition("# Questions that wait for an answer\n")[2].splitlines()
    assert waiting[:2] == ["• Mateo Cruz, Sat 2 May", "• Priya Venn, Sat 2 May"]
