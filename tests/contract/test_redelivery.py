"""Slack delivers at least once, in any order, and again when we fail: one entry, one answer."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta

import pytest
from sqlmodel import Session, select

from bot.access import Access, find_installation, make_client
from bot.app import make_app
from bot.http import make_http
from bot.listeners.desk import Desk
from bot.local.delivery import Delivery
from bot.local.http_target import HttpTarget
from bot.local.server import StandIn
from bot.local.talk import Said
from bot.right_of_way import RightOfWay
from core.model import Line, Outing
from core.store import Store
from tests.support.club import Club, club_at, connected
from tests.support.workspace import AppHost

GAME = "62p 11cb 4.1ip vs Summit no pain"


def outings(club: Club) -> list[int | None]:
    """The pitches of every outing that counts."""
    with club.store.reading() as session:
        rows = session.exec(select(Outing).order_by(Outing.slot)).all()
        return [row.pitches for row in rows if row.withdrawn_at is None]


def lines(club: Club) -> list[Line]:
    with club.store.reading() as session:
        return list(session.exec(select(Line)))


def posted(club: Club) -> int:
    return len(club.ws.calls.of("chat.postMessage"))


def test_the_same_event_twice_is_one_entry_and_one_answer(either: Club) -> None:
    said = either.say("mateo", GAME)

    either.ws.courier.redeliver(said.delivery)
    either.ws.courier.duplicate(said.delivery)
    either.settle()

    assert outings(either) == [62]
    assert len(lines(either)) == 1
    assert posted(either) == 1


class Failing(Store):
    """A database that refuses to commit as often as it is told to."""

    failures = 0

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """Write, and fail at the very end."""
        with super().writing() as session:
            yield session
            session.flush()
            if self.failures:
                self.failures -= 1
                raise sqlite3.OperationalError("disk I/O error")


def access(club: Club) -> Access:
    client = make_client(club.ws.bot_token, club.ws.api_url)
    return Access(club.store, club.ws.api_url, find_installation(client))


def failing_desk(club: Club) -> Desk:
    store = Failing(str(club.store.engine.url))
    store.failures = 1
    return Desk(store, club.clock, lambda: None)


def test_a_database_that_fails_at_commit_gives_no_200_and_slack_sends_again(
    club: Club, app_host: AppHost
) -> None:
    app = make_app(access(club), failing_desk(club), club.ws.signing_secret)
    with app_host.serving(make_http(app, club.bot.health)) as url:
        target = club.ws.courier.target
        assert isinstance(target, HttpTarget)
        club.ws.deliver_by(
            HttpTarget(f"{url}/slack/events", target.secret, target.real_now, target.pool)
        )

        said = club.say("mateo", GAME)
        assert said.delivery.outcome is not None
        assert said.delivery.outcome.status == 500
        assert lines(club) == []

        again = club.ws.courier.redeliver(said.delivery)
        club.settle()
    assert again.status == "acknowledged"
    assert outings(club) == [62]
    assert posted(club) == 1


def test_other_work_stands_back_until_a_line_is_acknowledged(club: Club, app_host: AppHost) -> None:
    way, went_on = RightOfWay(longest=0), list[bool]()
    desk = Desk(club.store, club.clock, lambda: went_on.append(way.give()))
    app = make_app(access(club), desk, club.ws.signing_secret, way)
    with app_host.serving(make_http(app, club.bot.health)) as url:
        target = club.ws.courier.target
        assert isinstance(target, HttpTarget)
        club.ws.deliver_by(
            HttpTarget(f"{url}/slack/events", target.secret, target.real_now, target.pool)
        )
        club.say("mateo", GAME)

    assert went_on == [False]
    assert way.give()


def test_a_database_that_fails_at_commit_gives_no_ack_on_a_socket(club: Club) -> None:
    app = make_app(access(club), failing_desk(club))
    club.ws.sockets.ack_limit = 0.3
    club.ws.deliver_by_sockets()
    with connected(club.ws, app):
        said = club.say("mateo", GAME)
        assert said.delivery.status == "failed"
        assert lines(club) == []

        club.ws.sockets.ack_limit = 3.0
        again = club.ws.courier.redeliver(said.delivery)
        club.settle()
    assert again.status == "acknowledged"
    assert outings(club) == [62]


@pytest.fixture
def locked(club: Club) -> Iterator[sqlite3.Connection]:
    """Another program that holds the write lock of the database."""
    other = sqlite3.connect(str(club.store.engine.url.database), isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    yield other
    other.close()


def test_a_locked_database_answers_within_slacks_three_seconds_and_stores_later(
    club: Club, locked: sqlite3.Connection
) -> None:
    said = club.ws.say(club.people["mateo"], club.log, GAME)
    club.ws.settle()
    assert said.delivery.outcome is not None
    assert said.delivery.outcome.status == 500  # not "http_timeout"

    locked.execute("ROLLBACK")
    club.ws.courier.redeliver(said.delivery)
    club.settle()

    assert outings(club) == [62]
    assert posted(club) == 1


@pytest.fixture
def two_bots(stand_in: StandIn, app_host: AppHost, any_store: Store) -> Iterator[tuple[Club, str]]:
    """The club and a second process' app on one database of each engine; gives its URL."""
    with club_at(stand_in, app_host, any_store) as club, second_app(club, app_host) as url:
        yield club, url


@contextmanager
def second_app(club: Club, app_host: AppHost) -> Iterator[str]:
    """A second process' app on the same database; gives its request URL."""
    store = Store(club.store.engine.url.render_as_string(hide_password=False))
    desk = Desk(store, club.clock, lambda: None)
    app = make_app(access(club), desk, club.ws.signing_secret)
    with app_host.serving(make_http(app, club.bot.health)) as url:
        yield f"{url}/slack/events"
    store.close()


def test_the_same_events_at_once_in_two_processes_are_one_entry_each(
    two_bots: tuple[Club, str],
) -> None:
    club, second = two_bots
    club.ws.courier.at_once = 16
    club.ws.courier.hold()
    mateo, days = club.people["mateo"], range(20, 28)
    said = [club.ws.say(mateo, club.log, f"bullpen {day} pitches on 4/{day}") for day in days]
    both = [one.delivery for one in said]
    both += [club.ws.courier.duplicate(one.delivery, second) for one in said]
    club.ws.courier.release(both)
    club.settle()
    # On a busy machine SQLite may keep a writer waiting too long: then Slack sends it again.
    refused = [one for one in both if one.status != "acknowledged"]
    again = [club.ws.courier.redeliver(one, "http_error") for one in refused]
    club.settle()

    assert all(delivery.status == "acknowledged" for delivery in again)
    assert sorted(pitches or 0 for pitches in outings(club)) == list(days)
    assert all(club.reaction(one) == ["baseball"] for one in said)


def test_the_same_event_in_many_processes_at_once_is_one_entry(two_bots: tuple[Club, str]) -> None:
    club, second = two_bots
    club.ws.courier.at_once = 16
    club.ws.courier.hold()
    said = club.ws.say(club.people["mateo"], club.log, GAME)
    again = [club.ws.courier.duplicate(said.delivery, url) for url in [second, None] * 5]

    club.ws.courier.release([said.delivery, *again])
    club.settle()

    assert all(delivery.status == "acknowledged" for delivery in again)
    assert outings(club) == [62]
    assert posted(club) == 1


def test_an_edit_and_a_deletion_at_once_in_two_processes_end_in_the_deletion(
    two_bots: tuple[Club, str],
) -> None:
    club, second = two_bots
    said = club.say("mateo", GAME)
    club.ws.courier.at_once = 16
    club.ws.courier.hold()
    (edit,) = club.ws.edit(said, "64p vs Summit")
    (deletion,) = club.ws.delete(said)
    deletion.url = second

    club.ws.courier.release([edit, deletion])
    club.settle()

    assert outings(club) == []
    assert club.heard("mateo") == ["Taken back: this line no longer counts."]


def test_an_edit_before_its_original_stands(either: Club) -> None:
    either.ws.courier.hold()
    said = either.ws.say(either.people["mateo"], either.log, "26p 11cb vs Summit")
    (edit,) = either.ws.edit(said, GAME)

    either.ws.courier.release([edit, said.delivery])
    either.settle()

    assert outings(either) == [62]
    assert posted(either) == 1
    assert "62 pitches" in either.heard("mateo")[0]


def test_edits_in_the_wrong_order_end_in_the_newest(either: Club) -> None:
    said = either.say("mateo", "26p 11cb vs Summit")
    either.ws.courier.hold()
    older = edited_later(either, said, "44p 11cb vs Summit")
    newer = edited_later(either, said, GAME)

    either.ws.courier.release([newer, older])
    either.settle()

    assert outings(either) == [62]
    assert "62 pitches" in either.heard("mateo")[0]


def edited_later(club: Club, said: Said, text: str) -> Delivery:
    club.clock.advance(timedelta(seconds=30))
    (delivery,) = club.ws.edit(said, text)
    return delivery


def test_a_deletion_before_its_original_is_final(either: Club) -> None:
    either.ws.courier.hold()
    said = either.ws.say(either.people["mateo"], either.log, GAME)
    (deletion,) = either.ws.delete(said)

    either.ws.courier.release([deletion, said.delivery])
    either.settle()

    assert outings(either) == []
    assert posted(either) == 0
    assert either.reaction(said) == []


def test_a_deleted_line_with_replies_leaves_a_tombstone_and_the_record(either: Club) -> None:
    said = either.say("dana", "Mateo 62p 11cb vs Summit", either.staff)
    assert len(either.ws.replies(either.staff, said)) == 1  # the answer hangs below

    either.delete(said)

    assert outings(either) == []
    (answer,) = either.ws.replies(either.staff, said)
    assert answer.text == "Taken back: this line no longer counts."


def test_a_link_preview_changes_nothing(either: Club) -> None:
    said = either.say("mateo", "62p 11cb vs Summit https://scores.example.org/1")
    before = either.heard("mateo")

    either.ws.unfurl(said, "https://scores.example.org/1")
    either.settle()

    assert either.heard("mateo") == before
    assert either.ws.calls.of("chat.update") == []
    with either.store.reading() as session:
        assert session.exec(select(Line)).one().edited_ts is None


def test_an_edit_of_a_reply_corrects_the_reply(either: Club) -> None:
    parent = either.say("dana", "counts from today please", either.staff)
    reply = either.ws.say(
        either.people["dana"], either.staff, "Mateo 26p 4cb vs Summit", under=parent
    )
    either.settle()

    either.edit(reply, "Mateo 62p 4cb vs Summit")

    assert outings(either) == [62]
    thread = [message.text for message in either.ws.replies(either.staff, parent)]
    assert sum("62 pitches" in text for text in thread) == 1
    assert not any("26 pitches" in text for text in thread)


def test_an_app_that_comes_back_to_a_socket_answers_a_redelivery_once(socket_club: Club) -> None:
    socket_club.ws.sockets.disconnect("refresh_requested")
    socket_club.ws.sockets.wait_opened(2)

    said = socket_club.say("mateo", GAME)
    if said.delivery.status == "failed":
        socket_club.ws.courier.redeliver(said.delivery)
        socket_club.settle()

    assert outings(socket_club) == [62]
    assert posted(socket_club) == 1


def test_a_reply_in_the_log_channel_is_answered_outside_its_thread(club: Club) -> None:
    parent = club.say("dana", "counts from today please")

    club.ws.say(club.people["mateo"], club.log, GAME, under=parent)
    club.settle()

    (post,) = club.ws.calls.of("chat.postMessage")
    assert "thread_ts" not in post.args
    assert len(club.heard("mateo")) == 1
