"""`python -m bot` without Slack, as a process of its own."""

import os
import re
import signal
import subprocess
import sys
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
    )


@pytest.fixture(scope="module")
def two_runs(tmp_path_factory: pytest.TempPathFactory) -> list[tuple[int, str, str]]:
    """Exit status, output and errors of two runs, in surroundings that differ."""
    scratch = [str(tmp_path_factory.mktemp("scratch")) for _ in range(2)]
    running = [
        start(TMPDIR=scratch[0], PYTHONHASHSEED="1", TZ="Pacific/Auckland", NO_COLOR="1"),
        start(TMPDIR=scratch[1], PYTHONHASHSEED="2", TZ="America/New_York"),
    ]
    ended = [(*run.communicate(timeout=120), run.returncode) for run in running]
    assert [list(Path(folder).iterdir()) for folder in scratch] == [[], []]
    return [(status, out, err) for out, err, status in ended]


def test_without_a_terminal_it_plays_the_week_and_ends_with_status_0(
    two_runs: list[tuple[int, str, str]],
) -> None:
    status, out, err = two_runs[0]

    assert (status, err) == (0, "")
    assert "Run `python -m bot` in a terminal" in " ".join(out.split()[-40:])
    assert "see “Put it on Slack” in README.md." in " ".join(out.split()[-40:])


def test_every_run_shows_the_same(two_runs: list[tuple[int, str, str]]) -> None:
    (_, first, _), (_, second, _) = two_runs

    assert first == second


def test_the_last_week_is_shown_and_nothing_before_it(
    two_runs: list[tuple[int, str, str]],
) -> None:
    days = re.findall(r"^── (\w+ \d+ \w+) ─", two_runs[0][1], re.MULTILINE)

    assert (days[0], days[-1]) == ("Monday 25 May", "Sunday 31 May")
    assert len(set(days)) == len(days)


def test_answers_edits_and_deletions_are_shown_to_whom_they_went(
    two_runs: list[tuple[int, str, str]],
) -> None:
    out = two_runs[0][1]

    assert "20:45  Mateo Rivas in #17u-pitching-log  ⚾\n       69p 20cb 4ip vs rook valley" in out
    assert "       Spinkeeper → Mateo Rivas (direct message)\n       │ Game, Tue 26 May\n" in out
    assert "       Spinkeeper in #17u-staff\n       │ Pain report. Andre Coley:" in out
    assert "       Spinkeeper → Denise Coley (direct message)\n" in out
    assert "21:56  Caleb Winslow edits the line in #17u-pitching-log to:\n       62 pitches" in out
    assert "       Spinkeeper edits its answer to Caleb Winslow:\n" in out
    assert "18:52  Mateo Rivas deletes the line in #17u-pitching-log:\n" in out


def test_it_fits_80_columns_and_needs_no_colour(two_runs: list[tuple[int, str, str]]) -> None:
    out = two_runs[1][1]

    assert max(cell_len(line) for line in out.splitlines()) <= 80
    assert "\x1b" not in out
    assert "!" not in {line[:1] for line in out.splitlines()}  # nothing went wrong behind it


@pytest.mark.skipif(sys.platform == "win32", reason="Ctrl-C is another signal there")
def test_ctrl_c_ends_it_without_a_traceback() -> None:
    run = start()
    assert run.stdout is not None
    run.stdout.readline()

    run.send_signal(signal.SIGINT)
    _out, err = run.communicate(timeout=60)

    assert (run.returncode, err) == (130, "")
