import pytest

from core.reading.wishes import asks_for_secrecy, sounds_dangerous


@pytest.mark.parametrize(
    "text",
    [
        "elbow hurts 4/10 but dont tell coach",
        "please don't tell my mom, shoulder is sore",
        "keep it quiet but my arm hurts",
        "lets keep this between us, elbow 5",
        "me duele el codo pero no le digas al coach",
    ],
)
def test_a_wish_for_secrecy_is_heard(text: str) -> None:
    assert asks_for_secrecy(text)


@pytest.mark.parametrize(
    "text", ["I want to die", "coach hits me", "i'm scared of coach", "mi papá me pega"]
)
def test_words_of_danger_are_heard(text: str) -> None:
    assert sounds_dangerous(text)


@pytest.mark.parametrize(
    "text",
    [
        "62p 11cb vs Summit no pain",
        "the ball hit me on the elbow, elbow hurts 3/10",
        "that batter hit me hard, 3 runs",
        "killed it today, 40p",
        "tell coach i threw 40",
        "i died on that last sprint lol",
    ],
)
def test_baseball_is_neither(text: str) -> None:
    assert not asks_for_secrecy(text)
    assert not sounds_dangerous(text)
