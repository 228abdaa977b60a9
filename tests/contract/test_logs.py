"""Logs carry ids: no name, no typed text and no pain, whatever happens."""

import logging
import sqlite3

import pytest

from bot.local.faults import Dropped, HttpError, RateLimited, Refused
from tests.support.club import Club

PRIVATE = ("Mateo", "Cruz", "Elena", "Leo", "Ortiz", "Summit", "elbow", "4/10", "58p", "58 pitches")


@pytest.fixture
def heard_logs(caplog: pytest.LogCaptureFixture) -> pytest.LogCaptureFixture:
    """The bot's own loggers say everything, the libraries' as much as `spinkeeper run` lets them.

    Those of Bolt's that the bot sets itself stay as it sets them.
    """
    caplog.set_level(logging.WARNING)
    for name in ("bot", "core"):
        caplog.set_level(logging.DEBUG, logger=name)
    return caplog


def says_something_private(logs: pytest.LogCaptureFixture) -> list[str]:
    return [word for word in PRIVATE if word.lower() in logs.text.lower()]


def test_a_conversation_with_pain_leaves_no_word_in_the_logs(
    club: Club, heard_logs: pytest.LogCaptureFixture
) -> None:
    said = club.say("mateo", "58p 11cb vs Summit, elbow pain 4/10")
    club.edit(said, "58p 12cb vs Summit, elbow pain 4/10")
    club.delete(said)
    club.say("carmen", "Leo 45 pitches vs Summit, shoulder hurts")
    club.tell_bot("elena", "Zed 40 of & elbow")

    assert says_something_private(heard_logs) == []


@pytest.mark.parametrize(
    "fault",
    [RateLimited(7), HttpError(500), Dropped(), Refused("is_archived"), Refused("new_error")],
    ids=str,
)
def test_a_message_that_does_not_go_out_is_logged_by_its_number(
    club: Club,
    heard_logs: pytest.LogCaptureFixture,
    fault: RateLimited | HttpError | Dropped | Refused,
) -> None:
    club.ws.faults.order("chat.postMessage", fault)

    club.say("mateo", "58p 11cb vs Summit, elbow pain 4/10")

    assert "message 1: chat.postMessage" in heard_logs.text
    assert says_something_private(heard_logs) == []


def test_a_database_that_fails_is_logged_without_what_it_should_have_stored(
    club: Club, heard_logs: pytest.LogCaptureFixture
) -> None:
    other = sqlite3.connect(str(club.store.engine.url.database), isolation_level=None)
    other.execute("DROP TABLE painreport")  # every insert of a report fails from now on
    other.close()

    said = club.ws.say(club.people["mateo"], club.log, "58p 11cb vs Summit, elbow pain 4/10")
    club.ws.settle()

    assert said.delivery.status == "failed"
    assert "painreport" in heard_logs.text
    assert says_something_private(heard_logs) == []
