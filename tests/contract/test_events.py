"""Every event that the app may be sent is acknowledged, and most of them change nothing."""

import json
from collections.abc import Iterator

import pytest
from sqlmodel import select

from bot.local.delivery import Delivery
from bot.local.http_target import HttpTarget
from bot.local.server import StandIn
from core.model import Line
from core.store import Store
from tests.support.club import Club, club_at
from tests.support.workspace import AppHost


@pytest.fixture
def club(either: Club) -> Club:
    """Everything here holds over each transport."""
    return either


@pytest.fixture
def http_club(stand_in: StandIn, app_host: AppHost, store: Store) -> Iterator[Club]:
    """The club over signed HTTP alone."""
    with club_at(stand_in, app_host, store) as running:
        yield running


def lines(club: Club) -> list[Line]:
    with club.store.reading() as session:
        return list(session.exec(select(Line)))


def all_acknowledged(club: Club) -> bool:
    club.settle()
    return bool(club.ws.courier.all) and all(
        sent.status == "acknowledged" for sent in club.ws.courier.all
    )


def test_every_subscribed_event_is_acknowledged(club: Club) -> None:
    ws, dana = club.ws, club.people["dana"]
    newcomer = ws.add_person("New Comer")

    ws.join(newcomer, club.log)
    ws.leave(newcomer, club.log)
    ws.change_person(newcomer, deleted=True)
    ws.open_home(dana)
    ws.archive(ws.add_channel("old", [dana]), dana)
    ws.uninstall()

    assert all_acknowledged(club)
    assert lines(club) == []


def test_being_told_to_slow_down_is_acknowledged(http_club: Club) -> None:
    team_id = http_club.ws.team_id
    body = {"type": "app_rate_limited", "team_id": team_id, "minute_rate_limited": 1}
    target = http_club.ws.courier.target
    assert isinstance(target, HttpTarget)

    raw = json.dumps(body).encode()
    outcome = target.post(raw, target.signed(raw) | {"Content-Type": "application/json"})

    assert outcome.status == 200


def test_other_programs_log_nothing(club: Club) -> None:
    other = club.ws.add_person("Other App", is_bot=True)
    club.ws.join(other, club.log)

    club.ws.say_as_webhook(other, club.log, "62p 11cb vs Summit")
    club.ws.say(other, club.log, "62p 11cb vs Summit")

    assert all_acknowledged(club)
    assert lines(club) == []


def test_the_bots_own_messages_log_nothing(club: Club) -> None:
    club.say("dana", "Mateo 62p 11cb vs Summit", club.staff)
    club.say("mateo", "58p 11cb vs Summit, elbow pain 4/10")
    club.say("mateo", "62p 11cb vs Summit", club.ws.dm(club.people["mateo"]))

    assert all_acknowledged(club)
    assert len(lines(club)) == 3


def test_channels_of_no_team_are_not_stored(club: Club) -> None:
    mateo = club.people["mateo"]
    lounge = club.ws.add_channel("lounge", [mateo])
    group = club.ws.group_dm(mateo, club.people["dana"])

    club.say("mateo", "62p 11cb vs Summit", lounge)
    club.say("mateo", "62p 11cb vs Summit", group)

    assert all_acknowledged(club)
    assert lines(club) == []
    assert club.ws.bot_messages(lounge) == []


def test_a_mention_comes_twice_and_is_answered_once(club: Club) -> None:
    said = club.say("mateo", f"<@{club.ws.bot.id}> 62p 11cb vs Summit")

    assert [sent.event["type"] for sent in said.deliveries] == ["message", "app_mention"]
    assert len(lines(club)) == 1
    assert len(club.heard("mateo")) == 1


def test_a_mention_heard_in_the_other_order_is_answered_once(club: Club) -> None:
    club.ws.courier.hold()
    said = club.ws.say(club.people["mateo"], club.log, f"<@{club.ws.bot.id}> 62p 11cb vs Summit")
    first, second = said.deliveries

    club.ws.courier.release([second, first])
    club.settle()

    assert len(lines(club)) == 1
    assert len(club.heard("mateo")) == 1


def test_a_payload_that_is_sent_again_says_that_it_is_a_retry(club: Club) -> None:
    said = club.say("mateo", "62p 11cb vs Summit")

    again: Delivery = club.ws.courier.redeliver(said.delivery)
    club.settle()

    assert again.retry_headers() == {
        "X-Slack-Retry-Num": "1",
        "X-Slack-Retry-Reason": "http_timeout",
    }
    assert again.status == "acknowledged"
    assert len(lines(club)) == 1
