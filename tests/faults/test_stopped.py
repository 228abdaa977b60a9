"""SIGTERM: nothing new is begun, what is under way is finished, and the process leaves in time.

A supervisor kills ten seconds after SIGTERM (common practice; Kubernetes waits 30 s and
`docker stop` 10 s, both from memory).
"""

import sqlite3

import pytest
from sqlmodel import select

from bot.local.server import StandIn
from core.model import Line, MessageState, OutboxMessage
from tests.support.club import Club
from tests.support.process import Process, Transport, bot_process

GAME = "62p 11cb 4.1ip vs Summit no pain"
IN_TIME = 10.0


def wait_until_it_stops(club: Club, process: Process, transport: Transport) -> None:
    """Return when the signal was certainly heard."""
    if transport == "socket":
        club.ws.sockets.wait_connected(0, timeout=IN_TIME)
    else:
        process.said("(Shutting down)")


def state_of(club: Club, slot: str) -> tuple[str, bool]:
    """The state of a message, and whether it is known to stand in Slack."""
    with club.store.reading() as session:
        row = session.exec(select(OutboxMessage).where(OutboxMessage.slot == slot)).one()
        return row.state, row.ts is not None


@pytest.fixture(params=["http", "socket"])
def transport(request: pytest.FixtureRequest) -> Transport:
    found: Transport = request.param
    return found


def test_a_bot_with_nothing_to_do_leaves_at_once(
    club: Club, stand_in: StandIn, transport: Transport
) -> None:
    with bot_process(club.ws, club.store, stand_in, transport) as process:
        process.terminate()

        assert process.wait(IN_TIME) == 0


def test_the_message_being_sent_is_finished_and_no_other_is_begun(
    club: Club, stand_in: StandIn, transport: Transport
) -> None:
    gate = club.ws.faults.gate("chat.postMessage", processed=True)
    with bot_process(club.ws, club.store, stand_in, transport) as process:
        said = club.ws.say(club.people["mateo"], club.log, GAME)
        assert gate.wait_reached(20)

        process.terminate()
        wait_until_it_stops(club, process, transport)
        gate.open()

        assert process.wait(IN_TIME) == 0
    assert state_of(club, "answer/1") == (MessageState.SENT, True)
    assert state_of(club, "reaction/1") == (MessageState.QUEUED, False)
    assert club.reaction(said) == []


def test_a_call_that_never_comes_back_keeps_no_process(
    club: Club, stand_in: StandIn, transport: Transport
) -> None:
    gate = club.ws.faults.gate("chat.postMessage", processed=True)
    with bot_process(club.ws, club.store, stand_in, transport) as process:
        club.ws.say(club.people["mateo"], club.log, GAME).delivery.wait(20)
        assert gate.wait_reached(20)

        process.terminate()

        assert process.wait(IN_TIME) == 0
    # Leased still: whoever comes after the lease looks it up before repeating it.
    assert state_of(club, "answer/1") == (MessageState.SENDING, False)


def test_a_line_under_way_is_stored_or_sent_again(
    club: Club, stand_in: StandIn, transport: Transport
) -> None:
    other = sqlite3.connect(str(club.store.engine.url.database), isolation_level=None)
    with bot_process(club.ws, club.store, stand_in, transport) as process:
        other.execute("BEGIN IMMEDIATE")
        said = club.ws.say(club.people["mateo"], club.log, GAME)
        process.terminate()
        other.execute("ROLLBACK")

        assert process.wait(IN_TIME) == 0
    other.close()
    with club.store.reading() as session:
        stored = len(session.exec(select(Line)).all())
    # Where the signal came before the line was read, Slack sends it again.
    said.delivery.wait(5)
    assert stored == 1 or said.delivery.status == "failed"
