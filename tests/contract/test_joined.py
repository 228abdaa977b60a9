"""One outing told by several lines: counted once, in parts or twice logged."""

from datetime import timedelta

import pytest

from tests.support.club import Club
from tests.support.taps import answer_to, labels, tap


def later(club: Club, **span: float) -> None:
    club.clock.advance(timedelta(**span))


def test_a_count_on_the_way_is_carried_on_by_the_final_one(club: Club) -> None:
    club.say("mateo", "45p 7cb after 3 innings vs Summit")
    later(club, hours=1)
    club.say("mateo", "finished with 71 pitches 13 cb vs Summit")

    first, second = club.heard("mateo")
    assert "13 of 71" in second
    assert "3 days for 71 pitches" in second
    assert "13 of 71" in first


def test_a_reply_in_the_thread_of_a_line_completes_it(club: Club) -> None:
    said = club.say("mateo", "62p vs Summit")
    club.ws.say(club.people["mateo"], club.log, "62p 11cb", under=said)
    club.settle()

    assert "11 of 62" in club.heard("mateo")[-1]
    assert club.in_staff_channel() == []


def test_breaking_balls_added_later_complete_the_outing(club: Club) -> None:
    club.say("mateo", "62p vs Summit")
    later(club, minutes=20)
    club.say("mateo", "11 of them were curves")

    assert "Breaking balls: 11 of 62 = 18 %." in club.heard("mateo")[-1]


def test_the_same_outing_by_two_people_is_asked_about_and_counted_once(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    later(club, minutes=5)
    said = club.say("elena", "he threw 62 vs Summit, 11 curves")

    assert club.reaction(said) == ["question"]
    asked = answer_to(club, "elena")
    assert "logged by Mateo Cruz (62 pitches). Is this the same one?" in asked.text
    assert labels(asked)[:2] == ["The same outing", "A second outing"]

    tap(club, "elena", asked, "The same outing")
    assert club.reaction(said) == ["baseball"]
    assert "11 of 62" in answer_to(club, "elena").text
    assert club.in_staff_channel() == []


def test_a_second_outing_is_counted_as_one_and_goes_over_the_rule(club: Club) -> None:
    club.say("mateo", "30p 5cb vs Summit")
    later(club, hours=3)
    club.say("mateo", "30p 5cb vs Summit")

    tap(club, "mateo", answer_to(club, "mateo"), "A second outing")

    assert "10/60" in answer_to(club, "mateo").text
    assert "*Over a rule*" in club.in_staff_channel()[0]


def test_the_staff_see_both_counts_where_two_people_differ(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    later(club, minutes=5)
    club.say("elena", "he threw 60 vs Summit, 11 curves")

    tap(club, "elena", answer_to(club, "elena"), "The same outing")

    (both,) = club.in_staff_channel()
    assert "62 pitches (by Mateo Cruz) and 60 pitches (by Elena Cruz)" in both
    assert "11/62" in answer_to(club, "mateo").text or "11 of 62" in answer_to(club, "mateo").text


def test_a_named_second_game_is_another_outing_and_not_asked(club: Club) -> None:
    club.say("mateo", "game 1 vs Summit 30p 5cb")
    later(club, hours=3)
    said = club.say("mateo", "game 2 vs Summit 28p 4cb")

    assert club.reaction(said) == ["baseball"]
    assert "last 7" in club.heard("mateo")[-1].lower()
    assert "9/58" in club.heard("mateo")[-1]


def test_when_the_first_log_is_taken_out_the_second_counts(club: Club) -> None:
    said = club.say("priya", "vs Summit: Leo 62p 8cb 4ip")
    later(club, minutes=5)
    second = club.say("carmen", "Leo 62p 8cb 4ip vs Summit")
    assert club.reaction(second) == ["question"]

    club.delete(said)

    assert club.reaction(second) == ["baseball"]
    assert "8 of 62" in answer_to(club, "carmen").text


def test_two_people_with_unlike_counts_are_asked_all_the_same(club: Club) -> None:
    club.say("priya", "vs Summit: Leo 35p 4cb 2ip")
    later(club, minutes=5)

    second = club.say("carmen", "Leo 50p 6cb")

    assert club.reaction(second) == ["question"]
    assert (
        "logged by Priya Venn (35 pitches). Is this the same one?" in answer_to(club, "carmen").text
    )


def test_of_two_counts_the_higher_one_owes_the_rest(club: Club) -> None:
    club.say("mateo", "60p 11cb vs Summit")
    later(club, minutes=5)
    club.say("elena", "he threw 62 vs Summit, 11 curves")

    tap(club, "elena", answer_to(club, "elena"), "The same outing")

    assert "3 days for 62 pitches" in answer_to(club, "elena").text


def test_a_form_does_not_answer_whether_it_is_the_same(club: Club) -> None:
    club.say("priya", "vs Summit: Mateo 62p 8cb 4ip")
    later(club, minutes=5)
    club.say("mateo", "62p 8cb vs Summit")

    tap(club, "mateo", answer_to(club, "mateo"), "Fix")
    club.ws.submit(club.people["mateo"], {"pitches": "64"})
    club.settle()

    assert "Is this the same one?" in answer_to(club, "mateo").text
    assert not any("*Over a rule*" in text for text in club.in_staff_channel())


def test_while_two_counts_are_asked_about_the_larger_one_owes_the_rest(club: Club) -> None:
    # Pitch Smart (MLB and USA Baseball), ages 13-14: 21-35 pitches owe 1 day, 51-65 owe 3.
    club.say("priya", "Leo 30 pitches 3 cb")
    later(club, minutes=5)

    club.say("carmen", "Leo 51 pitches 5 cb vs Summit today")

    asked = answer_to(club, "carmen").text
    assert "Is this the same one?" in asked
    assert "the larger count owes the rest" in asked
    assert "3 days for 51 pitches" in asked
    assert "Earliest Wed 6 May" in asked
    assert any("Another line counts 51 pitches" in text for text in club.in_staff_channel())


def test_an_answer_about_rest_names_the_open_question_about_two_counts(club: Club) -> None:
    club.say("priya", "Leo 30 pitches 3 cb")
    later(club, minutes=5)
    club.say("carmen", "Leo 51 pitches 5 cb vs Summit today")

    club.tell_bot("carmen", "when can Leo pitch")

    told = answer_to(club, "carmen").text
    assert "earliest Wed 6 May" in told
    assert "Two counts are logged for Sat 2 May" in told


def test_a_smaller_second_count_takes_no_rest_away_while_it_is_asked_about(club: Club) -> None:
    club.say("priya", "Leo 51 pitches 5 cb")
    later(club, minutes=5)

    club.say("carmen", "Leo 30 pitches 3 cb vs Summit today")

    assert "3 days for 51 pitches" in answer_to(club, "carmen").text


def test_a_second_outing_leaves_the_first_line_with_its_own_count(club: Club) -> None:
    club.say("mateo", "30p 3cb vs Summit")
    later(club, minutes=5)
    club.say("elena", "Mateo 51p 5cb vs Summit")
    assert "Another line counts 51 pitches" in answer_to(club, "mateo").text

    tap(club, "elena", answer_to(club, "elena"), "A second outing")

    assert "Another line counts" not in answer_to(club, "mateo").text


def questions_to(club: Club, who: str) -> str:
    return answer_to(club, who).text


def test_a_running_count_is_asked_about_and_never_added_up(club: Club) -> None:
    for text in ("Sam Ruiz 45 6cb", "Sam Ruiz 54 8cb", "Sam Ruiz 62 9cb"):
        said = club.say("priya", text)
        later(club, minutes=15)

    assert club.reaction(said) == ["question"]
    assert "logged by you (45 pitches). Is this its new count, or a second outing?" in (
        questions_to(club, "priya")
    )
    assert not any("*Over a rule*" in text for text in club.in_staff_channel())
    club.tell_bot("dana", "when can Sam Ruiz pitch")
    # Pitch Smart (MLB and USA Baseball), ages 17-18: 61-80 pitches owe 3 days, a sum of 161 more.
    assert "earliest Wed 6 May" in answer_to(club, "dana").text


def test_a_running_count_that_is_answered_is_the_outing_s_count(club: Club) -> None:
    club.say("mateo", "45p 6cb vs Summit")
    later(club, minutes=30)
    said = club.say("mateo", "62p 9cb vs Summit")

    tap(club, "mateo", answer_to(club, "mateo"), "The same outing")

    assert club.reaction(said) == ["baseball"]
    assert "9 of 62" in answer_to(club, "mateo").text


def test_an_edited_second_count_is_asked_about_again(club: Club) -> None:
    club.say("priya", "Leo 45")
    later(club, minutes=5)
    said = club.say("priya", "Leo 47")
    assert club.reaction(said) == ["question"]

    club.edit(said, "Leo 54")

    assert club.reaction(said) == ["question"]
    assert not any("Several games" in text for text in club.in_staff_channel())


@pytest.mark.parametrize("text", ["oops it was 26 pitches", "actually 52 pitches"])
def test_a_count_put_right_is_asked_about_in_one_question(club: Club, text: str) -> None:
    club.say("mateo", "bullpen 38 pitches")
    later(club, minutes=5)

    said = club.say("mateo", text)

    assert club.reaction(said) == ["question"]
    asked = answer_to(club, "mateo")
    assert "Is this its new count, or a second outing?" in asked.text
    assert labels(asked)[:2] == ["The same outing", "A second outing"]
    tap(club, "mateo", asked, "The same outing")
    assert club.reaction(said) == ["baseball"]


def test_another_opponent_is_another_outing_and_not_asked(club: Club) -> None:
    club.say("mateo", "20p 3cb vs Summit")
    later(club, hours=3)

    said = club.say("mateo", "18p 2cb vs Ridge")

    assert club.reaction(said) == ["baseball"]
    assert "5/38" in answer_to(club, "mateo").text


def test_the_staff_hear_once_of_a_rule_that_one_outing_went_over(club: Club) -> None:
    club.say("mateo", "112p 20cb vs Summit")
    later(club, minutes=5)
    said = club.say("mateo", "actually 110p 20cb vs Summit")
    assert club.reaction(said) == ["question"]

    over = [text for text in club.in_staff_channel() if "*Over a rule*" in text]

    assert len(over) == 1
    assert over[0].count("Over the rule on") == 1


def test_time_behind_the_plate_is_no_second_count(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    later(club, minutes=5)

    said = club.say("mateo", "caught 3 innings")

    assert club.reaction(said) == ["baseball"]
