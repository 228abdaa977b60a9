"""A shared stand-in workspace server, and ways to run a Bolt app against it."""

from collections.abc import Awaitable, Callable, Iterator, MutableMapping
from contextlib import contextmanager
from datetime import UTC, datetime
from itertools import count
from typing import Any

import pytest
from slack_bolt import App
from slack_bolt.adapter.socket_mode import SocketModeHandler
from slack_bolt.adapter.starlette.handler import to_bolt_request, to_starlette_response
from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError
from slack_sdk.web import SlackResponse
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import PlainTextResponse

from bot.clock import SimulatedClock
from bot.local.loopback import LoopbackServer
from bot.local.server import StandIn
from bot.local.workspace import Workspace

Asgi = Callable[
    [
        MutableMapping[str, Any],
        Callable[[], Awaitable[MutableMapping[str, Any]]],
        Callable[[MutableMapping[str, Any]], Awaitable[None]],
    ],
    Awaitable[None],
]

# A Saturday afternoon of the season, in the middle of the day in every American zone.
START = datetime(2026, 5, 2, 20, 0, tzinfo=UTC)


class AppHost:
    """One HTTP server for the apps of all tests; each app has a path of its own."""

    def __init__(self) -> None:
        self._numbers = count(1)
        self._apps: dict[str, Asgi] = {}
        self._server = LoopbackServer(self._route)

    def start(self) -> None:
        """Begin to answer."""
        self._server.start()

    def stop(self) -> None:
        """Stop answering."""
        self._server.stop()

    @contextmanager
    def serving(self, app: Asgi) -> Iterator[str]:
        """Serve an ASGI application; gives its base URL, without a slash at the end."""
        number = str(next(self._numbers))
        self._apps[number] = app
        try:
            yield f"{self._server.base_url}/{number}"
        finally:
            del self._apps[number]

    async def _route(self, scope: Any, receive: Any, send: Any) -> None:
        number, _, rest = scope["path"].lstrip("/").partition("/")
        app = self._apps.get(number)
        if app is None:
            await PlainTextResponse("no such app", 404)(scope, receive, send)
            return
        inner = dict(scope, path=f"/{rest}", raw_path=f"/{rest}".encode(), root_path="")
        await app(inner, receive, send)


def bolt_asgi(app: App) -> Asgi:
    """Return an ASGI application that hands each request to a Bolt app, off the event loop."""

    async def handle(scope: Any, receive: Any, send: Any) -> None:
        request = Request(scope, receive)
        body = await request.body()
        answer = await run_in_threadpool(app.dispatch, to_bolt_request(request, body))
        await to_starlette_response(answer)(scope, receive, send)

    return handle


def refusal(call: Callable[[], SlackResponse]) -> str:
    """Return Slack's name of the error with which a call is refused."""
    with pytest.raises(SlackApiError) as caught:
        call()
    return str(caught.value.response["error"])


def client_of(ws: Workspace) -> WebClient:
    """Return the app's Web API client, without the SDK's own retries."""
    return WebClient(ws.bot_token, base_url=ws.api_url, retry_handlers=[])


def bolt_app(ws: Workspace) -> App:
    """Return a Bolt app installed in a workspace, with no listeners yet."""
    return App(
        client=client_of(ws),
        signing_secret=ws.signing_secret,
        process_before_response=True,
        attaching_conversation_kwargs_enabled=False,
    )


@contextmanager
def over_http(stand_in: StandIn, host: AppHost, ws: Workspace, app: App) -> Iterator[str]:
    """Deliver a workspace's payloads to a Bolt app by HTTP; gives the request URL."""
    with host.serving(bolt_asgi(app)) as base:
        url = f"{base}/slack/events"
        stand_in.deliver_to(ws, url)
        yield url


@contextmanager
def over_socket(
    ws: Workspace, app: App, *, ping_interval: float = 10
) -> Iterator[SocketModeHandler]:
    """Connect a Bolt app to a workspace by Socket Mode.

    The SDK notices a line that the server closed at its next ping, `ping_interval` seconds
    later at most.
    """
    handler = SocketModeHandler(app, ws.app_token, ping_interval=ping_interval)
    # connect and close have no annotations in slack_bolt.
    untyped: Any = handler
    untyped.connect()
    try:
        yield handler
    finally:
        close_socket(handler)


def close_socket(handler: SocketModeHandler) -> None:
    """Close a handler at once: the SDK's queue reader would wait for up to a second."""
    handler.client.closed = True
    handler.client.message_queue.put(None)
    untyped: Any = handler
    untyped.close()


@pytest.fixture(scope="session")
def stand_in() -> Iterator[StandIn]:
    """One running server for all tests."""
    with StandIn() as running:
        yield running


@pytest.fixture(scope="session")
def app_host() -> Iterator[AppHost]:
    """One HTTP server for the apps of all tests."""
    host = AppHost()
    host.start()
    yield host
    host.stop()


@pytest.fixture
def clock() -> SimulatedClock:
    """The simulated clock of this test."""
    return SimulatedClock(START)


@pytest.fixture
def ws(stand_in: StandIn, clock: SimulatedClock) -> Iterator[Workspace]:
    """A workspace of this test alone."""
    fresh = stand_in.new_workspace(clock.now)
    yield fresh
    stand_in.close_workspace(fresh)
