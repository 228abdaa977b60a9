"""Three real processes on one database and one due minute: one of each message."""

import json
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from bot.local.server import StandIn
from core.store import Store
from tests.support.club import Club, club_at
from tests.support.hours import chicago, go_to, start
from tests.support.workspace import AppHost

SCRIPT = Path(__file__).with_name("clock_process.py")
ROOT = SCRIPT.parents[2]
#: Monday 07:00 and 08:00, Wednesday 16:00: the summary, the families, the reminder.
DUE = [chicago("05-04", "07:00"), chicago("05-04", "08:00"), chicago("05-06", "16:00")]


@pytest.fixture
def any_club(stand_in: StandIn, app_host: AppHost, any_store: Store) -> Iterator[Club]:
    """The club on each database."""
    with club_at(stand_in, app_host, any_store) as running:
        yield running


@contextmanager
def processes(club: Club, number: int) -> Iterator[list["subprocess.Popen[str]"]]:
    """So many bots, each in a process of its own, ready to tick."""
    given = {
        "api_url": club.ws.api_url, "bot_token": club.ws.bot_token,
        "database": club.store.engine.url.render_as_string(hide_password=False),
        "now": club.clock.now().isoformat(),
    }  # fmt: skip
    command = [sys.executable, str(SCRIPT), json.dumps(given)]
    with ExitStack() as ended:
        running = []
        for _ in range(number):
            process = subprocess.Popen(
                command, cwd=ROOT, env={"PYTHONPATH": str(ROOT)}, text=True,
                stdin=subprocess.PIPE, stdout=subprocess.PIPE,
            )  # fmt: skip
            ended.enter_context(process)
            ended.callback(process.kill)
            running.append(process)
        for process in running:
            assert heard(process) == "ready"
        yield running


def heard(process: "subprocess.Popen[str]") -> str:
    assert process.stdout is not None
    return process.stdout.readline().strip()


def tick_together(club: Club, running: list["subprocess.Popen[str]"], moment: datetime) -> None:
    """Let all of them see the same minute at once."""
    club.clock.set(moment)
    for process in running:
        assert process.stdin is not None
        process.stdin.write(f"{moment.isoformat()}\n")
        process.stdin.flush()
    assert [heard(process) for process in running] == ["done"] * len(running)


def test_one_due_minute_makes_one_of_each_message(any_club: Club) -> None:
    club = any_club
    start(club)
    go_to(club, chicago("05-03", "18:00"))
    club.say("mateo", "62p 11cb vs Summit")
    club.say("carmen", "Leo 45 pitches 6 curves vs Summit")
    go_to(club, chicago("05-04", "06:30"))
    before = len(club.ws.calls.of("chat.postMessage"))

    with processes(club, 3) as running:
        for moment in DUE:
            for second in range(4):  # a channel takes one post a second
                tick_together(club, running, moment + timedelta(seconds=second))

    posts = club.ws.calls.of("chat.postMessage")[before:]
    said = [(str(call.args["channel"]), str(call.args["text"])) for call in posts]
    assert len(said) == len(set(said))
    # The summary; each family's rest days; the cue, and who has reps to go and no rest day.
    parents = [club.people[who].id for who in ("elena", "carmen")]
    spinners = [club.people[who].id for who in ("carmen", "sam_r", "sam_o")]
    assert Counter(channel for channel, _ in said) == Counter(
        [club.staff.id, *parents, club.log.id, *spinners]
    )
