"""The stand-in itself: one server on a loopback port for any number of workspaces.

clock = SimulatedClock(datetime(2026, 5, 2, 20, tzinfo=UTC))
with StandIn() as stand_in:
    ws = stand_in.new_workspace(clock.now)
    app = App(client=WebClient(ws.bot_token, base_url=ws.api_url), signing_secret=ws.signing_secret)
    SocketModeHandler(app, ws.app_token).connect()  # or serve it, and stand_in.deliver_to(ws, url)
    rosa = ws.add_person("Rosa Delgado")
    log = ws.add_channel("pitching-log", [rosa])
    said = ws.say(rosa, log, "62p 11cb")
    ws.settle()
    print(said.delivery.wait(), ws.reactions_of_bot(said), ws.replies(log, said))
"""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import datetime
from itertools import count
from types import TracebackType
from typing import Self

from starlette.requests import Request

from bot.clock import SystemClock
from bot.local.http_target import HttpTarget
from bot.local.loopback import LoopbackServer
from bot.local.registry import Registry
from bot.local.web import make_app
from bot.local.workspace import Workspace

SYSTEM_CLOCK = SystemClock()


class StandIn:
    """Start it with `with StandIn() as stand_in:`.

    `real_now` gives the time that request signatures carry (the app compares it with
    its own clock); `ack_limit` is how long the app may take to answer,
    in real seconds (Slack: 3).
    """

    def __init__(
        self, *, real_now: Callable[[], datetime] = SYSTEM_CLOCK.now, ack_limit: float = 3.0
    ) -> None:
        self.real_now = real_now
        self.ack_limit = ack_limit
        self._numbers = count(1)
        self._pool = ThreadPoolExecutor(16, thread_name_prefix="slack-delivery")
        self._registry = Registry(self._hang_up)
        self._server = LoopbackServer(make_app(self._registry))

    def __enter__(self) -> Self:
        self.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.stop()

    @property
    def base_url(self) -> str:
        """The server's address."""
        return self._server.base_url

    @property
    def api_url(self) -> str:
        """The base URL for the app's Web API client."""
        return f"{self.base_url}/api/"

    def start(self) -> None:
        """Begin to answer."""
        self._server.start()

    def new_workspace(
        self,
        now: Callable[[], datetime],
        *,
        ack_limit: float | None = None,
        same_app_as: Workspace | None = None,
    ) -> Workspace:
        """Return a fresh, empty workspace whose messages are stamped by `now` (UTC).

        It has tokens and a secret of its own, so tests that share the server do not see
        one another; with `same_app_as` it is a second workspace of that one's app: another
        bot token, but the same app token, secrets and sockets. Deliveries go to Socket
        Mode clients until `deliver_to` is called.
        """
        limit = self.ack_limit if ack_limit is None else ack_limit
        ws = Workspace(next(self._numbers), now, self.base_url, limit, same_app_as)
        self._registry.add(ws)
        return ws

    def deliver_to(self, ws: Workspace, url: str, *, ack_limit: float | None = None) -> HttpTarget:
        """Deliver this workspace's payloads by HTTP to the app's request URL.

        Returns the target, by which a test can also post bytes of its own making.
        """
        limit = ws.sockets.ack_limit if ack_limit is None else ack_limit
        target = HttpTarget(url, ws.signing_secret, self.real_now, self._pool, limit)
        ws.deliver_by(target)
        return target

    def close_workspace(self, ws: Workspace) -> None:
        """Forget a workspace: gates open, its tokens are invalid from now on."""
        ws.faults.clear()
        self._registry.remove(ws)

    def stop(self) -> None:
        """Stop serving; open gates, close sockets, end threads."""
        for ws in self._registry.workspaces():
            self.close_workspace(ws)
        self._server.stop()
        self._pool.shutdown()

    def _hang_up(self, request: Request) -> None:
        self._server.hang_up(request)
