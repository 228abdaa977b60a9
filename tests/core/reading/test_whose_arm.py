"""Pain is put down to nobody else, and no question or half sentence says that there is none."""

import pytest

from core.reading import UnreadReason
from tests.support.reading import entries_of, reading_of, reasons_of

ELBOW = [{"site": "elbow"}]


@pytest.mark.parametrize("line", ["leo's elbow hurts", "leo elbow hurts", "leos elbow hurts"])
def test_a_teammates_pain_carries_his_name(line: str) -> None:
    assert entries_of(line) == [{"who": "leo", "pain": ELBOW}]


@pytest.mark.parametrize(
    "line", ["my buddy's elbow hurts", "my brother hurt his arm", "a mi hermano le duele el codo"]
)
def test_pain_of_somebody_unnamed_is_asked_and_never_the_authors(line: str) -> None:
    reading = reading_of(line)

    assert reading.entries == ()
    assert {one.reason for one in reading.unread} == {UnreadReason.UNCLEAR_PERSON}


@pytest.mark.parametrize(
    "line", ["is Leo's arm ok?", "Leo elbow ok now?", "Leo's arm is good right?"]
)
def test_a_question_is_no_statement_of_no_pain(line: str) -> None:
    assert reading_of(line, "guardian").entries == ()


@pytest.mark.parametrize("line", ["does Leo's elbow hurt?", "¿le duele el codo a Mateo?"])
def test_pain_that_is_asked_about_is_asked_back_and_not_stored(line: str) -> None:
    reading = reading_of(line, "guardian")

    assert reading.entries == ()
    assert UnreadReason.UNCLEAR_PAIN in {one.reason for one in reading.unread}


@pytest.mark.parametrize(
    "line", ["no pain except elbow", "elbow feels off", "felt something in my elbow"]
)
def test_what_is_left_out_of_no_pain_hurts(line: str) -> None:
    assert entries_of(line) == [{"pain": ELBOW}]


@pytest.mark.parametrize(
    "line",
    [
        "didn't feel any pain in my elbow",
        "i dont have any pain",
        "i don't feel sore at all",
        "pain 0/10",
        "elbow 0 shoulder 0",
    ],
)
def test_no_pain_is_heard_in_every_form(line: str) -> None:
    assert entries_of(f"{line}, 45 pitches") == [{"pitches": 45, "pain": []}]


@pytest.mark.parametrize(
    "line",
    [
        "50p 3ip shoulder good elbow meh",
        "cant straighten my arm",
        "couldnt feel my hand in the 4th",
        "coach my arm's cooked",
        "A Leo se le durmieron los dedos",
        "everyone long toss 40 throws except Sam (arm sore)",
    ],
)
def test_words_that_alarm_are_never_silent(line: str) -> None:
    assert "unclear_pain" in reasons_of(line)


def test_pain_that_went_away_was_pain() -> None:
    line = "Leo 45p 6cb 3ip, he said his shoulder hurt 3 out of 10 but it went away after ice"

    entry = reading_of(line, "guardian").entries[0].as_json()

    assert entry["pain"] == [{"site": "shoulder", "severity": 3, "when": "after"}]


def test_pain_of_today_is_not_put_on_the_day_of_the_outing() -> None:
    assert entries_of("elbow sore today. yesterday threw 40 in the pen") == [
        {"pain": [{"site": "elbow", "sore": True}]},
        {"kind": "bullpen", "on": "2026-08-11", "pitches": 40},
    ]
