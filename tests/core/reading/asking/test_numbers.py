"""Every number of a question is placed, or stands in `unclear`; no text makes the reader fail."""

import re
from datetime import date, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.reading.asking import Asked, ask
from core.reading.asking.vocabulary import words

POSTED = datetime.fromisoformat("2026-05-06T18:30")
ROSTER = ("Mateo Rivas", "Owen Tarrant", "Will Stone")


def accounted(found: Asked) -> set[int]:
    """Every number that an answer could be held to: fields, dates, hours on a 12-hour clock."""
    days = [
        *found.days,
        *(game.on for game in found.games),
        *([found.later] if found.later else []),
    ]
    times = [*found.times, *(game.at for game in found.games if game.at)]
    numbers = {found.pitches, found.innings, found.back, found.rest_days, found.game}
    numbers |= {game.pitches for game in found.games} | {game.innings for game in found.games}
    numbers |= {part for day in days for part in (day.year, day.month, day.day)}
    numbers |= {part for at in times for part in (at.hour, (at.hour - 1) % 12 + 1, at.minute)}
    numbers |= {int(digits) for text in found.unclear for digits in re.findall(r"\d+", text)}
    numbers |= {int(digits) for digits in re.findall(r"\d+", found.team or "")}
    then = accounted(found.then) if found.then else set()
    return {number for number in numbers if number is not None} | then


TEMPLATES = [
    "can Mateo throw {a} sat",
    "can Mateo throw {a} thursday and still go saturday",
    "who can give me {a} tomorrow at {b}",
    "if Owen throws {a} on 5/{b} when is he next eligible",
    "can Owen go sunday if he throws {a} and {b} tonight",
    "how many days rest after {a} pitches and {b} innings",
    "did Mateo throw {a} or {b} sat?",
    "is it {b} days rest for {a} right?",
    "can Mateo throw {a} innings on the {b}th?",
    "can Mateo go {a}-{b} sunday",
    "plan sat {b}am {a}, sun {b}pm {a}",
    "plan sat {b} {a}, {a}",
    "plan {b} games saturday {a} each",
    "who can throw 5/{a}",
    "how many has Mateo thrown the last {a} days",
]


@given(st.sampled_from(TEMPLATES), st.integers(0, 300), st.integers(1, 31))
@settings(max_examples=400)
def test_every_number_of_a_question_is_placed_or_unclear(template: str, a: int, b: int) -> None:
    text = template.format(a=a, b=b)

    found = ask(text, POSTED, roster=ROSTER)

    if found is not None:
        typed = {int(digits) for digits in re.findall(r"\d+", text)}
        copies = {b} if "games" in template and len(found.games) == b else set()
        assert typed - accounted(found) - copies == set(), found


TYPED = ["Mateo", "will", "40", "5/9", "9am", "?", ",", ".", "sat"]
WORDS = [*sorted(words("en").phrases), *TYPED]


@given(st.lists(st.sampled_from(WORDS), max_size=14))
@settings(max_examples=600)
def test_no_run_of_the_readers_own_words_makes_it_fail(typed: list[str]) -> None:
    found = ask(" ".join(typed), POSTED, roster=ROSTER)

    assert found is None or list(found.days) == sorted(set(found.days))


@given(st.text(max_size=80))
@settings(max_examples=300)
def test_no_text_makes_it_fail(text: str) -> None:
    found = ask(text, POSTED, roster=(text, ""))

    assert found is None or isinstance(found, Asked)


def test_a_text_of_more_than_a_thousand_characters_is_no_question() -> None:
    assert ask("who can throw saturday " * 50, POSTED) is None


@pytest.mark.parametrize(
    ("text", "unclear"),
    [
        ("can Mateo throw 400 sat", ("400",)),
        ("if Mateo throws 20-25 tonight can he go sat", ("20-25",)),
        ("can Mateo go 40 50 sat", ("50",)),
        ("can Owen go sunday if he doesn't throw sat", ("if he doesn't throw sat",)),
        ("if Owen throws 40 thu and 30 fri can he go sun", ("fri", "30")),
    ],
)
def test_a_number_or_a_condition_too_many_is_asked_about(
    text: str, unclear: tuple[str, ...]
) -> None:
    found = ask(text, POSTED, roster=ROSTER)

    assert found is not None
    assert found.unclear == unclear


def test_a_count_that_was_thrown_owes_rest_and_one_to_come_is_a_what_if() -> None:
    thrown = ask("when can Mateo go again if he threw 62 sat", POSTED, roster=ROSTER)
    to_come = ask("when can Mateo go again if he throws 62 sat", POSTED, roster=ROSTER)

    assert thrown is not None
    assert (thrown.topic, thrown.days) == ("rest", (date(2026, 5, 2),))
    assert to_come is not None
    assert (to_come.topic, to_come.days) == ("what_if", (date(2026, 5, 9),))
