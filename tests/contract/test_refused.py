"""Slack is slow, down, or will not take a message: acks go on, and somebody who can help hears."""

from datetime import timedelta

import pytest
from sqlmodel import select

from bot.local.faults import Dropped, HttpError, RateLimited, Refused
from core.model import MessageState, OutboxMessage
from tests.support.club import Club

GAME = "62p 11cb 4.1ip vs Summit no pain"
POST = "chat.postMessage"


def failed(club: Club) -> list[tuple[str, str | None]]:
    """Kind and error of each message that was given up."""
    with club.store.reading() as session:
        rows = session.exec(select(OutboxMessage)).all()
        return [(row.kind, row.error) for row in rows if row.state == MessageState.FAILED]


def later(club: Club, hours: float) -> None:
    club.bot.tick(club.clock.advance(timedelta(hours=hours)))
    club.settle()


def test_acks_do_not_wait_for_a_slack_that_does_not_answer(either: Club) -> None:
    gate = either.ws.faults.gate(POST)
    either.ws.say(either.people["mateo"], either.log, GAME)
    either.ws.courier.at_once = 4

    said = [
        either.ws.say(either.people[who], either.log, GAME) for who in ("sam_r", "sam_o", "dana")
    ]
    for one in said:
        assert one.delivery.wait(3).acknowledged

    gate.open()
    either.settle()
    assert len(either.heard("sam_r")) == 1


def test_a_429_holds_the_method_for_as_long_as_slack_says_and_nothing_else(either: Club) -> None:
    either.ws.faults.order(POST, RateLimited(7))
    either.ws.say(either.people["mateo"], either.log, GAME)
    either.ws.settle()
    began = either.clock.now()

    either.settle_now()
    said = either.ws.say(either.people["sam_r"], either.log, GAME)
    assert said.delivery.wait(3).acknowledged
    either.settle()

    refused, *sent = either.ws.calls.of(POST)
    assert refused.status == 429
    assert sent[0].at - began >= timedelta(seconds=7)
    assert len(either.heard("mateo")) == 1
    assert either.reaction(said) == ["baseball"]
    assert either.ws.calls.of("reactions.add")[0].at == began


@pytest.mark.parametrize(
    "fault",
    [
        HttpError(500),
        HttpError(502),
        HttpError(504, processed=True),
        Dropped(),
        Refused("fatal_error", processed=True),
    ],
    ids=str,
)
def test_whatever_breaks_one_answer_stands_and_the_tries_are_bounded(
    club: Club, fault: HttpError | Dropped | Refused
) -> None:
    club.ws.faults.order(POST, fault, times=3)

    club.say("mateo", GAME)
    for _ in range(12):
        later(club, 1)

    assert len(club.heard("mateo")) == 1
    assert len(club.ws.calls.of(POST)) <= 4
    assert failed(club) == []


@pytest.mark.parametrize(
    ("error", "fix"),
    [
        ("is_archived", "Unarchive it, or give the team another channel"),
        ("not_in_channel", "type /invite @Spinkeeper"),
        ("channel_not_found", "type /invite @Spinkeeper"),
        ("restricted_action", "Ask whoever runs the workspace to let me post"),
    ],
)
def test_a_staff_channel_that_takes_nothing_is_told_once_with_what_helps(
    club: Club, error: str, fix: str
) -> None:
    for line in ("Mateo 62p 11cb vs Summit", "Sam R 40p 5cb vs Summit"):
        club.ws.faults.order(POST, Refused(error))
        club.say("dana", line, club.staff)
    later(club, 24)

    (told,) = club.heard("dana")
    assert told.startswith("I cannot post in the staff channel of Herons:")
    assert fix in told
    assert "The log is kept as always" in told
    assert posts_to(club, club.staff.id) == 2  # each message was tried once


def posts_to(club: Club, destination: str) -> int:
    return len([call for call in club.ws.calls.of(POST) if call.args["channel"] == destination])


def test_trouble_that_was_over_and_comes_back_is_told_again(club: Club) -> None:
    for day in range(2):
        club.ws.faults.order(POST, Refused("is_archived"))
        club.say("dana", f"Mateo 6{day}p 11cb vs Summit yesterday", club.staff)
        club.say("dana", f"Sam R 4{day}p 5cb vs Summit", club.staff)
        later(club, 24)

    assert len([text for text in club.heard("dana") if "archived" in text]) == 2


def test_a_log_channel_that_the_bot_was_removed_from_is_told_to_the_coach(club: Club) -> None:
    said = club.ws.say(club.people["mateo"], club.log, GAME)
    club.ws.settle()
    club.ws.leave(club.ws.bot, club.log)

    club.settle()
    later(club, 24)

    (told,) = club.heard("dana")
    assert told.startswith("I cannot post in the log channel of Herons: I'm not in it.")
    assert club.reaction(said) == []
    assert len(club.heard("mateo")) == 1


def test_trouble_is_not_told_at_night(club: Club) -> None:
    club.clock.advance(timedelta(hours=4))  # 22:00 in Chicago
    club.ws.faults.order(POST, Refused("is_archived"))

    club.say("dana", "Mateo 62p 11cb vs Summit", club.staff)
    assert club.heard("dana") == []

    later(club, 10)
    assert len(club.heard("dana")) == 1


@pytest.mark.parametrize("error", ["messages_tab_disabled", "channel_not_found", "user_disabled"])
def test_a_direct_message_that_is_refused_is_recorded_and_not_repeated(
    club: Club, error: str
) -> None:
    club.ws.faults.order(POST, Refused(error))

    said = club.say("mateo", GAME)
    later(club, 24)

    assert failed(club) == [("answer", error)]
    assert posts_to(club, club.people["mateo"].id) == 1
    assert club.reaction(said) == ["baseball"]  # what was read is in the log all the same
