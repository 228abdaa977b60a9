"""Requests that are not Slack's, or not now: refused, with nothing stored and nothing logged."""

import json
import logging
from datetime import timedelta
from http.client import HTTPConnection
from typing import Any
from urllib.parse import urlencode, urlsplit

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlmodel import select

from bot.access import Access
from bot.health import Health
from bot.http import make_http
from bot.local.delivery import Outcome
from bot.local.http_target import HttpTarget
from core.model import Line, OutboxMessage
from core.store import Store
from tests.support.club import Club
from tests.support.workspace import AppHost

SECRET_WORDS = "elbow hurts 7/10"
JSON = {"Content-Type": "application/json"}


def target(club: Club) -> HttpTarget:
    found = club.ws.courier.target
    assert isinstance(found, HttpTarget)
    return found


def message(club: Club) -> bytes:
    """The bytes of a genuine event with something private in it."""
    event = {
        "type": "message", "user": club.people["mateo"].id, "text": SECRET_WORDS,
        "ts": "1777762800.000100", "channel": club.log.id, "channel_type": "channel",
    }  # fmt: skip
    return json.dumps(club.ws.event_callback(event)).encode()


def nothing_happened(club: Club) -> bool:
    with club.store.reading() as session:
        stored = [*session.exec(select(Line)), *session.exec(select(OutboxMessage))]
    return not stored and not club.ws.bot_messages(club.staff)


def refused(club: Club, body: bytes, headers: dict[str, str], status: int) -> bool:
    outcome: Outcome = target(club).post(body, JSON | headers)
    assert outcome.status == status
    return nothing_happened(club)


def test_the_genuine_request_is_taken(club: Club) -> None:
    body = message(club)

    outcome = target(club).post(body, JSON | target(club).signed(body))

    assert outcome.status == 200
    assert not nothing_happened(club)


def test_a_signature_by_another_secret_is_refused(club: Club) -> None:
    body = message(club)

    assert refused(club, body, target(club).signed(body, secret="another"), 401)


def test_a_good_signature_over_another_body_is_refused(club: Club) -> None:
    body = message(club)

    assert refused(club, body.replace(b"7/10", b"0/10"), target(club).signed(body), 401)


@pytest.mark.parametrize("seconds", [-301, 301, -86_400])
def test_a_request_from_another_time_is_refused(club: Club, seconds: int) -> None:
    body = message(club)

    assert refused(club, body, target(club).signed(body, shift=timedelta(seconds=seconds)), 401)


def test_a_request_without_its_headers_is_refused(club: Club) -> None:
    assert refused(club, message(club), {}, 401)


@pytest.mark.parametrize("name", ["X-Slack-Request-Timestamp", "X-Slack-Signature"])
def test_a_request_without_one_header_is_refused(club: Club, name: str) -> None:
    body = message(club)
    headers = {
        key: value
        for key, value in target(club).signed(body).items()
        if key.lower() != name.lower()
    }

    assert refused(club, body, headers, 401)


@pytest.mark.parametrize("stamp", ["soon", "1.5", "-5", "", "9" * 5000, "²"])
def test_a_timestamp_that_is_no_number_is_refused(club: Club, stamp: str) -> None:
    body = message(club)
    headers = target(club).signed(body) | {"X-Slack-Request-Timestamp": stamp}

    outcome = target(club).post(body, JSON | headers)

    assert outcome.status in {400, 401}
    assert nothing_happened(club)


@pytest.mark.parametrize(
    ("body", "content_type"),
    [
        (b"{", "application/json"),
        (b"", "application/json"),
        (b"[]", "application/json"),
        (b'"text"', "application/json"),
        (b"null", "application/json"),
        (b"{bad", "text/plain"),
        (b"payload=%7Bbad", "application/x-www-form-urlencoded"),
        (b"payload=3", "application/x-www-form-urlencoded"),
        (b"\xff\xfe", "application/json"),
        (b'{"event": 3, "authorizations": 3}', "application/json"),
        (b'{"event": {"user": 3, "channel": []}, "authorizations": [3]}', "application/json"),
        (b"[" * 100_000, "application/json"),
    ],
)
def test_a_body_that_is_no_slack_payload_is_refused(
    club: Club, body: bytes, content_type: str
) -> None:
    signed = target(club).post(body, target(club).signed(body) | {"Content-Type": content_type})
    unsigned = target(club).post(body, {"Content-Type": content_type})

    assert signed.status in {400, 401, 404}
    assert unsigned.status in {400, 401}
    assert nothing_happened(club)


anything = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=8),
    lambda inside: (
        st.lists(inside, max_size=3)
        | st.dictionaries(
            st.sampled_from(["event", "authorizations", "team", "user", "message", "type", "view"]),
            inside,
            max_size=4,
        )
    ),
    max_leaves=12,
)


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(anything)
def test_no_unsigned_json_brings_the_server_down(club: Club, payload: Any) -> None:
    as_json = target(club).post(json.dumps(payload).encode(), JSON)
    form = urlencode({"payload": json.dumps(payload)}).encode()
    as_form = target(club).post(form, {"Content-Type": "application/x-www-form-urlencoded"})

    assert {as_json.status, as_form.status} <= {400, 401}


def test_a_body_of_five_megabytes_is_not_read(club: Club) -> None:
    body = b'{"text": "' + b"x" * 5_000_000 + b'"}'

    outcome = target(club).post(body, JSON | target(club).signed(body))

    # The server may hang up while the client still writes.
    assert outcome.status == 413 or outcome.reason == "connection_failed"
    assert nothing_happened(club)


def test_the_handshake_is_answered_only_when_signed(club: Club) -> None:
    body = b'{"type": "url_verification", "challenge": "abc123"}'

    signed = target(club).post(body, JSON | target(club).signed(body))
    unsigned = target(club).post(body, JSON)

    assert (signed.status, "abc123" in signed.body) == (200, True)
    assert (unsigned.status, "abc123" in unsigned.body) == (401, False)


def test_the_certificate_check_is_answered(club: Club) -> None:
    body, form = b"ssl_check=1&token=x", "application/x-www-form-urlencoded"

    assert target(club).post(body, {"Content-Type": form}).status == 200
    assert nothing_happened(club)


def test_other_methods_and_paths_are_not_there(club: Club) -> None:
    base = target(club).url.removesuffix("/slack/events")

    assert get(f"{base}/slack/events").status == 405
    assert get(f"{base}/").status == 404


def health(club: Club) -> tuple[int | None, dict[str, Any]]:
    answer = get(target(club).url.replace("/slack/events", "/healthz"))
    return answer.status, json.loads(answer.body)


def test_the_health_page_of_a_bot_that_has_nothing_to_do(club: Club) -> None:
    idle = {"database": True, "installed": True, "outbox_age_seconds": 0, "last_tick": None}
    assert health(club) == (200, idle)


def test_the_health_page_tells_how_long_the_oldest_message_waits(club: Club) -> None:
    club.ws.say(club.people["mateo"], club.log, "62p 11cb vs Summit no pain")
    club.ws.settle()
    assert health(club)[1]["outbox_age_seconds"] == 0

    club.clock.advance(timedelta(seconds=90))
    assert health(club)[1]["outbox_age_seconds"] == 90

    club.settle()
    assert health(club)[1]["outbox_age_seconds"] == 0


def get(url: str) -> Outcome:
    parts = urlsplit(url)
    connection = HTTPConnection(parts.hostname or "", parts.port, timeout=5)
    connection.request("GET", parts.path)
    response = connection.getresponse()
    body = response.read().decode()
    connection.close()
    return Outcome(None, response.status, body)


def test_a_refused_body_is_in_no_log(club: Club, caplog: pytest.LogCaptureFixture) -> None:
    body = message(club)
    caplog.set_level(logging.WARNING)

    target(club).post(body, JSON | target(club).signed(body, secret="another"))
    target(club).post(body[:-1], JSON | target(club).signed(body[:-1]))

    assert SECRET_WORDS not in caplog.text


def test_the_health_page_tells_when_the_database_is_gone(club: Club, app_host: AppHost) -> None:
    nothing = Store("sqlite:////nowhere/at/all.sqlite3")
    nowhere = Health(Access(nothing, "", None), club.clock, lambda: None)

    with app_host.serving(make_http(club.bot.app, nowhere)) as url:
        answer = get(f"{url}/healthz")

    gone = {"database": False, "installed": None, "outbox_age_seconds": None, "last_tick": None}
    assert (answer.status, json.loads(answer.body)) == (503, gone)
