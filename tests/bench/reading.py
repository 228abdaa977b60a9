"""`python -m tests.bench.reading`: how fast lines are read, on one core.

Reads every labelled line of fixtures/reading over and over; prints lines a second (the best of
five rounds, in processor time, so that other work on the machine weighs little), the slowest line
(the median of its rounds), and how long the first import takes.
Not a test: the figures depend on the machine.
"""

import json
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import process_time
from typing import Any

from core.reading import read

ROUNDS = 5
FOLDER = Path("fixtures/reading")
_IMPORT = "from time import perf_counter as t; a = t(); import core.reading; print(t() - a)"
LONGEST = [
    "62p 11cb " * 400,
    "mon pen 20, " * 300,
    "Leo 45p 6cb 3ip no pain\n" * 25,
    "elbow hurts and " * 240,
    "a" * 4000,
    "30 p " + " ".join(f"{a}{b}zuqvix" for a in "bcdfghjklmnprstv" for b in "aeiouylrn")[:3990],
    "(" * 4000,
]


@dataclass(frozen=True, slots=True)
class Request:
    """One line as the reader gets it."""

    text: str
    posted: datetime
    author: Any
    roster: Sequence[str]


def requests() -> list[Request]:
    """Every labelled line."""
    rows = [
        json.loads(line)
        for path in sorted(FOLDER.glob("*.jsonl"))
        for line in path.read_text("utf-8").splitlines()
    ]
    return [
        Request(r["text"], datetime.fromisoformat(r["posted"]), r["from"], r.get("roster", ()))
        for r in rows
    ]


def seconds(request: Request) -> float:
    """How long one line takes."""
    start = process_time()
    read(request.text, request.posted, request.author, roster=request.roster)
    return process_time() - start


def _import_time() -> float:
    """Seconds that the first import takes once the modules are compiled, as after installation."""
    with TemporaryDirectory() as compiled:
        command = [sys.executable, "-I", "-X", f"pycache_prefix={compiled}", "-c", _IMPORT]
        runs = [
            subprocess.run(command, capture_output=True, text=True, check=True)
            for _ in range(ROUNDS)
        ]
    return min(float(run.stdout) for run in runs)


def main() -> None:
    """Print the figures."""
    lines = requests()
    for request in lines:
        seconds(request)  # tables, patterns and caches are built on first use
    rounds = [[seconds(request) for request in lines] for _ in range(ROUNDS)]
    best = min(sum(times) for times in rounds)
    each = [median(times) for times in zip(*rounds, strict=True)]
    slowest = max(range(len(lines)), key=each.__getitem__)
    long_lines = [Request(text, lines[0].posted, "coach", ()) for text in LONGEST]
    worst = max(min(seconds(request) for _ in range(ROUNDS)) for request in long_lines)
    imported = _import_time()
    sys.stdout.write(
        f"{len(lines)} lines, {len(lines) / best:,.0f} lines a second\n"
        f"slowest labelled line {each[slowest] * 1000:.1f} ms: {lines[slowest].text[:60]!r}\n"
        f"slowest of the longest lines taken {worst * 1000:.1f} ms\n"
        f"import, compiled before, {imported * 1000:.0f} ms\n"
    )


if __name__ == "__main__":
    main()
