"""Words that are also names: read as names in a name's place, never passed over."""

import pytest

from tests.support.reading import entries_of

WORDS = ["Chance", "King", "Rich", "Sky", "Cap", "June", "May", "Miles", "Van", "Ace", "Guy"]


@pytest.mark.parametrize("name", WORDS)
@pytest.mark.parametrize("record", ["45p 6cb", "threw 45 pitches, 6 cb", ": 45 pitches, 6 curves"])
def test_a_word_in_a_names_place_is_a_name(name: str, record: str) -> None:
    line = f"{name}{record}" if record.startswith(":") else f"{name} {record}"

    assert [one["who"] for one in entries_of(line, "coach")] == [name]


@pytest.mark.parametrize(
    "line", ["Rich game, 45p 6cb", "May 5 45p 6cb", "the chance of rain, 45p 6cb"]
)
def test_elsewhere_it_is_the_word(line: str) -> None:
    assert all("who" not in one for one in entries_of(line))
