"""The line to Slack in Socket Mode: acknowledges what it does not know, reconnects with patience.

The SDK's own client answers every `disconnect` by a new connection at once, also where Slack
refuses the eleventh of ten: that would go on as fast as it can.
"""

import logging
import random
import time
from collections.abc import Callable
from threading import Event, Lock, Thread
from typing import Any, Final

from slack_bolt import App
from slack_bolt.adapter.socket_mode.internals import run_bolt_app, send_response
from slack_sdk import WebClient
from slack_sdk.socket_mode.builtin import SocketModeClient
from slack_sdk.socket_mode.client import BaseSocketModeClient
from slack_sdk.socket_mode.request import SocketModeRequest
from slack_sdk.socket_mode.response import SocketModeResponse

log = logging.getLogger(__name__)

#: What Bolt has listeners for (docs.slack.dev, "Using Socket Mode").
KNOWN: Final = frozenset({"events_api", "interactive", "slash_commands"})
#: A connection that held this long was a good one (s); Slack refreshes every few hours.
CALM = 60.0
LONGEST_PAUSE = 60.0
PING_EVERY = 10.0

Wait = Callable[[float], object]


class PatientClient(SocketModeClient):
    """The SDK's client, with growing pauses between connections that do not hold."""

    def __init__(
        self,
        app_token: str,
        web_client: WebClient,
        *,
        ping_interval: float = PING_EVERY,
        seconds: Callable[[], float] = time.monotonic,
        wait: Wait | None = None,
    ) -> None:
        """`seconds` measures how long a connection held; `wait` lets a pause go by (s)."""
        self._seconds = seconds
        self._leaving = Event()
        self._wait: Wait = wait or self._leaving.wait
        self._one_at_a_time = Lock()
        self._connected_at = seconds()
        self._failed = 0
        super().__init__(app_token, logger=log, web_client=web_client, ping_interval=ping_interval)

    def connect_to_new_endpoint(self, force: bool = False) -> None:
        """Connect anew: at once after a good connection, then after 1, 2, 4, … seconds."""
        if not self._one_at_a_time.acquire(blocking=False):
            return  # another thread is at it already
        try:
            if not force and self.is_connected():
                return
            held = self._seconds() - self._connected_at
            self._failed = 0 if held >= CALM else self._failed + 1
            if self._failed > 1:
                self._wait(_pause(self._failed))
            if not self.closed:
                super().connect_to_new_endpoint(force)
                self._connected_at = self._seconds()
        finally:
            self._one_at_a_time.release()

    def leave(self) -> None:
        """End a pause, and connect no more."""
        self.auto_reconnect_enabled = False
        self.closed = True
        self._leaving.set()
        self.message_queue.put(None)  # its reader waits for a message, for up to a second


class SocketLine:
    """One Bolt app on one client."""

    def __init__(self, app: App, client: PatientClient) -> None:
        """Hand every envelope of `client` to `app`."""
        self._app, self.client = app, client
        client.socket_mode_request_listeners.append(self._take)

    def connect(self) -> None:
        """Open the line; raises `SlackApiError` when Slack refuses the app-level token."""
        self.client.connect()

    def hang_up(self, within: float) -> None:
        """Take in no envelope any more, acknowledge those under way, then close the line.

        After `within` seconds it is closed all the same.
        """
        self.client.leave()
        # The SDK closes the line first, and what is under way could not be acknowledged.
        answered = Thread(target=self.client.message_workers.shutdown, daemon=True)
        answered.start()
        answered.join(within)
        self.client.close()

    def _take(self, client: BaseSocketModeClient, envelope: SocketModeRequest) -> None:
        if envelope.type in KNOWN:
            answer = run_bolt_app(self._app, envelope)
            send_response(client, envelope, answer, time.monotonic())
        else:
            # Not meant for this version: without an answer Slack would send it again.
            client.send_socket_mode_response(SocketModeResponse(envelope.envelope_id))


def open_line(app: App, app_token: str, **options: Any) -> SocketLine:
    """A line for the app, not yet connected."""
    # Not the app's own client: its calls for a listener are short.
    web_client = WebClient(base_url=app.client.base_url, retry_handlers=[])
    return SocketLine(app, PatientClient(app_token, web_client, **options))


def _pause(failed: int) -> float:
    """Doubling from a second to a minute, with jitter so that processes do not march in step."""
    longest: float = min(2.0 ** (failed - 2), LONGEST_PAUSE)
    return longest * random.uniform(0.75, 1.25)
