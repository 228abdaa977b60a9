import pytest

from core.reading.urgent import Urgency, surely_of_the_body, urgency


@pytest.mark.parametrize(
    ("text", "level"),
    [
        ("elbow locks when I throw, 3/10", Urgency.BE_SEEN),
        ("can't straighten my arm", Urgency.BE_SEEN),
        ("elbow hurts, cannot bend it", Urgency.BE_SEEN),
        ("felt a pop on the last curve, elbow hurts", Urgency.BE_SEEN),
        ("sharp pain in the shoulder", Urgency.BE_SEEN),
        ("ring finger numb after the game", Urgency.BE_SEEN),
        ("codo duele, dedos entumecidos", Urgency.BE_SEEN),
        ("elbow is swollen 2/10", Urgency.URGENT_CARE),
        ("shoulder aches at night", Urgency.URGENT_CARE),
        ("elbow pain, got hit by a comebacker", Urgency.URGENT_CARE),
        ("arm hurts and my hand is blue", Urgency.URGENT_CARE),
        ("he collapsed after a ball hit him", Urgency.EMERGENCY),
        ("got hit in the chest and can't breathe", Urgency.EMERGENCY),
    ],
)
def test_words_that_call_for_a_clinician(text: str, level: Urgency) -> None:
    assert urgency(text) is level


@pytest.mark.parametrize(
    "text",
    [
        "elbow 2/10, no swelling",
        "shoulder sore, not numb",
        "no numbness or tingling",
        "62p 11cb, popped up twice, arm ok",
        "locked in today, 62p",
        "elbow pain 2/10 after 40p",
        "caught 3 innings, arm sore",
    ],
)
def test_what_is_denied_and_what_is_baseball_is_not_urgent(text: str) -> None:
    assert urgency(text) is None


def test_some_words_speak_of_a_body_without_any_pain_beside_them() -> None:
    assert surely_of_the_body("i felt a pop on the last pitch")
    assert not surely_of_the_body("pop fly to short, sharp curve today")
