"""A button pressed twice, by two at once, by somebody who may not, or too late."""

import copy
import json
import sqlite3

import pytest
from sqlmodel import select

from bot.local.delivery import Delivery
from bot.local.records import Message
from core.model import AuditEntry, Line, LineState, Outing
from tests.support.club import Club

GAME = "62p 11cb 4.1ip vs Summit no pain"


@pytest.fixture
def club(either: Club) -> Club:
    """Everything here holds over each transport."""
    return either


def answer_to(club: Club, who: str) -> Message:
    mine = club.ws.dm_messages(club.people[who])
    return [message for message in mine if message.user == club.ws.bot.id][-1]


def button(message: Message, kind: str) -> str:
    """The first button of a kind under a message."""
    rows = [block for block in message.blocks if block["type"] == "actions"]
    ids = [str(element["action_id"]) for row in rows for element in row["elements"]]
    return next(one for one in ids if one.startswith(kind))


def press(club: Club, who: str, kind: str) -> Delivery:
    """Let somebody press the first button of a kind under the bot's last answer."""
    message = answer_to(club, who)
    delivery = club.ws.press(club.people[who], message, button(message, kind))
    club.settle()
    return delivery


def counted(club: Club) -> list[Outing]:
    with club.store.reading() as session:
        return [one for one in session.exec(select(Outing)) if one.withdrawn_at is None]


def changes(club: Club) -> int:
    with club.store.reading() as session:
        return len(session.exec(select(AuditEntry)).all())


def state(club: Club) -> str:
    with club.store.reading() as session:
        return session.exec(select(Line)).one().state


def test_an_exact_replay_of_a_press_changes_nothing_more(club: Club) -> None:
    club.say("mateo", "62p 11cb")
    pressed = press(club, "mateo", "choose")
    before = changes(club)

    again = club.ws.courier.duplicate(pressed)
    club.settle()

    assert again.status == "acknowledged"
    assert state(club) == LineState.READ
    assert changes(club) == before


def test_undone_twice_is_undone_once(club: Club) -> None:
    club.say("mateo", GAME)
    pressed = press(club, "mateo", "undo")
    assert counted(club) == []
    before = changes(club)

    again = club.ws.courier.duplicate(pressed)
    club.settle()

    assert again.status == "acknowledged"
    assert changes(club) == before


def test_a_press_by_somebody_who_may_not_changes_nothing(club: Club) -> None:
    club.say("mateo", GAME)
    genuine = press(club, "mateo", "undo")
    club.say("mateo", "58p 9cb vs Sawmill yesterday")
    forged = copy.deepcopy(genuine.payload)
    forged["user"]["id"] = club.people["carmen"].id
    (standing,) = counted(club)
    forged["actions"][0]["value"] = json.dumps({"line": standing.line_id})

    sent = club.ws.deliver("interactive", forged)
    club.settle()

    assert sent.status == "acknowledged"
    assert [one.pitches for one in counted(club)] == [58]


def test_a_press_under_a_deleted_line_changes_nothing(club: Club) -> None:
    said = club.say("mateo", GAME)
    message = answer_to(club, "mateo")
    club.ws.courier.hold()
    pressed = club.ws.press(club.people["mateo"], message, button(message, "undo"))
    (deletion,) = club.ws.delete(said)

    club.ws.courier.release([deletion, pressed])
    club.settle()

    assert pressed.status == "acknowledged"
    assert counted(club) == []
    assert answer_to(club, "mateo").text


def test_a_press_while_the_database_is_locked_is_not_acknowledged(club: Club) -> None:
    club.say("mateo", GAME)
    other = sqlite3.connect(str(club.store.engine.url.database), isolation_level=None)
    other.execute("BEGIN IMMEDIATE")

    message = answer_to(club, "mateo")
    pressed = club.ws.press(club.people["mateo"], message, button(message, "undo"))
    club.ws.settle()
    other.close()

    assert pressed.status == "failed"  # Slack shows a warning, and the press can be repeated
    assert [one.pitches for one in counted(club)] == [62]
