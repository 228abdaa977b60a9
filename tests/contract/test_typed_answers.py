"""A word typed instead of a button answers the one open question; of several it asks which."""

from datetime import timedelta

import pytest
from sqlmodel import col, select

from core.model import Outing
from tests.support.club import Club
from tests.support.hours import skip_to, start
from tests.support.taps import answer_to, labels, tap


def _standing(club: Club) -> list[tuple[str | None, int | None]]:
    with club.store.reading() as session:
        rows = session.exec(
            select(Outing).where(col(Outing.withdrawn_at).is_(None)).order_by(col(Outing.id))
        ).all()
    return [(one.kind, one.pitches) for one in rows]


@pytest.mark.parametrize(
    ("typed", "kind"),
    [("game", "game"), ("it was a game", "game"), ("bullpen", "bullpen"), ("Catch play.", "catch")],
)
def test_the_kind_is_typed(club: Club, typed: str, kind: str) -> None:
    club.say("mateo", "30 pitches")

    club.tell_bot("mateo", typed)

    assert _standing(club) == [(kind, 30)]
    assert club.heard("mateo")[-1] == (
        f"Got it: “{typed}” for your line “30 pitches”. My answer to that line is up to date."
    )
    assert labels(answer_to(club, "mateo")) == ["Fix", "Undo"]


@pytest.mark.parametrize("typed", ["26", "26 pitches", "26p", "it was 26"])
def test_the_number_that_was_missing_is_typed(club: Club, typed: str) -> None:
    club.tell_bot("mateo", "threw a pen")

    club.tell_bot("mateo", typed)

    assert _standing(club) == [("bullpen", 26)]


def test_what_a_stray_number_counts_is_typed(club: Club) -> None:
    club.say("mateo", "pen 30 pitches 14")

    club.tell_bot("mateo", "14 strikes")

    with club.store.reading() as session:
        assert session.exec(select(Outing)).one().strikes == 14


def test_the_pitcher_whom_a_first_name_means_is_typed(club: Club) -> None:
    club.tell_bot("priya", "Sam 40p 10cb vs Summit")

    club.tell_bot("priya", "the second one")

    assert "*Sam Oduya* · Game, Sat 2 May" in "".join(club.heard("priya"))


def test_the_same_or_a_second_outing_is_typed(club: Club) -> None:
    club.say("mateo", "pen 20 pitches")
    club.say("mateo", "pen 24 pitches")

    club.tell_bot("mateo", "yes")
    assert club.heard("mateo")[-1].startswith("I'm not sure what that answers.")
    club.tell_bot("mateo", "the second one")

    assert club.heard("mateo")[-1].startswith("Got it: “the second one” for your line “pen 24")


def test_of_several_questions_it_is_asked_which(club: Club) -> None:
    club.say("mateo", "30 pitches")
    club.clock.advance(timedelta(days=1))
    club.say("mateo", "33 pitches")

    club.tell_bot("mateo", "game")

    which = answer_to(club, "mateo")
    assert which.text.startswith("Which one do you mean? Press it.\n\n“30 pitches”: What was it")
    assert "“33 pitches”: What was it" in which.text
    assert [kind for kind, _ in _standing(club)] == [None, None]


@pytest.mark.parametrize("typed", ["idk", "not sure", "practice"])
def test_who_does_not_know_is_told_that_it_stays_open(club: Club, typed: str) -> None:
    club.say("mateo", "30 pitches")

    club.tell_bot("mateo", typed)

    told = answer_to(club, "mateo")
    assert told.text.startswith("No problem: press what you know.")
    tap(club, "mateo", told, "Bullpen")
    assert _standing(club) == [("bullpen", 30)]


def test_an_answer_is_taken_in_the_thread_of_the_line(club: Club) -> None:
    said = club.say("dana", "Leo 30 pitches", club.staff)

    club.ws.say(club.people["dana"], club.staff, "bullpen", under=said)
    club.settle()

    assert _standing(club) == [("bullpen", 30)]


def test_in_the_log_channel_a_word_is_talk(club: Club) -> None:
    club.say("mateo", "30 pitches")

    club.say("mateo", "game")

    assert _standing(club) == [(None, 30)]


def test_nobody_answers_for_another_author(club: Club) -> None:
    club.say("mateo", "30 pitches")

    club.tell_bot("elena", "game")

    assert _standing(club) == [(None, 30)]


def test_an_answer_that_is_edited_or_deleted_is_taken_back(club: Club) -> None:
    club.say("mateo", "30 pitches")
    said = club.tell_bot("mateo", "game")

    club.edit(said, "bullpen")
    assert _standing(club) == [("bullpen", 30)]
    club.delete(said)
    assert _standing(club) == [(None, 30)]


def test_a_parents_typed_yes_ends_pain_where_it_was_asked(club: Club) -> None:
    club.tell_bot("mateo", "elbow hurts 1/10")
    club.tell_bot("elena", "no pain")

    club.tell_bot("elena", "yes")

    assert "On record: Mateo Cruz's pain is gone, as you say." in "".join(club.heard("elena"))
    assert any("Elena Cruz says that Mateo Cruz's pain is gone." in one
               for one in club.in_staff_channel())  # fmt: skip


def test_a_typed_yes_to_the_question_of_the_morning_is_asked_once_more(club: Club) -> None:
    start(club)
    club.tell_bot("mateo", "elbow hurts 1/10")
    skip_to(club, club.clock.now() + timedelta(days=1))
    assert "Is it gone, all of it?" in club.heard("elena")[-1]

    club.tell_bot("elena", "yes")

    asked = answer_to(club, "elena")
    assert "Is the pain gone, at rest and when throwing?" in asked.text
    assert labels(asked) == ["Yes, it is gone", "No, not yet"]


@pytest.mark.parametrize("typed", ["wait it was 64", "oops 64 not 62", "actually 64", "64 not 62"])
@pytest.mark.parametrize("to_bot", [True, False])
def test_a_new_count_alone_points_to_the_newest_line(club: Club, typed: str, to_bot: bool) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    said = club.tell_bot("mateo", typed) if to_bot else club.say("mateo", typed)

    assert club.reaction(said) == []
    shown = answer_to(club, "mateo")
    assert shown.text.startswith("Your newest line in the log: “62p 11cb vs Summit”. Should it be")
    tap(club, "mateo", shown, "Make it 64")
    assert _standing(club) == [("game", 64)]
    assert club.heard("mateo")[-1] == "Done: your line “62p 11cb vs Summit” counts 64 now."


def test_a_count_put_right_by_hand_keeps_the_kind_that_was_answered(club: Club) -> None:
    club.say("mateo", "30 pitches")
    club.tell_bot("mateo", "game")

    club.tell_bot("mateo", "make it 34")
    tap(club, "mateo", answer_to(club, "mateo"), "Make it 34")

    assert _standing(club) == [("game", 34)]
