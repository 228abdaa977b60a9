"""What Slack may answer, and what becomes of the message."""

from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from typing import Any

import pytest
from slack_sdk import WebClient
from slack_sdk.web import SlackResponse

from bot.local.faults import Dropped, HttpError, RateLimited, Refused
from bot.outbox import Outbox
from core.leaving import open_workspace
from core.ledger import NoticeKind
from core.model import MessageState, Workspace
from tests.support.post_room import PostRoom, opened

POST = "chat.postMessage"


def test_a_rate_limit_is_waited_out_and_then_exactly_one_message_goes(room: PostRoom) -> None:
    room.ws.faults.order(POST, RateLimited(7))
    room.owe("a", "rest")

    room.deliver()
    room.deliver(after=6.9)
    assert room.posts() == 1
    assert room.seen() == []

    room.deliver(after=0.1)
    room.deliver(after=60)
    assert room.seen() == ["rest"]
    assert room.posts() == 2


def test_a_rate_limit_of_one_method_hinders_no_other(room: PostRoom) -> None:
    room.owe("old", "first words", to=room.person.id)
    room.deliver()
    room.ws.faults.order(POST, RateLimited(7))
    room.owe("new", "held")
    room.deliver()

    room.owe("old", "newer words", to=room.person.id)
    room.deliver(after=1)

    assert room.seen(room.ws.dm(room.person)) == ["newer words"]
    assert room.seen() == []


def test_a_rate_limit_holds_every_post_and_none_is_tried_meanwhile(room: PostRoom) -> None:
    room.ws.faults.order(POST, RateLimited(7))
    room.owe("a", "one")
    room.owe("b", "two", to=room.person.id)

    room.deliver()
    room.deliver(after=3)
    assert room.posts() == 1

    room.deliver(after=4)
    assert room.seen() == ["one"]
    assert room.seen(room.ws.dm(room.person)) == ["two"]


def test_a_rate_limit_without_a_wait_waits_a_second(room: PostRoom) -> None:
    room.ws.faults.order(POST, RateLimited(None))
    room.owe("a", "rest")

    room.deliver()
    room.deliver(after=0.5)
    assert room.seen() == []

    room.deliver(after=0.5)
    assert room.seen() == ["rest"]


def test_being_held_back_for_an_hour_never_gives_a_message_up(room: PostRoom) -> None:
    room.ws.faults.order(POST, RateLimited(60), times=60)
    room.owe("a", "rest")

    for _ in range(60):
        room.deliver(after=60)
    room.deliver(after=60)

    assert room.seen() == ["rest"]


@pytest.mark.parametrize(
    "fault",
    [
        HttpError(500),
        HttpError(502, processed=True),
        HttpError(200, "<html>maintenance</html>"),
        Dropped(processed=True),
        Dropped(processed=False),
        Refused("fatal_error", processed=True),
        Refused("internal_error"),
        Refused("service_unavailable"),
    ],
    ids=str,
)
def test_after_an_unknown_outcome_one_message_stands(
    room: PostRoom, fault: HttpError | Dropped | Refused
) -> None:
    room.ws.faults.order(POST, fault)
    room.owe("a", "rest")

    room.deliver()
    room.deliver(after=0.5)  # not at once again
    assert room.posts() == 1
    room.deliver(after=10)
    room.deliver(after=60)

    assert room.seen() == ["rest"]
    assert room.row("a").state == MessageState.SENT


def test_a_message_that_stands_already_is_found_after_a_long_outage(room: PostRoom) -> None:
    room.ws.faults.order(POST, Dropped())
    room.ws.faults.order("conversations.history", HttpError(503), times=8)
    room.owe("a", "rest")

    for _ in range(12):
        room.deliver(after=15 * 60)

    assert room.seen() == ["rest"]
    assert room.posts() == 1


def test_a_message_that_may_stand_is_brought_up_to_date_after_a_change(room: PostRoom) -> None:
    room.ws.faults.order(POST, Dropped())
    room.owe("a", "26 pitches")
    room.deliver()

    room.clock.advance(timedelta(minutes=30))
    room.owe("a", "62 pitches")
    room.deliver()

    assert room.seen() == ["62 pitches"]
    assert room.posts() == 1


def test_what_may_stand_is_looked_up_even_when_nothing_is_left_to_say(room: PostRoom) -> None:
    room.ws.faults.order(POST, Dropped())
    room.owe("a", "26 pitches")
    room.deliver()

    del room.paper.words["a"]
    room.owe("a")
    room.deliver(after=10)

    # The renderer was shown that the message stands: it could have taken it back in words.
    assert room.row("a").ts == room.messages()[0].ts
    assert room.row("a").state == MessageState.SENT


@pytest.mark.parametrize(
    "error",
    ["is_archived", "channel_not_found", "not_in_channel", "restricted_action", "invalid_blocks",
     "user_disabled", "messages_tab_disabled"],
)  # fmt: skip
def test_a_refusal_for_good_is_tried_once(room: PostRoom, error: str) -> None:
    room.ws.faults.order(POST, Refused(error), times=5)
    room.owe("a", "rest")

    handled = room.deliver()
    room.deliver(after=3600)

    assert handled == 1
    assert room.posts() == 1
    assert (room.row("a").state, room.row("a").error) == (MessageState.FAILED, error)


@pytest.mark.parametrize("error", ["token_revoked", "account_inactive", "invalid_auth"])
def test_a_dead_token_ends_all_sending_and_loses_no_message(room: PostRoom, error: str) -> None:
    room.ws.faults.order(POST, Refused(error))
    room.owe("a", "rest")
    room.owe("b", "mix", to=room.person.id)

    room.deliver()
    room.deliver(after=3600)
    assert room.posts() == 1
    assert room.row("a").state == room.row("b").state == MessageState.QUEUED

    start_again(room)
    assert room.another().deliver(room.clock.advance(timedelta(seconds=5))) == 2
    assert room.seen() == ["rest"]


def test_an_older_process_with_a_dead_token_stops_no_newer_one(room: PostRoom) -> None:
    room.deliver()
    room.clock.advance(timedelta(hours=1))
    start_again(room)
    room.ws.faults.order(POST, Refused("token_revoked"))
    room.owe("a", "rest")

    room.deliver()
    assert room.another().deliver(room.clock.advance(timedelta(seconds=5))) == 1

    assert room.seen() == ["rest"]


def start_again(room: PostRoom) -> None:
    """What a start with a token that works does."""
    with room.store.writing() as session:
        open_workspace(session, Workspace(id=room.ws.team_id), room.clock.now())


def test_a_refusal_for_good_does_not_hold_up_the_conversation(room: PostRoom) -> None:
    room.ws.faults.order(POST, Refused("invalid_blocks"))
    room.owe("a", "broken")
    room.owe("b", "whole")

    room.deliver()
    room.deliver(after=1)

    assert room.seen() == ["whole"]


def test_a_refused_message_is_tried_again_when_the_record_changes(room: PostRoom) -> None:
    room.ws.faults.order(POST, Refused("invalid_blocks"))
    room.owe("a", "broken")
    room.deliver()

    room.owe("a", "whole")
    room.deliver(after=1)

    assert room.seen() == ["whole"]


def test_an_unknown_refusal_is_given_up_within_the_hour_with_growing_waits(room: PostRoom) -> None:
    room.ws.faults.order(POST, Refused("some_new_error"), times=100)
    room.owe("a", "rest")

    for _ in range(90):
        room.deliver(after=60)

    assert room.row("a").state == MessageState.FAILED
    assert 8 <= room.posts() <= 12


def test_an_outage_of_a_day_loses_no_message(room: PostRoom) -> None:
    room.ws.faults.order(POST, HttpError(503), times=60)
    room.owe("pain", "elbow", kind=NoticeKind.PAIN)

    for _ in range(24 * 6):
        room.deliver(after=600)

    assert room.seen() == ["elbow"]


def test_one_message_that_cannot_be_rendered_keeps_no_other_back(room: PostRoom) -> None:
    room.paper.torn.add("torn")
    room.owe("torn", to=room.person.id)
    room.owe("whole", "rest")

    room.deliver()

    assert room.seen() == ["rest"]
    assert room.row("torn").state == MessageState.QUEUED
    assert room.row("torn").error == "ZeroDivisionError"


def after_a_dropped_post(room: PostRoom, kind: NoticeKind) -> None:
    """A message whose outcome nobody knows, and no way to look it up for good."""
    room.ws.faults.order(POST, Dropped())
    room.ws.faults.order("conversations.open", Refused("missing_scope"), times=10)
    room.owe("a", "elbow 4/10", to=room.person.id, kind=kind)
    room.deliver()
    for _ in range(5):
        room.deliver(after=600)


def test_a_report_of_pain_is_repeated_where_nobody_can_know_whether_it_arrived(
    room: PostRoom,
) -> None:
    after_a_dropped_post(room, NoticeKind.PAIN)

    assert room.posts() == 2
    assert room.row("a").state == MessageState.SENT


def test_anything_else_is_given_up_where_nobody_can_know_whether_it_arrived(
    room: PostRoom,
) -> None:
    after_a_dropped_post(room, NoticeKind.REST_DAYS)

    assert room.posts() == 1
    assert (room.row("a").state, room.row("a").error) == (MessageState.FAILED, "missing_scope")


def test_a_report_of_pain_does_not_wait_for_look_ups_that_find_no_end(room: PostRoom) -> None:
    room.ws.faults.order(POST, HttpError(500))
    room.ws.faults.order("conversations.history", HttpError(503), times=100)
    room.owe("a", "elbow 4/10", kind=NoticeKind.PAIN)

    for _ in range(4):
        room.deliver(after=11)

    assert room.seen() == ["elbow 4/10"]


def test_a_report_of_pain_of_unknown_outcome_is_not_repeated_without_end(room: PostRoom) -> None:
    room.ws.faults.order(POST, HttpError(500, processed=True), times=100)
    room.ws.faults.order("conversations.history", HttpError(503), times=40)
    room.owe("a", "elbow 4/10", kind=NoticeKind.PAIN)

    for _ in range(60):
        room.deliver(after=900)

    assert room.posts() == 4
    assert room.row("a").state == MessageState.SENT


class Impatient(WebClient):
    """A client that gives a post up, whether Slack has done it by then or not."""

    done = True

    def chat_postMessage(self, **given: Any) -> SlackResponse:  # noqa: N802 - Slack's name
        """Post, and hear nothing of it."""
        if self.done:
            super().chat_postMessage(**given)
        raise TimeoutError("timed out")


@pytest.mark.parametrize("done", [True, False])
def test_a_call_that_nobody_answers_in_time_is_looked_up(room: PostRoom, *, done: bool) -> None:
    client = Impatient(room.ws.bot_token, room.ws.api_url, retry_handlers=[])
    client.done = done
    room.owe("a", "rest")

    Outbox(room.store, opened(room.ws, client), room.paper).deliver(room.clock.now())
    room.deliver(after=10)

    assert room.seen() == ["rest"]
    assert room.row("a").state == MessageState.SENT


def test_what_hangs_for_half_a_minute_is_sent_by_nobody_else(room: PostRoom) -> None:
    gate = room.ws.faults.gate(POST, processed=True)
    room.owe("a", "rest")

    with ThreadPoolExecutor(1) as pool:
        hanging = pool.submit(room.another().deliver, room.clock.now())
        assert gate.wait_reached()
        assert room.deliver(after=30) == 0
        gate.open()
        hanging.result()

    assert room.seen() == ["rest"]
    assert room.posts() == 1
