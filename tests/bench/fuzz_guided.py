"""`python -m tests.bench.fuzz_guided [libFuzzer options]`: lines that coverage leads to.

Needs atheris beside the development packages (`pip install atheris`; CPython up to what it
supports). Starts from the labelled lines; stops at the first line that raises or whose reading is
unsound, and keeps it in a file `crash-...`. `-runs=100000` reads so many lines, `-max_len=300`
keeps them short.
"""

import sys
import tempfile
from datetime import datetime
from importlib import import_module
from pathlib import Path
from typing import Any

from core.reading.reader import explain
from tests.bench.fuzz_reading import Mutator
from tests.support.soundness import faults

POSTED = datetime.fromisoformat("2026-05-20T20:00")
ROSTER = ("Leo", "Max", "Mateo Ruiz", "Will")


def read_one(data: bytes) -> None:
    """Read what the fuzzer made up; the first byte chooses the author and the roster."""
    author: Any = ("pitcher", "coach", "guardian")[data[0] % 3] if data else "pitcher"
    roster = ROSTER if data and data[0] & 4 else ()
    text = data[1:].decode("utf-8", "replace")
    reading, numbers = explain(text, POSTED, author, roster=roster)
    found = list(faults(text, POSTED, reading, numbers))
    if found:
        raise AssertionError(f"{found} in {text!r}")


def main() -> None:
    """Fuzz until a fault is found or the runs are used up."""
    atheris = import_module("atheris")
    atheris.instrument_all()
    with tempfile.TemporaryDirectory() as seeds:
        for at, line in enumerate(Mutator(0).lines):
            (Path(seeds) / str(at)).write_bytes(b"\1" + line.encode())
        atheris.Setup([*sys.argv, seeds], read_one)
        atheris.Fuzz()


if __name__ == "__main__":
    main()
