"""How families tell of an arm: by day, by site, in somebody's words, and of their own bodies."""

from typing import Any

from tests.support.reading import entries_of, reading_of, reasons_of


def pain_of(text: str) -> Any:
    """The pain of the first entry of a parent's line."""
    return entries_of(text, "guardian")[0].get("pain")


def test_the_arm_of_each_day() -> None:
    line = "Fri: 21 pitches. Sun: 37 pitches. He had no pain Fri, but on Sun his elbow was sore"

    assert [one["pain"] for one in entries_of(line, "guardian")] == [
        [],
        [{"site": "elbow", "sore": True}],
    ]


def test_a_number_for_each_site() -> None:
    line = "His elbow and shoulder are both sore, he says 2 for the elbow and 3 for the shoulder"

    assert [one["severity"] for one in pain_of(line)] == [2, 3]


def test_a_site_named_with_its_number_alone_is_not_dropped() -> None:
    assert "unclear_pain" in reasons_of("pain in elbow 3, 2 for the shoulder")


def test_a_number_in_his_words() -> None:
    assert pain_of("Her shoulder was sore, she said 3") == [
        {"site": "shoulder", "severity": 3, "sore": True}
    ]
    assert pain_of("his forearm got sore. He puts it at 3")[0]["severity"] == 3


def test_the_same_word_again_is_no_second_pain() -> None:
    line = "says his forearm is tight. No number, just tight."

    assert pain_of(line) == [{"site": "forearm"}]


def test_a_parents_own_body_is_not_the_pitchers() -> None:
    assert pain_of("45 throws. my hand is swollen, his arm is great") == []
    assert pain_of("45 throws. my hand is swollen") == [{"site": "hand"}]


def test_pain_that_is_denied() -> None:
    assert pain_of("30 throws. His pride hurts, his arm does not") == []
    assert pain_of("30 throws. elbow has not hurt") == []
    assert pain_of("30 throws. He hasn't complained of any pain") == []
    assert pain_of("His elbow, which was a 4 last week, did not hurt. 30 throws") == []


def test_nobody_is_all_of_them() -> None:
    line = "Leo 30 pitches, Max 20 pitches. Nobody is hurting."

    assert [one["pain"] for one in entries_of(line, "coach")] == [[], []]


def test_a_request_in_case_it_hurts_is_no_pain() -> None:
    assert reading_of("If his elbow hurts please pull him", "guardian").unread == ()
    assert reading_of("if it hurts he should tell you. elbow is a 3 now", "guardian").unread


def test_a_rough_arm_in_a_little_more_words() -> None:
    entry = entries_of("He is a little tired in the arm but no hurt anywhere", "guardian")[0]

    assert entry == {"pain": [], "tired": True}
