"""Worked examples that leagues and newspapers publish: input and expected answer, with source."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from core.rest.jsonl import rest_lines
from core.rulebooks import load_books

ROOT = Path(__file__).parents[3]
EXAMPLES = [
    json.loads(line)
    for line in (ROOT / "fixtures/rest/worked_outings.jsonl").read_text("utf-8").splitlines()
]


@pytest.mark.parametrize("example", EXAMPLES, ids=[e["id"] for e in EXAMPLES])
def test_a_published_example_comes_out_as_published(example: dict[str, Any]) -> None:
    ask = example["ask"]
    ask["rulebooks"] = [str(ROOT / b) if "/" in b else b for b in ask["rulebooks"]]

    found = json.loads(next(iter(rest_lines([json.dumps(ask)]))))

    assert {key: found.get(key) for key in example["expect"]} == example["expect"]


def test_every_published_example_is_in_the_file() -> None:
    numbers = {int(example["id"][1:3]) for example in EXAMPLES}

    # 25, 26 and 27 are about what a pitch is, and stand below.
    assert numbers == set(range(1, 35)) - {25, 26, 27}


def test_an_at_bat_with_fouls_counts_every_pitch() -> None:
    # A member league's page on what counts: http://www.kerrisdalebaseball.com/default.aspx?p=pitchcountrules
    (book,) = load_books(["little-league"])

    homer = ["ball", "foul", "called-strike", "foul", "ball", "foul", "in-play"]
    walk = ["ball", "called-strike", "ball", "ball", "ball-four"]

    assert book.counting.count(homer) == 7
    assert book.counting.count(walk) == 5


def test_a_pick_off_throw_is_no_pitch() -> None:
    # Little League International, Coach's Box, Nov/Dec 2006.
    (book,) = load_books(["little-league"])

    assert book.counting.count(["pick-off"]) == 0


def test_league_age_is_the_age_on_31_august() -> None:
    # The guides named beside W33 and W34 in the file of examples.
    (book,) = load_books(["little-league"])
    season = date(2024, 5, 6)

    assert book.age_of(date(2014, 8, 30), season) == 10
    assert book.age_of(date(2014, 9, 1), season) == 9
    assert book.age_of(date(2011, 8, 31), season) == 13
