"""`python -m bot` without Slack, as a process of its own."""

import os
import re
import signal
import subprocess
import sys
from functools import partial
from pathlib import Path

import pytest
from rich.cells import cell_len

ROOT = Path(__file__).parents[3]


def start(**environment: str) -> subprocess.Popen[str]:
    """Start it with no terminal and no variable of ours set."""
    kept = {k: v for k, v in os.environ.items() if not k.startswith(("SLACK_", "SPINKEEPER_"))}  # noqa: TID251 - handed on to a child process
    return subprocess.Popen(
        [sys.executable, "-u", "-m", "bot"],
        cwd=ROOT,
        env=kept | {"PYTHONUTF8": "1"} | environment,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        encoding="utf-8",
        # A shell's background job ignores Ctrl-C, and so would whatever it starts.
        preexec_fn=partial(signal.signal, signal.SIGINT, signal.default_int_handler),
    )


def test_without_a_terminal_every_run_plays_the_same_week_and_ends_with_status_0(
    tmp_path: Path,
) -> None:
    running = [
        start(TMPDIR=str(tmp_path), PYTHONHASHSEED="1", TZ="Pacific/Auckland", NO_COLOR="1"),
        start(TMPDIR=str(tmp_path), PYTHONHASHSEED="2", TZ="America/New_York"),
    ]

    (first, complaints, status), second = (
        (*run.communicate(timeout=120), run.returncode) for run in running
    )

    assert (first, complaints, status) == second
    assert (status, complaints) == (0, "")
    assert list(tmp_path.iterdir()) == []
    assert_shows_the_week(first)
    assert_reads_well_anywhere(first)


def assert_shows_the_week(out: str) -> None:
    days = re.findall(r"^── (\w+ \d+ \w+) ─", out, re.MULTILINE)
    assert (days[0], days[-1], len(days)) == ("Monday 25 May", "Sunday 31 May", 7)
    assert "20:45  Mateo Rivas in #17u-pitching-log  ⚾\n       69p 20cb 4ip vs rook valley" in out
    assert "       Spinkeeper → Mateo Rivas (direct message)\n       │ Game, Tue 26 May\n" in out
    assert "       Spinkeeper in #17u-staff\n       │ Pain report. Andre Coley:" in out
    assert "       Spinkeeper → Denise Coley (direct message)\n" in out
    assert "18:52  Mateo Rivas deletes the line in #17u-pitching-log:\n" in out
    assert "21:56  Caleb Winslow edits the line in #17u-pitching-log to:" in out
    assert "       Spinkeeper edits its answer to Caleb Winslow:\n" in out
    assert out.endswith("see “Put it on Slack” in README.md.\n")


def assert_reads_well_anywhere(out: str) -> None:
    """It fits 80 columns and needs no colour; nothing went wrong behind the screen."""
    assert max(cell_len(line) for line in out.splitlines()) <= 80
    assert "\x1b" not in out
    assert "!" not in {line[:1] for line in out.splitlines()}


@pytest.mark.skipif(sys.platform == "win32", reason="Ctrl-C is another signal there")
def test_ctrl_c_ends_it_without_a_traceback() -> None:
    run = start()
    assert run.stdout is not None
    run.stdout.readline()

    run.send_signal(signal.SIGINT)
    _out, err = run.communicate(timeout=60)

    assert (run.returncode, err) == (130, "")
