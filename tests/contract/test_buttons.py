"""Answers by a tap: likely readings, the form, undo; over signed HTTP through the real app."""

import json

from bot.local.records import Message
from bot.local.talk import Said
from tests.support.club import Club


def answer_to(club: Club, who: str) -> Message:
    """The bot's newest direct message to somebody."""
    mine = club.ws.dm_messages(club.people[who])
    return [message for message in mine if message.user == club.ws.bot.id][-1]


def labels(message: Message) -> list[str]:
    rows = [block for block in message.blocks if block["type"] == "actions"]
    return [element["text"]["text"] for row in rows for element in row["elements"]]


def tap(club: Club, who: str, message: Message, label: str) -> None:
    rows = [block for block in message.blocks if block["type"] == "actions"]
    (button,) = [e for row in rows for e in row["elements"] if e["text"]["text"] == label]
    club.ws.press(club.people[who], message, button["action_id"])
    club.settle()


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
    club.say("mateo", "26p 11cb vs Summit")
    said = club.say("dana", "Mateo 40p 5cb vs Oak Flats yesterday", club.staff)
    (answer,) = club.ws.replies(club.staff, said)
    outing = json.loads(
        [b for b in answer.blocks if b["type"] == "actions"][0]["elements"][0]["value"]
    )["outing"]

    tap(club, "dana", answer, "Fix")
    club.ws.submit(club.people["dana"], {"pitches": "42"})
    club.settle()

    assert outing
    assert "42 pitches" in club.ws.replies(club.staff, said)[0].text


def test_undo_takes_the_line_out_of_the_record(club: Club) -> None:
    said = club.say("mateo", "62p 11cb vs Summit")

    tap(club, "mateo", answer_to(club, "mateo"), "Undo")

    assert club.heard("mateo") == ["Taken back: this line no longer counts."]
    assert club.reaction(said) == []


def test_a_button_pressed_twice_changes_nothing_more(club: Club) -> None:
    club.say("mateo", "62p 11cb")
    asked = answer_to(club, "mateo")
    tap(club, "mateo", asked, "Game")

    delivery = club.ws.press(club.people["mateo"], answer_to(club, "mateo"), undo_id(club))
    club.settle()
    assert delivery

    assert club.heard("mateo")[0] == "Taken back: this line no longer counts."


def undo_id(club: Club) -> str:
    rows = [b for b in answer_to(club, "mateo").blocks if b["type"] == "actions"]
    (button,) = [e for row in rows for e in row["elements"] if e["text"]["text"] == "Undo"]
    return str(button["action_id"])


def said_in_log(club: Club, text: str) -> Said:
    return club.say("mateo", text)
