"""`python -m core.reading.report FILE...`: how labelled lines are read, and each failure."""

import json
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from pathlib import Path
from typing import Any

from core.reading.reader import read


class Outcome(StrEnum):
    """How a labelled line came out."""

    READ = "read"
    ASKED = "asked"
    MISREAD = "misread"


@dataclass(frozen=True, slots=True)
class Judged:
    """One labelled line, what was read, and how that compares."""

    line: dict[str, Any]
    entries: list[dict[str, Any]]
    unread: list[str]
    outcome: Outcome


def judge(line: dict[str, Any]) -> Judged:
    """Read one labelled line and compare."""
    reading = read(
        line["text"],
        datetime.fromisoformat(line["posted"]),
        line["from"],
        roster=line.get("roster", ()),
        lang=line.get("lang"),
    )
    entries: list[dict[str, Any]] = [entry.as_json() for entry in reading.entries]
    unread = [f"{one.text} ({one.reason})" for one in reading.unread]
    return Judged(line, entries, unread, _outcome(line, entries, bool(unread)))


def _outcome(line: dict[str, Any], entries: list[dict[str, Any]], asks: bool) -> Outcome:
    """A line labelled "ask" is read rightly by asking."""
    if asks:
        return Outcome.READ if line.get("ask") else Outcome.ASKED
    return Outcome.READ if same_entries(line["entries"], entries) else Outcome.MISREAD


def same_entries(labels: list[dict[str, Any]], entries: list[dict[str, Any]]) -> bool:
    """Every key right; a pain's optional keys count only where the label gives them."""
    if len(labels) != len(entries):
        return False
    return all(_same(label, found) for label, found in zip(labels, entries, strict=True))


def _same(label: dict[str, Any], found: dict[str, Any]) -> bool:
    rest = {key: value for key, value in found.items() if key != "pain"}
    if {key: value for key, value in label.items() if key != "pain"} != rest:
        return False
    if ("pain" in label) != ("pain" in found):
        return False
    pains = list(zip(label.get("pain", ()), found.get("pain", ()), strict=False))
    if len(label.get("pain", ())) != len(found.get("pain", ())):
        return False
    return all(_same_pain(want, got) for want, got in pains)


def _same_pain(label: dict[str, Any], found: dict[str, Any]) -> bool:
    if label.get("severity") != found.get("severity"):
        return False
    return all(found.get(key, value) == value for key, value in label.items())


def labelled(paths: Iterable[Path]) -> Iterator[tuple[Path, list[Judged]]]:
    """Each file with its judged lines."""
    for path in paths:
        lines = [json.loads(line) for line in path.read_text("utf-8").splitlines() if line.strip()]
        yield path, [judge(line) for line in lines]


def main(arguments: list[str]) -> int:
    """Print the shares and every line that was not read; 1 when a line was misread."""
    misread = False
    for path, judged in labelled(map(Path, arguments)):
        for one in judged:
            if one.outcome is not Outcome.READ:
                sys.stdout.write(_failure(one))
        shares = {o: sum(j.outcome is o for j in judged) for o in Outcome}
        counted = ", ".join(f"{outcome} {count}" for outcome, count in shares.items())
        sys.stdout.write(f"{path.name}: {len(judged)} lines: {counted}\n")
        misread = misread or shares[Outcome.MISREAD] > 0
    return int(misread)


def _failure(one: Judged) -> str:
    return (
        f"{one.outcome.upper()} {one.line['id']} [{one.line['posted']} {one.line['from']}]"
        f" {one.line['text']!r}\n  want {json.dumps(one.line['entries'], ensure_ascii=False)}\n"
        f"  got  {json.dumps(one.entries, ensure_ascii=False)}\n  unread {one.unread}\n"
    )


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
