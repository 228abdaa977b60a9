"""Socket Mode on a bad day: refreshed, cut, refused, and sent what nobody knows."""

import sqlite3
from collections.abc import Iterator
from contextlib import ExitStack

import pytest
from sqlmodel import select
from websockets.sync.client import ClientConnection, connect

from bot.access import make_client
from bot.local.sockets import MOST_CONNECTIONS, DisconnectReason
from bot.local.talk import Said
from core.model import Outing
from tests.support.club import Club, connected

GAME = "62p 11cb 4.1ip vs Summit no pain"


def outings(club: Club) -> list[int | None]:
    with club.store.reading() as session:
        return [one.pitches for one in session.exec(select(Outing))]


def until_acknowledged(club: Club, said: Said) -> None:
    """Slack sends again what was not acknowledged."""
    said.delivery.wait()
    if said.delivery.status == "failed":
        club.ws.courier.redeliver(said.delivery)
    club.settle()


@pytest.mark.parametrize("reason", ["warning", "refresh_requested", "link_disabled"])
def test_after_a_goodbye_the_line_is_opened_anew_and_nothing_is_lost(
    socket_club: Club, reason: DisconnectReason
) -> None:
    socket_club.ws.sockets.disconnect(reason)
    socket_club.ws.sockets.wait_opened(2)

    said = socket_club.ws.say(socket_club.people["mateo"], socket_club.log, GAME)
    until_acknowledged(socket_club, said)

    assert outings(socket_club) == [62]
    assert len(socket_club.heard("mateo")) == 1


@pytest.fixture
def pinging(club: Club) -> Iterator[Club]:
    """The club on a line that notices within moments that it was cut."""
    club.ws.deliver_by_sockets()
    with connected(club.ws, club.bot.app, ping_interval=0.1):
        yield club


def test_a_line_that_is_cut_is_opened_anew(pinging: Club) -> None:
    pinging.ws.sockets.cut()
    pinging.ws.sockets.wait_opened(2)
    pinging.ws.sockets.wait_connected(1)

    until_acknowledged(pinging, pinging.ws.say(pinging.people["mateo"], pinging.log, GAME))

    assert outings(pinging) == [62]
    assert len(pinging.heard("mateo")) == 1


@pytest.mark.parametrize("reason", ["warning", "refresh_requested"])
def test_an_envelope_under_way_is_acknowledged_once_or_done_again_safely(
    socket_club: Club, reason: DisconnectReason
) -> None:
    other = sqlite3.connect(str(socket_club.store.engine.url.database), isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    said = socket_club.ws.say(socket_club.people["mateo"], socket_club.log, GAME)
    socket_club.ws.sockets.disconnect(reason)
    socket_club.ws.sockets.wait_opened(2)
    other.execute("ROLLBACK")
    other.close()

    until_acknowledged(socket_club, said)

    assert outings(socket_club) == [62]
    assert len(socket_club.heard("mateo")) == 1


def test_an_envelope_of_a_kind_that_nobody_knows_is_acknowledged(socket_club: Club) -> None:
    ws = socket_club.ws
    ws.sockets.push({"envelope_id": "E1", "type": "something_new", "payload": {"type": "new"}})

    with ws.changed:
        assert ws.changed.wait_for(lambda: ws.sockets.stray_acks, 10)
    assert ws.sockets.stray_acks == [{"envelope_id": "E1"}]
    assert socket_club.reaction(socket_club.say("mateo", GAME)) == ["baseball"]


def test_where_slack_refuses_the_line_the_pauses_grow(club: Club) -> None:
    client = make_client(club.ws.bot_token, club.ws.api_url)
    pauses: list[float] = []
    with ExitStack() as others:

        def bare() -> ClientConnection:
            url = client.apps_connections_open(app_token=club.ws.app_token)["url"]
            return others.enter_context(connect(url, proxy=None))

        taken = [bare() for _ in range(MOST_CONNECTIONS)]

        def wait(pause: float) -> None:
            pauses.append(pause)
            if len(pauses) == 5:
                for one in taken:
                    one.close()
                club.ws.sockets.wait_connected(0)

        club.ws.deliver_by_sockets()
        with connected(club.ws, club.bot.app, ping_interval=0.1, wait=wait):
            club.ws.sockets.wait_opened(MOST_CONNECTIONS + 7)
            club.ws.sockets.wait_connected(1)
            until_acknowledged(club, club.ws.say(club.people["mateo"], club.log, GAME))

    assert [0.75 <= pause / 2**n <= 1.25 for n, pause in enumerate(pauses[:5])] == [True] * 5
    assert outings(club) == [62]


def test_two_replicas_share_the_load_and_store_each_line_once(socket_club: Club) -> None:
    with connected(socket_club.ws, socket_club.bot.app):
        socket_club.ws.sockets.wait_connected(2)
        for day in range(1, 7):
            said = socket_club.ws.say(
                socket_club.people["mateo"], socket_club.log, f"bullpen 2{day} pitches on 4/{day}"
            )
            socket_club.ws.courier.duplicate(said.delivery)  # the other one gets this
        socket_club.settle()

        received = [len(one.received) for one in socket_club.ws.sockets.connections]

    assert min(received) >= 4
    assert sorted(pitches or 0 for pitches in outings(socket_club)) == list(range(21, 27))
    assert len(socket_club.ws.calls.of("reactions.add")) == 6
