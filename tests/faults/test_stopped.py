"""SIGTERM: nothing new is begun, what is under way is finished, and the process leaves in time.

A supervisor kills ten seconds after SIGTERM (common practice; Kubernetes waits 30 s and
`docker stop` 10 s, both from memory).
"""

import os
import re
import signal
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from sqlmodel import select

from bot.local.http_target import HttpTarget
from bot.local.server import StandIn
from core.model import Line, MessageState, OutboxMessage
from tests.support.club import Club

ROOT = Path(__file__).parents[2]
GAME = "62p 11cb 4.1ip vs Summit no pain"
IN_TIME = 10.0


@contextmanager
def started(club: Club, stand_in: StandIn, transport: str) -> Iterator["subprocess.Popen[str]"]:
    """`python -m bot` in a process of its own, serving the club in place of the fixture's."""
    kept = {k: v for k, v in os.environ.items() if not k.startswith(("SLACK_", "SPINKEEPER_"))}  # noqa: TID251 - handed on to a child process
    environment = kept | {
        "SLACK_BOT_TOKEN": club.ws.bot_token,
        "SLACK_API_URL": club.ws.api_url,
        "SPINKEEPER_DATABASE_URL": str(club.store.engine.url),
        "SPINKEEPER_PORT": "0",
    }
    if transport == "socket":
        environment["SLACK_APP_TOKEN"] = club.ws.app_token
    else:
        environment["SLACK_SIGNING_SECRET"] = club.ws.signing_secret
    process = subprocess.Popen(
        [sys.executable, "-m", "bot"], cwd=ROOT, env=environment, stderr=subprocess.PIPE, text=True
    )
    fixture = club.ws.courier.target
    try:
        if transport == "socket":
            club.ws.deliver_by_sockets()
            club.ws.sockets.wait_connected(timeout=30)
        else:
            stand_in.deliver_to(club.ws, f"http://127.0.0.1:{port_of(process)}/slack/events")
        yield process
    finally:
        club.ws.faults.clear()
        process.kill()
        process.communicate()
        if isinstance(fixture, HttpTarget):
            club.ws.deliver_by(fixture)


def port_of(process: "subprocess.Popen[str]") -> str:
    return said_by(process, r"running on http://[^:]+:(\d+)")


def said_by(process: "subprocess.Popen[str]", pattern: str) -> str:
    """Read what the process logs until it says this; gives the group."""
    assert process.stderr is not None
    for line in process.stderr:
        if found := re.search(pattern, line):
            return found[1]
    raise AssertionError(f"the bot ended before it said {pattern}")


def wait_until_it_stops(club: Club, process: "subprocess.Popen[str]", transport: str) -> None:
    """Return when the signal was certainly heard."""
    if transport == "socket":
        club.ws.sockets.wait_connected(0, timeout=IN_TIME)
    else:
        said_by(process, "(Shutting down)")


def state_of(club: Club, slot: str) -> tuple[str, bool]:
    """The state of a message, and whether it is known to stand in Slack."""
    with club.store.reading() as session:
        row = session.exec(select(OutboxMessage).where(OutboxMessage.slot == slot)).one()
        return row.state, row.ts is not None


@pytest.fixture(params=["http", "socket"])
def transport(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def test_a_bot_with_nothing_to_do_leaves_at_once(
    club: Club, stand_in: StandIn, transport: str
) -> None:
    with started(club, stand_in, transport) as process:
        process.send_signal(signal.SIGTERM)

        assert process.wait(IN_TIME) == 0


def test_the_message_being_sent_is_finished_and_no_other_is_begun(
    club: Club, stand_in: StandIn, transport: str
) -> None:
    gate = club.ws.faults.gate("chat.postMessage", processed=True)
    with started(club, stand_in, transport) as process:
        said = club.ws.say(club.people["mateo"], club.log, GAME)
        assert gate.wait_reached(20)

        process.send_signal(signal.SIGTERM)
        wait_until_it_stops(club, process, transport)
        gate.open()

        assert process.wait(IN_TIME) == 0
    assert state_of(club, "answer/1") == (MessageState.SENT, True)
    assert state_of(club, "reaction/1") == (MessageState.QUEUED, False)
    assert club.reaction(said) == []


def test_a_call_that_never_comes_back_keeps_no_process(
    club: Club, stand_in: StandIn, transport: str
) -> None:
    gate = club.ws.faults.gate("chat.postMessage", processed=True)
    with started(club, stand_in, transport) as process:
        club.ws.say(club.people["mateo"], club.log, GAME).delivery.wait(20)
        assert gate.wait_reached(20)

        process.send_signal(signal.SIGTERM)

        assert process.wait(IN_TIME) == 0
    # Leased still: whoever comes after the lease looks it up before repeating it.
    assert state_of(club, "answer/1") == (MessageState.SENDING, False)


def test_a_line_under_way_is_stored_or_sent_again(
    club: Club, stand_in: StandIn, transport: str
) -> None:
    other = sqlite3.connect(str(club.store.engine.url.database), isolation_level=None)
    with started(club, stand_in, transport) as process:
        other.execute("BEGIN IMMEDIATE")
        said = club.ws.say(club.people["mateo"], club.log, GAME)
        process.send_signal(signal.SIGTERM)
        other.execute("ROLLBACK")

        assert process.wait(IN_TIME) == 0
    other.close()
    with club.store.reading() as session:
        stored = len(session.exec(select(Line)).all())
    # Where the signal came before the line was read, Slack sends it again.
    said.delivery.wait(5)
    assert stored == 1 or said.delivery.status == "failed"
