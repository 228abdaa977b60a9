"""What must hold for any text at all."""

import json
import random
import re
from datetime import datetime
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.reading import Entry, read
from core.reading.account import LEFT_OVER
from core.reading.reader import explain

POSTED = datetime.fromisoformat("2026-05-20T20:00")
COUNTS = (
    "pitches", "breaking", "curve", "slider", "changeup", "fastball", "strikes",
    "breaking_strikes", "outs", "caught_outs", "effort",
)  # fmt: skip
VOCABULARY = """
62 11 4.1 2/3 7/10 5-3 60ish ~70 15% 5:30 3rd dozen twelve pitches p cb curves sliders ch fb ip
innings strikes pen bullpen catch game vs Hogs Leo <@U41K7> yesterday sat no not pain elbow sore
arm good threw with of and then , . ; : - ( ) ? each total about picheos curvas sin entradas dolor
brazo ayer mph limit max season tomorrow
"""
WORDS = st.sampled_from([*VOCABULARY.split(), "\n"])
LINES = st.lists(WORDS, max_size=25).map(" ".join)


@settings(max_examples=150, deadline=None)
@given(st.one_of(st.text(max_size=300), LINES))
def test_no_text_raises(text: str) -> None:
    read(text, POSTED, "coach", roster=("Leo", "Max"))


@settings(max_examples=150, deadline=None)
@given(LINES)
def test_the_same_line_reads_the_same_twice(text: str) -> None:
    assert read(text, POSTED) == read(text, POSTED)


@settings(max_examples=200, deadline=None)
@given(LINES)
def test_entries_keep_the_invariants_of_the_format(text: str) -> None:
    for entry in read(text, POSTED, "coach").entries:
        assert_sound(entry)


@settings(max_examples=300, deadline=None)
@given(LINES)
def test_every_number_is_claimed_or_asked_about_once_something_is_logged(text: str) -> None:
    reading, numbers = explain(text, POSTED)
    asked = " ".join(unread.text for unread in reading.unread)

    for number in numbers:
        harmless = re.search(r"\d(st|nd|rd|th)$|:\d|[ap]m$", number.text)
        if reading.entries and number.use == LEFT_OVER and not harmless:
            assert number.text in asked


@settings(max_examples=100, deadline=None)
@given(LINES, st.integers(1, 3))
def test_case_and_spaces_change_no_number(text: str, spaces: int) -> None:
    def numbers(line: str) -> list[dict[str, int]]:
        entries = read(line, POSTED).entries
        return [{c: v for c in COUNTS if (v := getattr(e, c)) is not None} for e in entries]

    lower = re.sub(r"<@u(\w+)>", lambda m: m[0].upper(), text.lower())

    assert numbers(lower) == numbers(lower.replace(" ", " " * spaces))


def assert_sound(entry: Entry) -> None:
    values = {name: getattr(entry, name) for name in COUNTS}
    assert all(value is None or value >= 0 for value in values.values())
    assert entry.effort is None or entry.effort <= 100
    assert entry.pitches is None or entry.pitches <= 200
    for part in ("breaking", "changeup", "fastball", "strikes"):
        if entry.pitches is not None and values[part] is not None:
            assert values[part] <= entry.pitches
    if entry.curve is not None or entry.slider is not None:
        assert entry.breaking is not None
        assert entry.breaking >= (entry.curve or 0) + (entry.slider or 0)
    assert not entry.except_ or entry.who == "everyone"
    assert entry.on is None or entry.on < POSTED.date()
    for pain in entry.pain or ():
        assert pain.severity is None or 0 < pain.severity <= 10


def corpus() -> list[dict[str, str]]:
    paths = sorted(Path("fixtures/reading").glob("*.jsonl"))
    return [json.loads(line) for path in paths for line in path.read_text("utf-8").splitlines()]


def mutations(text: str, chance: random.Random) -> list[str]:
    """One letter dropped, two words swapped, another separator."""
    words = text.split(" ")
    letters = [i for i, char in enumerate(text) if char.isalpha()]
    dropped = chance.choice(letters) if letters else 0
    swap = chance.randrange(len(words))
    other = (swap + 1) % len(words)
    swapped = list(words)
    swapped[swap], swapped[other] = swapped[other], swapped[swap]
    return [
        text[:dropped] + text[dropped + 1 :],
        " ".join(swapped),
        text.replace(",", ";"),
        text.replace(", ", " "),
    ]


@pytest.mark.parametrize("seed", [1, 2])
def test_no_mutated_line_yields_a_number_that_it_does_not_hold(seed: int) -> None:
    chance = random.Random(seed)
    for line in corpus():
        for text in mutations(line["text"], chance):
            for entry in read(text, POSTED, "coach").entries:
                for name in ("pitches", "changeup", "fastball", "curve", "slider"):
                    value = getattr(entry, name)
                    assert value is None or derivable(value, text), (text, name, value)


def derivable(value: int, text: str) -> bool:
    """Typed as digits, or by words, or worked out of a share, a sum, sets or "no"."""
    typed = {int(n) for n in re.findall(r"\d+", text)}
    if value in typed or value == 0:
        return True
    worked_out = (
        r"%|[/+x×]|half|third|quarter|fifth|sets|series|tandas|every one|mitad|tercio|rounds"
    )
    spelled = r"[a-z]*(ty|teen|ta|nte|ce|te)\b|one|two|three|four|five|six|seven|eight|nine|ten\b"
    spelled += r"|eleven|twelve|dozen|docena|dos|tres|cuatro|cinco|seis|siete|ocho|nueve|diez|once"
    spelled += r"|veinti|dieci|treinta|uarenta|incuenta|un"
    return re.search(f"{worked_out}|{spelled}", text.lower()) is not None
