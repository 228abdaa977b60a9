"""A process is killed at each point: nothing is lost, and nothing is seen twice."""

import json
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta
from pathlib import Path

import pytest
from sqlmodel import select

from bot.local.talk import Said
from core.model import Line, Outing, PainReport
from tests.support.club import Club

SCRIPT = Path(__file__).with_name("bot_process.py")
ROOT = SCRIPT.parents[2]
PAIN = "58p 11cb vs Summit, elbow pain 4/10"
#: The lease of a message that was being sent.
LEASE = timedelta(seconds=61)


@contextmanager
def bot_process(club: Club, dies: str = "") -> Iterator["subprocess.Popen[bytes]"]:
    """A bot in a process of its own that serves the club in place of the fixture's."""
    given = {
        "api_url": club.ws.api_url, "bot_token": club.ws.bot_token, "dies": dies,
        "app_token": club.ws.app_token, "database": str(club.store.engine.url),
        "now": club.clock.now().isoformat(),
    }  # fmt: skip
    http = club.ws.courier.target
    assert http is not None
    club.ws.deliver_by_sockets()
    process = subprocess.Popen([sys.executable, SCRIPT, json.dumps(given)], cwd=ROOT, env=ENV)
    try:
        club.ws.sockets.wait_connected(timeout=30)
        yield process
    finally:
        process.kill()
        process.wait()
        club.ws.deliver_by(http)


ENV = {"PYTHONPATH": str(ROOT)}


def come_back(club: Club, said: Said) -> None:
    """Start again after the lease; Slack sends again what was not acknowledged."""
    club.ws.faults.clear()
    for delivery in club.ws.courier.outstanding():
        club.ws.courier.time_out(delivery)
    club.clock.advance(LEASE)
    for delivery in said.deliveries:
        if delivery.status == "failed":
            club.ws.courier.redeliver(delivery)
    club.settle()
    club.clock.advance(LEASE)
    club.settle()


def rows(club: Club) -> list[int]:
    with club.store.reading() as session:
        return [len(session.exec(select(table)).all()) for table in (Line, Outing, PainReport)]


def assert_once(club: Club, said: Said) -> None:
    """Recorded once, answered once, told once to each adult."""
    assert rows(club) == [1, 1, 1]
    assert club.reaction(said) == ["baseball"]
    assert len(club.heard("mateo")) == 1
    assert len(club.heard("elena")) == 1
    assert len([text for text in club.in_staff_channel() if "Pain report" in text]) == 1


def test_killed_before_commit_slack_sends_again(club: Club) -> None:
    with bot_process(club, "before commit") as process:
        said = club.ws.say(club.people["mateo"], club.log, PAIN)
        process.wait(timeout=20)
    assert rows(club) == [0, 0, 0]

    come_back(club, said)

    assert_once(club, said)


def test_killed_after_commit_before_the_ack_the_redelivery_changes_nothing(club: Club) -> None:
    with bot_process(club, "after commit") as process:
        said = club.ws.say(club.people["mateo"], club.log, PAIN)
        process.wait(timeout=20)
    assert rows(club) == [1, 1, 1]

    come_back(club, said)

    assert said.delivery.status == "failed"
    assert_once(club, said)


def test_killed_after_the_ack_what_is_owed_is_sent_by_the_next_process(club: Club) -> None:
    with bot_process(club, "after ack"):
        said = club.ws.say(club.people["mateo"], club.log, PAIN)
        said.delivery.wait(20)
    assert said.delivery.status == "acknowledged"
    assert club.heard("mateo") == []

    come_back(club, said)

    assert_once(club, said)


@pytest.mark.parametrize("method", ["chat.postMessage", "reactions.add"])
def test_killed_while_slack_had_it_already_nothing_is_seen_twice(club: Club, method: str) -> None:
    gate = club.ws.faults.gate(method, processed=True)
    with bot_process(club):
        said = club.ws.say(club.people["mateo"], club.log, PAIN)
        assert gate.wait_reached(20)
        said.delivery.wait(20)

    come_back(club, said)

    assert_once(club, said)
