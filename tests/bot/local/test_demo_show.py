"""What the screen shows of a short season."""

import io
from pathlib import Path

import pytest
from rich.console import Console

from bot.local.demo import DemoError, read_cast, read_season
from bot.local.terminal import play_demo
from bot.settings import Settings
from tests.support.clubhouse import write_demo

QUIET = {"at": "2026-05-20T16:00", "do": "say", "as": "mateo", "in": "log17", "text": "pen 20p 2cb"}
LAST = {"at": "2026-05-29T18:00", "do": "say", "as": "theo", "in": "log17", "text": "off today"}


def played(folder: Path, *acts: dict[str, str]) -> str:
    paper = io.StringIO()
    folder = write_demo(folder, [*acts])
    play_demo(Settings(), folder, Console(file=paper, width=80), stays=False)
    return paper.getvalue()


def test_what_is_before_the_last_seven_days_goes_in_quietly(tmp_path: Path) -> None:
    out = played(tmp_path, QUIET, QUIET | {"at": "2026-05-23T16:00", "text": "pen 21p 2cb"}, LAST)

    assert "20p 2cb" not in out
    assert "── Saturday 23 May ─" in out
    assert "16:00  Mateo Rivas in #17u-pitching-log  ⚾\n       pen 21p 2cb\n" in out


def test_a_line_of_the_quiet_weeks_can_be_edited_in_the_shown_one(tmp_path: Path) -> None:
    edit = LAST | {"do": "edit", "as": "mateo", "of": "s0", "text": "62p 11cb 4ip vs Summit"}

    out = played(tmp_path, QUIET, edit)

    assert "18:00  Mateo Rivas edits the line in #17u-pitching-log to:\n       62p 11cb" in out
    assert "       Spinkeeper edits its answer to Mateo Rivas:\n" in out
    assert "│ Read: 62 pitches, 11 breaking balls" in out


def test_a_line_that_is_deleted_says_so_and_its_answer_is_taken_back(tmp_path: Path) -> None:
    game = LAST | {"as": "mateo", "text": "62p 11cb 4ip vs Summit"}
    gone = {"at": "2026-05-29T18:05", "do": "delete", "as": "mateo", "in": "log17", "of": "s0"}

    out = played(tmp_path, game, gone)

    assert "18:05  Mateo Rivas deletes the line in #17u-pitching-log:\n       62p 11cb" in out
    assert "       Spinkeeper edits its answer to Mateo Rivas:\n       │ Taken back:" in out


def test_a_line_with_replies_leaves_its_thread(tmp_path: Path) -> None:
    reply = LAST | {"at": "2026-05-29T18:03", "as": "jonah", "text": "nice", "thread_of": "s0"}
    gone = {"at": "2026-05-29T18:05", "do": "delete", "as": "theo", "in": "log17", "of": "s0"}

    out = played(tmp_path, LAST, reply, gone)

    assert "18:03  Jonah Pike in the thread in #17u-pitching-log\n       nice\n" in out
    assert "18:05  A line in #17u-pitching-log is deleted; its thread stays\n" in out


def test_a_message_that_must_wait_for_the_morning_is_shown_in_the_morning(tmp_path: Path) -> None:
    pain = {"at": "2026-05-28T21:00", "do": "say", "as": "mateo", "in": "dm",
            "text": "elbow pain 3/10"}  # fmt: skip
    gone = {"at": "2026-05-28T21:05", "do": "delete", "as": "mateo", "in": "dm", "of": "s0"}

    out = played(tmp_path, pain, gone, LAST)

    assert "08:00  Spinkeeper → Elena Rivas (direct message)\n" in out.partition("Friday 29 May")[2]


def test_a_season_that_cannot_be_read_is_one_sentence(tmp_path: Path) -> None:
    (tmp_path / "season.jsonl").write_text("", encoding="utf-8")

    with pytest.raises(DemoError, match="is empty: there is nothing to play"):
        read_season(tmp_path)
    with pytest.raises(DemoError, match=r"people\.toml cannot be used"):
        read_cast(tmp_path)
