"""What a pitcher and a parent type between the lines of the log: none is taken for a count."""

import pytest

from tests.support.club import Club
from tests.support.hours import skip_to
from tests.support.taps import answer_to, labels, tap


@pytest.mark.parametrize("text", [":+1:", ":+1::skin-tone-3:", ":100:", ":1st_place_medal: :-1:"])
def test_the_digits_of_an_emoji_are_no_count(club: Club, text: str) -> None:
    said = club.tell_bot("mateo", text)
    logged = club.say("mateo", f"pen 24 pitches {text}")

    assert club.reaction(said) == []
    assert club.reaction(logged) == ["baseball"]


@pytest.mark.parametrize("text", ["lol ok thanks", "thx!", "ok thank you coach", "gracias", "yep"])
def test_thanks_are_not_answered_with_a_lesson(club: Club, text: str) -> None:
    said = club.tell_bot("mateo", text)

    assert club.heard("mateo") == []
    assert club.reaction(said) == []


def test_a_question_to_the_bot_never_falls_silent(club: Club) -> None:
    for text in ("who are you", "what is this?", "am i gonna be ok", "do i have practice tomorrow"):
        club.tell_bot("mateo", text)

    who, what, well, practice = club.heard("mateo")
    assert who == what
    assert who.startswith("I'm Spinkeeper, the bot that keeps your team's pitching log.")
    assert well == practice
    assert well.startswith("I can't answer that one.")
    assert well.endswith("tell a coach and a parent; a licensed clinician decides.")


def test_spin_reps_without_a_kind_are_catch_play(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    said = club.say("mateo", "12 spins")

    assert club.reaction(said) == ["baseball"]
    assert club.in_staff_channel() == []


def test_a_parent_who_says_that_he_is_fine_is_asked_whether_the_pain_is_gone(club: Club) -> None:
    club.tell_bot("mateo", "elbow hurts 1/10")

    club.tell_bot("elena", "he's fine now")

    asked = answer_to(club, "elena")
    assert "A report of pain of Mateo Cruz is still open." in asked.text
    assert labels(asked) == ["Yes, it is gone", "No, not yet"]
    club.tell_bot("mateo", "can i throw today")
    assert club.heard("mateo")[-1].startswith("Pain was reported")
    tap(club, "elena", asked, "Yes, it is gone")
    club.tell_bot("mateo", "can i throw today")
    assert club.heard("mateo")[-1].startswith("Rest done")


def test_a_minor_who_says_that_it_is_fine_ends_nothing(club: Club) -> None:
    club.tell_bot("mateo", "elbow hurts 1/10")

    club.tell_bot("mateo", "its fine now")

    assert "stays open until a parent or guardian says that it is gone" in club.heard("mateo")[-1]
    assert labels(answer_to(club, "mateo")) == []


def test_fine_where_nothing_hurts_is_talk(club: Club) -> None:
    for text in ("he's fine", "sounds good", "practice was good"):
        said = club.tell_bot("elena", text)
        assert club.reaction(said) == []

    assert not any("pain" in one for one in club.heard("elena") if "pitching log" not in one)


def test_do_not_tell_typed_after_the_report_is_answered_with_the_truth(club: Club) -> None:
    club.tell_bot("mateo", "elbow hurts 1/10")

    club.tell_bot("mateo", "dont tell my mom")

    assert club.heard("mateo")[-1].startswith("You asked to keep it quiet, and I'd rather tell you")
    club.say("mateo", "dont tell anybody what we got coach for his birthday")
    assert club.in_log_channel() == []


@pytest.mark.parametrize("text", ["hola", "no hablo ingles", "que es esto", "¿cómo está Mateo?"])
def test_a_parent_who_writes_spanish_gets_a_word_of_help_in_spanish(club: Club, text: str) -> None:
    club.tell_bot("elena", text)

    (told,) = club.heard("elena")
    assert told.startswith("Llevo el registro de lanzamientos. Puedes escribirme en español")


@pytest.mark.parametrize("text", ["parar", "no más mensajes", "no quiero recordatorios", "basta"])
def test_a_parent_ends_reminders_in_spanish(club: Club, text: str) -> None:
    club.tell_bot("elena", text)

    assert club.heard("elena")[0].startswith("Done: no more reminders.")


def test_a_child_is_left_alone_in_spanish_too(club: Club) -> None:
    club.tell_bot("elena", "no le escriban a Mateo")

    assert club.heard("elena")[0].startswith("Done: from now on I write nothing to Mateo Cruz.")


def test_of_two_children_the_one_with_a_record_is_answered_and_the_other_named(club: Club) -> None:
    club.tell_bot("joan", "rest")

    (told,) = club.heard("joan")
    assert told.startswith("Sam Oduya: rest done")
    assert "Ben Abara: I keep no record (no consent on file)" in told


def test_the_summary_names_whoever_owes_answers_once(club: Club) -> None:
    club.bot.tick(club.clock.now())
    for text in ("64 and stuff", "71 or so i think", "58 i guess"):
        club.say("mateo", text)
    skip_to(club, club.clock.now().replace(day=4, hour=13))

    (summary,) = [one for one in club.in_staff_channel() if one.startswith("*Monday summary")]
    assert summary.count("Mateo Cruz (Sat 2 May)") == 1
