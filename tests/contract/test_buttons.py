"""Answers by a tap: likely readings, the form, undo; over signed HTTP through the real app."""

from typing import Any

from tests.support.club import Club
from tests.support.taps import answer_to, labels, tap


def test_the_kind_is_answered_with_one_tap(club: Club) -> None:
    said = club.say("mateo", "62p 11cb")
    asked = answer_to(club, "mateo")
    assert labels(asked)[:4] == ["Game", "Bullpen", "Live", "Catch play"]

    tap(club, "mateo", asked, "Game")

    assert club.reaction(said) == ["baseball"]
    assert "Breaking balls: 11 of 62 = 18 %." in answer_to(club, "mateo").text
    assert labels(answer_to(club, "mateo")) == ["Fix", "Undo"]
    assert len(club.heard("mateo")) == 1


def test_the_day_is_answered_with_one_tap(club: Club) -> None:
    club.clock.set(club.clock.now().replace(day=3, hour=14))  # 09:00 on Sunday in Chicago
    club.say("mateo", "62p 11cb vs Summit")

    tap(club, "mateo", answer_to(club, "mateo"), "Yesterday, Sat 2 May")

    assert "*Game, Sat 2 May*" in answer_to(club, "mateo").text


def test_a_name_that_fits_two_is_answered_with_one_tap(club: Club) -> None:
    said = club.say("dana", "Sam 40p 5cb vs Summit", club.staff)
    (asked,) = club.ws.replies(club.staff, said)

    tap(club, "dana", asked, "Sam Oduya")

    (answer,) = club.ws.replies(club.staff, said)
    assert "*Sam Oduya* · Game, Sat 2 May" in answer.text


def test_a_stray_number_is_given_its_meaning_with_one_tap(club: Club) -> None:
    club.say("mateo", "62p 11cb 14 vs Summit")

    tap(club, "mateo", answer_to(club, "mateo"), "Changeups")

    assert "14 changeups" in answer_to(club, "mateo").text


def test_an_answer_survives_a_later_edit(club: Club) -> None:
    said = club.say("mateo", "62p 11cb")
    tap(club, "mateo", answer_to(club, "mateo"), "Game")

    club.edit(said, "64p 11cb")

    assert "11 of 64" in answer_to(club, "mateo").text


def test_fix_opens_the_form_with_what_was_read_and_saves_it(club: Club) -> None:
    club.say("mateo", "26p 11cb vs Summit")
    mateo = club.people["mateo"]
    tap(club, "mateo", answer_to(club, "mateo"), "Fix")

    club.ws.submit(mateo, {"pitches": "62"})
    club.settle()

    assert club.ws.open_views(mateo) == []
    assert "Read: 62 pitches, 11 breaking balls" in answer_to(club, "mateo").text


def test_what_was_put_right_by_hand_stays_right_after_an_edit(club: Club) -> None:
    said = club.say("mateo", "26p 11cb vs Summit")
    tap(club, "mateo", answer_to(club, "mateo"), "Fix")
    club.ws.submit(club.people["mateo"], {"pitches": "62"})
    club.settle()

    club.edit(said, "26p 12cb vs Summit")

    assert "Breaking balls: 12 of 62" in answer_to(club, "mateo").text


def test_a_form_with_counts_that_cannot_be_is_answered_at_the_field(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    mateo = club.people["mateo"]
    tap(club, "mateo", answer_to(club, "mateo"), "Fix")

    delivery = club.ws.submit(mateo, {"curve": "70", "breaking": "70"})
    club.settle()

    assert list(club.ws.errors_of(delivery)) == ["breaking"]
    assert len(club.ws.open_views(mateo)) == 1
    assert "11 of 62" in answer_to(club, "mateo").text


def test_a_coach_puts_it_right_and_the_pitcher_reads_by_whom(club: Club) -> None:
    club.say("mateo", "112p 11cb vs Summit")
    (told,) = club.ws.bot_messages(club.staff)

    tap(club, "dana", told, "Fix")
    club.ws.submit(club.people["dana"], {"pitches": "62"})
    club.settle()

    assert "11 of 62" in answer_to(club, "mateo").text
    assert "Put right by Dana Mercer: pitches 112 → 62." in answer_to(club, "mateo").text


def test_nobody_else_may_press_what_he_was_not_shown(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    asked = answer_to(club, "mateo")
    stolen = asked.blocks[-1]["elements"][1]["value"]
    club.say("sam_r", "40p 5cb vs Summit")
    own = answer_to(club, "sam_r")
    club.ws.change(own, blocks=(*own.blocks[:-1], with_value(own.blocks[-1], stolen)))

    tap(club, "sam_r", answer_to(club, "sam_r"), "Undo")

    assert "11 of 62" in answer_to(club, "mateo").text
    assert club.heard("sam_r")[-1].startswith("You may not change this one.")


def with_value(row: dict[str, Any], value: str) -> dict[str, Any]:
    """The row of buttons with another value on its last button."""
    *others, last = row["elements"]
    return {**row, "elements": [*others, {**last, "value": value}]}


def test_undo_takes_the_line_out_of_the_record(club: Club) -> None:
    said = club.say("mateo", "62p 11cb vs Summit")

    tap(club, "mateo", answer_to(club, "mateo"), "Undo")

    assert club.heard("mateo") == ["Taken back: this line no longer counts."]
    assert club.reaction(said) == []


def test_a_question_that_is_answered_already_can_not_be_answered_again(club: Club) -> None:
    club.say("mateo", "62p 11cb")
    asked = answer_to(club, "mateo")
    tap(club, "mateo", asked, "Game")
    club.ws.change(answer_to(club, "mateo"), blocks=asked.blocks)

    tap(club, "mateo", answer_to(club, "mateo"), "Bullpen")

    assert any(text.startswith("*Game, Sat 2 May*") for text in club.heard("mateo"))
    assert "no longer in the log" in club.heard("mateo")[-1]


def test_an_open_question_comes_back_once_the_next_morning(club: Club) -> None:
    club.say("mateo", "62p 11cb")
    club.clock.set(club.clock.now().replace(day=3, hour=12, minute=59))  # 07:59 in Chicago
    club.settle_now()
    assert len(club.heard("mateo")) == 1

    club.clock.set(club.clock.now().replace(hour=13, minute=0))
    club.settle_now()
    club.clock.set(club.clock.now().replace(day=4))
    club.settle_now()

    assert len(club.heard("mateo")) == 2
    assert club.heard("mateo")[1].startswith("Still open from Sat 2 May")

    tap(club, "mateo", answer_to(club, "mateo"), "Game")
    assert club.heard("mateo")[1] == "Answered, thank you."


def test_an_answered_question_does_not_come_back(club: Club) -> None:
    club.say("mateo", "62p 11cb")
    tap(club, "mateo", answer_to(club, "mateo"), "Game")

    club.clock.set(club.clock.now().replace(day=3, hour=14))
    club.settle_now()

    assert len(club.heard("mateo")) == 1


def test_a_count_far_outside_his_history_is_asked_before_it_counts(club: Club) -> None:
    for day, pitches in ((2, 30), (9, 35), (16, 32)):
        club.clock.set(club.clock.now().replace(day=day))
        club.say("mateo", f"{pitches}p 4cb vs Summit")
    club.clock.set(club.clock.now().replace(day=23))

    said = club.say("mateo", "135p 4cb vs Summit")
    asked = answer_to(club, "mateo")
    assert club.reaction(said) == ["question"]
    assert "135 pitches are far more than Mateo Cruz has thrown before" in asked.text

    tap(club, "mateo", asked, "Yes, that is right")
    assert "4 of 135" in answer_to(club, "mateo").text
