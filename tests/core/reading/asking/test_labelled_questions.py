"""Every labelled line is read as labelled: questions.jsonl was written before the reader.

`later.jsonl` was written afterwards, in batches, each read once before anything was changed.
"""

import json
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from core.reading import read
from core.reading.asking import Asked, ask

FIXTURES = Path(__file__).parents[4] / "fixtures"


def rows(path: Path) -> list[dict[str, Any]]:
    return [json.loads(line) for line in path.read_text("utf-8").splitlines()]


def asked(row: dict[str, Any]) -> Asked | None:
    return ask(row["text"], datetime.fromisoformat(row["posted"]), roster=row.get("roster", ()))


LABELLED = [
    row for name in ("questions", "later") for row in rows(FIXTURES / f"asking/{name}.jsonl")
]


@pytest.mark.parametrize("row", LABELLED, ids=lambda row: row["id"] + " " + row["text"][:40])
def test_a_labelled_line_is_read_as_labelled(row: dict[str, Any]) -> None:
    found = asked(row)

    assert (found.as_json() if found else None) == row["asked"]


@pytest.mark.parametrize(
    "path", sorted((FIXTURES / "reading").glob("*.jsonl")), ids=lambda p: p.stem
)
def test_no_line_that_logs_reaches_the_reader_of_questions_and_is_taken(path: Path) -> None:
    # A question is looked for only in a line that the line reader takes for talk.
    logged = [row for row in rows(path) if row.get("entries") and "?" not in row["text"]]

    taken = [row["text"] for row in logged if asked(row) is not None and is_talk(row)]

    assert logged
    assert taken == []


def is_talk(row: dict[str, Any]) -> bool:
    said = read(row["text"], datetime.fromisoformat(row["posted"]), row["from"])
    return not said.entries and not said.unread


def test_no_line_of_the_demo_season_is_taken_for_a_question() -> None:
    said = [row for row in rows(FIXTURES / "demo/season.jsonl") if row["do"] == "say"]
    logged = [row for row in said if row.get("expect", {}).get("entries")]

    taken = [r["text"] for r in logged if ask(r["text"], datetime.fromisoformat(r["at"]))]

    assert logged
    assert taken == []
