"""Lines of JSON in, lines of JSON out."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from core.rest.jsonl import rest_lines

BOOKS = Path(__file__).parent / "books"
ASK: dict[str, Any] = {
    "id": "r1",
    "rulebooks": ["pitch-smart"],
    "birth_date": "2012-06-01",
    "on": "2026-05-05",
    "outings": [
        {
            "on": "2026-05-02",
            "kind": "game",
            "pitches": 62,
            "outs": 12,
            "last_batter_from": 58,
            "game": 1,
            "caught_outs": 0,
        }
    ],
}
ANSWER = {
    "id": "r1",
    "eligible": False,
    "pitches_allowed": 0,
    "next_eligible": "2026-05-06",
    "rest": [{"on": "2026-05-02", "pitches": 62, "days": 3}],
    "why": [
        {"rulebook": "pitch-smart", "rule": "rest", "says": "62 pitches on 2026-05-02: 3 days"}
    ],
}


def told(**changes: Any) -> dict[str, Any]:
    (line,) = rest_lines([json.dumps({**ASK, **changes})])
    found: dict[str, Any] = json.loads(line)
    return found


def test_the_printed_example_comes_out_as_printed() -> None:
    assert told() == ANSWER


def test_the_command_answers_lines_in_order() -> None:
    lines = [json.dumps({**ASK, "id": n}) for n in (1, 2)]

    done = subprocess.run(
        [sys.executable, "-m", "core", "rest"],
        input="\n".join(lines) + "\n",
        capture_output=True,
        text=True,
        check=True,
        cwd=Path(__file__).parents[3],
    )

    assert [json.loads(line) for line in done.stdout.splitlines()] == [
        {**ANSWER, "id": 1},
        {**ANSWER, "id": 2},
    ]


def test_innings_come_back_where_the_book_limits_them() -> None:
    found = told(rulebooks=[str(BOOKS / "week-innings.toml")], level="majors", outings=[])

    assert found["outs_allowed"] == 18
    assert "outs_allowed" not in told()


def test_null_stands_for_a_key_left_out() -> None:
    outing = {**ASK["outings"][0], "outs": None, "last_batter_from": None, "game": None}

    assert told(outings=[outing], age=None)["next_eligible"] == "2026-05-06"


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"rulebooks": ["pitch-smrt"]}, "did you mean pitch-smart"),
        ({"rulebooks": []}, "rulebooks"),
        ({"rulebooks": ["no/such.toml"]}, "no rule book no/such.toml"),
        ({"birth_date": "2021-06-01"}, "no band for age 4"),
        ({"birth_date": None}, "give the pitcher's age"),
        ({"birth_date": "2030-06-01"}, "the birth date 2030-06-01 lies after"),
        ({"on": "2017-05-05"}, "valid from 2018-01-01"),
        ({"on": "5 May"}, "on: "),
        ({"on": "0001-01-01"}, "the year 1 cannot be right"),
        ({"on": 20260505}, 'write a date as "2026-05-02"'),
        ({"kind": "gmae"}, "no kind of outing is called gmae: use one of game, scrimmage"),
        ({"on": "5/5/2026"}, 'on: write a date as "2026-05-02", not 5/5/2026'),
        ({"outings": [{"on": "2026-05-02", "at": "1:30 am"}]}, 'hours as "01:30", not 1:30 am'),
        ({"phase": "finals"}, "no phase is called finals"),
        ({"outings": [{"on": "2026-05-02", "pitches": -1}]}, "outings[0].pitches"),
        ({"outings": [{"on": "2026-05-02", "pitches": "62"}]}, "outings[0].pitches"),
        ({"outings": [{"on": "2026-05-02", "pitches": 62.5}]}, "outings[0].pitches"),
        ({"outings": [{"on": "2026-05-02", "pitchs": 62}]}, "outings[0].pitchs is not known"),
        ({"outings": [{"pitches": 62}]}, "outings[0].on is missing: add it"),
        ({"outings": [{"on": "2026-05-02", "kind": "gmae"}]}, "no kind of outing is called gmae"),
        (
            {"outings": [{"on": "2026-05-02", "pitches": 5, "last_batter_from": 9}]},
            "more than the 5 pitches thrown",
        ),
    ],
)
def test_bad_input_is_told_what_to_change(changes: dict[str, Any], message: str) -> None:
    found = told(**changes)

    assert set(found) == {"id", "error"}
    assert message in found["error"]


def test_a_file_that_does_not_validate_is_an_error_with_its_line(tmp_path: Path) -> None:
    path = tmp_path / "league.toml"
    path.write_text('format = 1\nid = "UPPER CASE"\n', encoding="utf-8")

    assert "Line 2: id" in told(rulebooks=[str(path)])["error"]


def test_the_line_after_a_bad_one_is_still_answered() -> None:
    found = [json.loads(line) for line in rest_lines(["nonsense", "[]", "", json.dumps(ASK)])]

    assert [set(each) == {"id", "error"} for each in found] == [True, True, False]
    assert found[-1] == ANSWER
