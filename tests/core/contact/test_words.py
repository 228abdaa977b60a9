import pytest

from core.contact.words import ContactWish, Wish, contact_wish


@pytest.mark.parametrize(
    "text",
    [
        "stop", "Stop.", "STOP!", "no more nudges", "No more reminders please", "stop the nudges",
        "please stop the reminders", "unsubscribe", "stop reminding me", "don't message me",
        "nudges off", "opt me out", "stop sending messages to me",
    ],
)  # fmt: skip
def test_no_more_reminders(text: str) -> None:
    assert contact_wish(text) == ContactWish(Wish.NO_REMINDERS)


@pytest.mark.parametrize(
    "text", ["start", "start reminders", "nudges on", "opt in", "remind me again"]
)
def test_reminders_again(text: str) -> None:
    assert contact_wish(text) == ContactWish(Wish.REMINDERS)


@pytest.mark.parametrize(
    ("text", "who"),
    [
        ("do not message Mateo", "Mateo"),
        ("Please don’t contact Mateo Cruz any more", "Mateo Cruz"),
        ("please do not contact my son", ""),
        ("stop messaging him", ""),
        ("stop messages to Mateo", "Mateo"),
        ("no more texts to my daughter, thanks", ""),
        ("opt Leo out", "Leo"),
        ("don't write to her again", ""),
    ],
)
def test_a_child_is_not_written_to(text: str, who: str) -> None:
    assert contact_wish(text) == ContactWish(Wish.NO_CONTACT, who)


@pytest.mark.parametrize(
    ("text", "who"),
    [("message Mateo again", "Mateo"), ("you may text him again", ""), ("opt Leo in", "Leo")],
)
def test_a_child_is_written_to_again(text: str, who: str) -> None:
    assert contact_wish(text) == ContactWish(Wish.CONTACT, who)


@pytest.mark.parametrize(
    "text",
    [
        "stop throwing", "he stopped after 40", "no pain", "62p 11cb vs Summit", "start saturday",
        "started and went 3 innings", "don't tell coach", "no more than 45 pitches",
        "don't text Leo about the 40 pitches", "can you stop by practice", "game stopped, rain",
        "reminder: practice at 6", "no", "off", "stop him if it hurts",
    ],
)  # fmt: skip
def test_other_words_are_no_wish(text: str) -> None:
    assert contact_wish(text) is None
