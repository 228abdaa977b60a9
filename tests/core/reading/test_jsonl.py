"""The line filter: one JSON object in, one out."""

import json

from core.reading.jsonl import read_lines


def answers(*lines: str) -> list[dict[str, object]]:
    return [json.loads(line) for line in read_lines(lines)]


def test_each_line_is_answered_in_order_and_blank_ones_are_skipped() -> None:
    first = '{"id": "a", "posted": "2026-04-18T20:10", "from": "pitcher", "text": "62p"}'
    second = '{"id": "b", "posted": "2026-04-18T20:10", "from": "coach", "text": "a few curves"}'

    assert answers(first, "", second) == [
        {"id": "a", "entries": [{"pitches": 62}], "unread": []},
        {"id": "b", "entries": [], "unread": ["a few curves"]},
    ]


def test_a_bad_line_says_what_to_change_and_the_next_is_answered() -> None:
    good = '{"id": "c", "posted": "2026-04-18T20:10", "from": "pitcher", "text": "hi"}'
    bad = ["nonsense", "[1]", '{"id": "x", "from": "umpire"}', '{"id": "y", "posted": "noon"}',
           '{"id": "z", "posted": "2026-04-18T20:10", "text": "62p", "roster": "Leo"}']  # fmt: skip

    *errors, last = answers(*bad, good)

    assert all("error" in error for error in errors)
    assert [error["id"] for error in errors] == [None, None, "x", "y", "z"]
    assert last == {"id": "c", "entries": [], "unread": []}


def test_the_roster_and_the_language_may_be_given() -> None:
    line = {"id": 1, "posted": "2026-04-18T20:10", "from": "coach", "text": "bug 20p",
            "roster": ["Bug"], "lang": "en"}  # fmt: skip

    assert answers(json.dumps(line)) == [
        {"id": 1, "entries": [{"who": "bug", "pitches": 20}], "unread": []}
    ]
