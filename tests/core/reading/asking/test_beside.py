"""What stands beside a question: a log part is left alone, a supposition is asked about."""

from datetime import datetime

import pytest

from core.reading.asking import Topic, ask

POSTED = datetime.fromisoformat("2026-05-06T18:30")
ROSTER = ("Mateo Rivas", "Owen Tarrant")


@pytest.mark.parametrize(
    "text",
    [
        "threw 40, can i throw tmrw?",
        "62p 11cb vs Summit. can i throw tmrw?",
        "I threw 45 on Monday. Can I pitch tmrw?",
    ],
)
def test_a_line_that_logs_and_asks_gives_the_question_alone(text: str) -> None:
    found = ask(text, POSTED, roster=ROSTER)

    assert found is not None
    assert (found.topic, found.who, found.pitches, found.unclear) == (Topic.ONE, ("me",), None, ())


@pytest.mark.parametrize(
    "text",
    [
        "if Mateo throws 60 whatever sat when can he go again",
        "when can Mateo go again? if he throws 60 sat",
        "Mateo 40 thursday can he go sat",
        "I want to throw 40 tmrw, when can i go again",
        "we play saturday, who can throw",
        "can Mateo pitch sunday, or Owen if he only goes 20",
    ],
)
def test_a_supposition_that_fits_no_clause_is_asked_about(text: str) -> None:
    found = ask(text, POSTED, roster=ROSTER)

    assert found is not None
    assert found.unclear


def test_he_is_the_one_pitcher_named_before() -> None:
    found = ask("Mateo looked sharp. can he go sunday?", POSTED, roster=ROSTER)

    assert found is not None
    assert found.who == ("Mateo",)


def test_he_is_somebodys_child_where_two_are_named_before() -> None:
    found = ask("Mateo and Owen looked sharp. can he go sunday?", POSTED, roster=ROSTER)

    assert found is not None
    assert found.who == ("child",)


def test_the_next_question_of_a_message_comes_with_the_first() -> None:
    found = ask("when can i pitch again? how many did i throw sat?", POSTED)

    assert found is not None
    assert found.then is not None
    assert (found.topic, found.then.topic) == (Topic.WHEN, Topic.THROWN)


def test_a_statement_is_no_question_and_the_same_words_with_a_question_mark_are() -> None:
    assert ask("Mateo can throw sat", POSTED, roster=ROSTER) is None
    assert ask("Mateo can throw sat?", POSTED, roster=ROSTER) is not None


def test_a_word_that_is_no_name_of_the_roster_asks_of_nobody() -> None:
    assert ask("is parking available saturday", POSTED, roster=ROSTER) is None


def test_a_roster_name_that_is_also_a_word_is_seen_where_a_name_stands() -> None:
    found = ask("can will go sunday", POSTED, roster=("Will Stone",))

    assert found is not None
    assert found.who == ("will",)


def test_a_weekday_just_ahead_in_a_supposed_past_is_asked_about() -> None:
    found = ask("can Mateo go sat if he threw 40 thursday", POSTED, roster=ROSTER)

    assert found is not None
    assert found.unclear == ("thursday",)
