"""Late, twice, replayed, out of two processes: one record, one answer, an audit of each change."""

import sqlite3
from collections.abc import Iterator
from datetime import timedelta

import pytest
from sqlmodel import col, select

from bot.access import Access, find_installation, make_client
from bot.app import make_app
from bot.http import make_http
from bot.listeners.desk import Desk
from bot.local.http_target import HttpTarget
from bot.local.server import StandIn
from core.model import AuditAction, AuditEntry, Line, Outing
from core.store import Store
from tests.support.club import Club, club_at
from tests.support.taps import action_id, answer_to, tap
from tests.support.workspace import AppHost

GAME = "62p 11cb 4.1ip vs Summit no pain"


def counted(club: Club) -> list[int | None]:
    with club.store.reading() as session:
        rows = session.exec(select(Outing).order_by(col(Outing.id))).all()
        return [one.pitches for one in rows if one.withdrawn_at is None]


def lines(club: Club) -> int:
    with club.store.reading() as session:
        return len(session.exec(select(Line)).all())


def changes(club: Club, action: AuditAction) -> list[AuditEntry]:
    with club.store.reading() as session:
        rows = select(AuditEntry).where(AuditEntry.action == action, AuditEntry.subject == "outing")
        return list(session.exec(rows.order_by(col(AuditEntry.id))))


def test_a_first_delivery_that_stalls_and_its_retry_are_one_entry(either: Club) -> None:
    other = sqlite3.connect(str(either.store.engine.url.database), isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    said = either.ws.say(either.people["mateo"], either.log, GAME)
    either.ws.courier.time_out(said.delivery)
    again = either.ws.courier.redeliver(said.delivery)
    other.execute("ROLLBACK")
    other.close()

    either.settle()

    assert again.status == "acknowledged"
    assert lines(either) == 1
    assert counted(either) == [62]
    assert len(either.heard("mateo")) == 1


def test_an_edit_corrects_the_entry_keeps_the_audit_and_changes_the_one_answer(
    either: Club,
) -> None:
    said = either.say("mateo", GAME)

    either.edit(said, "64p 11cb 4.1ip vs Summit no pain")

    assert counted(either) == [64]
    assert len(either.heard("mateo")) == 1
    assert "11 of 64" in either.heard("mateo")[0]
    (change,) = changes(either, AuditAction.CORRECTED)
    assert (change.before["pitches"], change.after["pitches"]) == (62, 64)
    assert change.by_slack_id == either.people["mateo"].id


def test_a_line_deleted_before_it_was_answered_is_answered_to_nobody(either: Club) -> None:
    said = either.ws.say(either.people["dana"], either.staff, "Mateo 62p 11cb vs Summit")
    either.ws.delete(said)

    either.settle()

    assert counted(either) == []
    assert either.in_staff_channel() == []
    assert either.ws.calls.of("chat.postMessage") == []


def test_a_deletion_heard_twice_voids_once_and_the_line_typed_again_counts(either: Club) -> None:
    said = either.say("dana", "Mateo 62p 11cb vs Summit", either.staff)  # with an answer below
    (gone,) = either.ws.delete(said)
    either.ws.courier.duplicate(gone)
    either.settle()
    assert counted(either) == []
    assert len(changes(either, AuditAction.WITHDRAWN)) == 1

    either.clock.advance(timedelta(minutes=1))
    either.say("dana", "Mateo 62p 11cb vs Summit", either.staff)

    assert counted(either) == [62]


def test_a_message_that_another_program_replaced_is_nothing(either: Club) -> None:
    before = lines(either)
    message = {
        "type": "message", "subtype": "bot_message", "text": GAME, "ts": "1777762800.000100",
        "bot_id": either.ws.bot.bot_id, "edited": {"ts": "1777762801.000000"},
    }  # fmt: skip
    replaced = {
        "type": "message", "subtype": "message_changed", "hidden": True, "ts": "1777762802.000100",
        "channel": either.log.id, "channel_type": "channel",
    }  # fmt: skip
    shapes = [message, {key: value for key, value in message.items() if key != "subtype"}]

    for shape in shapes:
        event = replaced | {"message": shape, "previous_message": shape}
        sent = either.ws.deliver("events_api", either.ws.event_callback(event))
        either.settle()
        assert sent.status == "acknowledged"

    assert lines(either) == before
    assert either.ws.calls.of("chat.postMessage") == []


def test_the_exact_bytes_of_an_event_sent_again_have_no_second_effect(club: Club) -> None:
    target = club.ws.courier.target
    assert isinstance(target, HttpTarget)
    said = club.say("mateo", GAME)
    body, content_type = said.delivery.http_body()
    headers = target.signed(body) | {"Content-Type": content_type}

    answers = [target.post(body, headers).status for _ in range(3)]
    club.settle()

    assert answers == [200, 200, 200]  # genuine to Slack's signature; the key in the database holds
    assert counted(club) == [62]
    assert len(club.heard("mateo")) == 1


def test_a_form_submitted_twice_is_saved_once(either: Club) -> None:
    either.say("mateo", "26p 11cb vs Summit")
    tap(either, "mateo", answer_to(either, "mateo"), "Fix")
    sent = either.ws.submit(either.people["mateo"], {"pitches": "62"})
    either.settle()

    again = either.ws.deliver("interactive", sent.payload)
    either.settle()

    assert again.status == "acknowledged"
    assert counted(either) == [62]
    assert len(changes(either, AuditAction.CORRECTED)) == 1


def test_bad_values_are_answered_at_their_own_blocks_and_the_form_stays(either: Club) -> None:
    either.say("mateo", "62p 11cb vs Summit")
    mateo = either.people["mateo"]
    tap(either, "mateo", answer_to(either, "mateo"), "Fix")
    (shown,) = either.ws.open_views(mateo)

    delivery = either.ws.submit(mateo, {"pitches": "10"})

    complaints = either.ws.errors_of(delivery)
    blocks = {block["block_id"] for block in shown.content["blocks"] if block["type"] == "input"}
    assert complaints
    assert set(complaints) <= blocks
    assert len(either.ws.open_views(mateo)) == 1
    assert counted(either) == [62]


def test_a_button_pressed_too_late_says_how_to_go_on(either: Club) -> None:
    either.say("mateo", GAME)
    mateo, message = either.people["mateo"], answer_to(either, "mateo")
    either.ws.courier.hold()
    pressed = either.ws.press(mateo, message, action_id(message, "Fix"))
    either.clock.advance(timedelta(seconds=10))
    either.ws.courier.release()
    either.settle()

    assert pressed.status == "acknowledged"
    assert either.ws.open_views(mateo) == []
    assert "Nothing is lost: press again." in either.heard("mateo")[-1]

    tap(either, "mateo", message, "Fix")
    assert len(either.ws.open_views(mateo)) == 1


@pytest.fixture
def two_bots(stand_in: StandIn, app_host: AppHost, any_store: Store) -> Iterator[tuple[Club, str]]:
    """The club and a second process' app on one database of each engine; gives its URL."""
    with club_at(stand_in, app_host, any_store) as club:
        installation = find_installation(make_client(club.ws.bot_token, club.ws.api_url))
        store = Store(any_store.engine.url.render_as_string(hide_password=False))
        desk = Desk(store, club.clock, lambda: None)
        app = make_app(Access(store, club.ws.api_url, installation), desk, club.ws.signing_secret)
        with app_host.serving(make_http(app, club.bot.health)) as url:
            yield club, f"{url}/slack/events"
        store.close()


def test_undo_pressed_in_two_processes_at_once_is_one_undo(two_bots: tuple[Club, str]) -> None:
    club, second = two_bots
    club.say("mateo", GAME)
    message = answer_to(club, "mateo")
    club.ws.courier.at_once = 16
    club.ws.courier.hold()
    pressed = club.ws.press(club.people["mateo"], message, action_id(message, "Undo"))
    again = [club.ws.courier.duplicate(pressed, url) for url in [second, None] * 3]

    club.ws.courier.release([pressed, *again])
    club.settle()
    # On a busy machine SQLite may keep a writer waiting too long: then it is pressed once more.
    refused = [one for one in (pressed, *again) if one.status != "acknowledged"]
    later = [club.ws.courier.redeliver(one, "http_error") for one in refused]
    club.settle()

    assert len(refused) < len((pressed, *again))
    assert all(delivery.status == "acknowledged" for delivery in later)
    assert counted(club) == []
    assert len(changes(club, AuditAction.WITHDRAWN)) == 1
    assert "Taken back: this line no longer counts." in club.heard("mateo")
