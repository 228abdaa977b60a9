"""Serves Slack by Socket Mode or over HTTP until a signal, and leaves within ten seconds.

Told to stop, it takes in nothing new and claims nothing new, finishes what is under way, and
goes. What cannot be finished in time is Slack's to send again, or stays leased in the outbox:
the next process looks it up before it repeats it.
"""

import os
import signal
from collections.abc import Callable
from threading import Event, Timer
from types import FrameType

import uvicorn
from slack_bolt import App
from slack_sdk.errors import SlackApiError
from starlette.types import ASGIApp

from bot.access import refused
from bot.sockets import log as socket_log
from bot.sockets import open_line

#: All of stopping takes no longer than this (s): a supervisor kills after ten.
STOPPED_WITHIN = 9.0
#: Of it, the requests and envelopes under way have this much (s); a locked database gives up
#: sooner.
ANSWERED_WITHIN = 4.0
STOP_SIGNALS = (signal.SIGTERM, signal.SIGINT)

Stopping = Callable[[], None]


def serve_http(pages: ASGIApp, port: int, stopping: Stopping) -> None:
    """Serve until a signal; `stopping` is called at once when it comes."""
    config = uvicorn.Config(
        pages,
        host="0.0.0.0",
        port=port,
        timeout_graceful_shutdown=int(ANSWERED_WITHIN),
        access_log=False,  # an address may hold a code of Slack's, which is as good as a token
    )
    # uvicorn raises the signal again when it is done, which must not end the process then.
    _on_signals(lambda: None)
    _Server(config, stopping).run()


class _Server(uvicorn.Server):
    def __init__(self, config: uvicorn.Config, stopping: Stopping) -> None:
        super().__init__(config)
        self._stopping = stopping

    def handle_exit(self, sig: int, frame: FrameType | None) -> None:
        """Stop serving; what is under way is answered."""
        _leave_in_time()
        self._stopping()
        super().handle_exit(sig, frame)


def serve_socket(app: App, app_token: str, stopping: Stopping) -> None:
    """Serve until a signal; `stopping` is called at once when it comes.

    Raises `SlackAccessError` when Slack does not accept the app-level token.
    """
    line = open_line(app, app_token)
    stop = Event()

    def begin_to_stop() -> None:
        _leave_in_time()
        stopping()
        stop.set()

    _on_signals(begin_to_stop)
    socket_log.disabled = True  # a refusal at the start is said in one sentence, not logged too
    try:
        line.connect()
    except SlackApiError as problem:
        raise refused("SLACK_APP_TOKEN", "xapp-", problem) from problem
    finally:
        socket_log.disabled = False
    stop.wait()
    line.hang_up(ANSWERED_WITHIN)


def _on_signals(do: Callable[[], None]) -> None:
    for name in STOP_SIGNALS:
        signal.signal(name, lambda *_: do())


def _leave_in_time() -> None:
    """End the process in time even if a call to Slack or the database does not come back."""
    timer = Timer(STOPPED_WITHIN, os._exit, [0])
    timer.daemon = True
    timer.start()
