"""Delivery over Socket Mode: one workspace's connections, envelopes and acknowledgements."""

import asyncio
import json
import threading
from collections.abc import Callable, Coroutine
from dataclasses import dataclass, field
from typing import Any, Final, Literal

from starlette.websockets import WebSocket, WebSocketDisconnect

from bot.local.courier import Done
from bot.local.delivery import Delivery, Outcome
from bot.local.errors import ScriptError
from bot.local.records import Json
from bot.local.stamps import Ids

MOST_CONNECTIONS: Final = 10
DisconnectReason = Literal["warning", "refresh_requested", "link_disabled", "too_many_websockets"]


@dataclass(eq=False, slots=True)
class Connection:
    """One client's WebSocket; `received` holds every frame that the client sent."""

    socket: WebSocket
    number: int
    received: list[Json] = field(default_factory=list)
    sent: list[Json] = field(default_factory=list)
    refused: bool = False
    leaving: bool = False
    greeted: asyncio.Event = field(default_factory=asyncio.Event)


@dataclass(slots=True)
class _Waiting:
    delivery: Delivery
    done: Done
    timer: asyncio.TimerHandle


class SocketHub:
    """Sends each payload to any one of up to ten connections, in turn, and waits for its ack.

    An ack counts on whichever connection it comes in, for a client that was asked to
    refresh answers on its new connection.
    """

    def __init__(self, ids: Ids, changed: threading.Condition, ack_limit: float) -> None:
        self.ack_limit = ack_limit
        self.stray_acks: list[Json] = []
        self.choose: Callable[[list[Connection]], Connection] = self._next_in_turn
        self._ids = ids
        self._changed = changed
        self._loop: asyncio.AbstractEventLoop | None = None
        self._connections: list[Connection] = []
        self._waiting: dict[str, _Waiting] = {}
        self._opened = 0
        self._turn = 0
        self._tasks: set[asyncio.Task[None]] = set()

    @property
    def connections(self) -> list[Connection]:
        """The open connections, oldest first."""
        with self._changed:
            return list(self._connections)

    @property
    def opened(self) -> int:
        """How many connections there have ever been."""
        return self._opened

    def wait_connected(self, count: int = 1, timeout: float = 10.0) -> None:
        """Return when `count` connections are open; raises ScriptError after `timeout` s."""
        with self._changed:
            if not self._changed.wait_for(lambda: len(self._connections) == count, timeout):
                raise ScriptError(f"{len(self._connections)} sockets open, not {count}.")

    def wait_opened(self, count: int, timeout: float = 10.0) -> None:
        """Return when `count` connections have been opened, ever; raises ScriptError."""
        with self._changed:
            if not self._changed.wait_for(lambda: self._opened >= count, timeout):
                raise ScriptError(f"{self._opened} sockets were opened, not {count}.")

    def send(self, delivery: Delivery, done: Done) -> None:
        """Send an envelope; with nobody connected the delivery fails."""
        if self._loop is None or not self.connections:
            done(Outcome(reason="connection_failed"))
        else:
            self._loop.call_soon_threadsafe(self._send, delivery, done)

    def disconnect(self, reason: DisconnectReason, connection: Connection | None = None) -> None:
        """Send a `disconnect` frame to one connection, or to all."""
        frame = {"type": "disconnect", "reason": reason, "debug_info": {"host": "local"}}
        for each in [connection] if connection is not None else self.connections:
            each.leaving = True
            self._from_outside(self._frame(each, frame))

    def cut(self, connection: Connection | None = None, code: int = 1011) -> None:
        """Close one connection, or all, with no warning."""
        for each in [connection] if connection is not None else self.connections:
            self._from_outside(each.socket.close(code))

    def push(self, frame: Json) -> None:
        """Send any frame to the connection whose turn it is, such as one of an unknown type."""
        self._from_outside(self._frame(self.choose(self.connections), frame))

    async def serve(self, socket: WebSocket, app_id: str) -> None:
        """Speak with one client until it leaves."""
        self._loop = asyncio.get_running_loop()
        # It joins before it is let in: once its connect() has returned, payloads reach it.
        connection = self._join(socket)
        try:
            await socket.accept()
            await self._greet(connection, app_id)
            connection.greeted.set()
            while True:
                self._receive(connection, json.loads(await socket.receive_text()))
        except WebSocketDisconnect:
            pass
        finally:
            connection.greeted.set()
            self._leave(connection)

    def _join(self, socket: WebSocket) -> Connection:
        with self._changed:
            self._opened += 1
            connection = Connection(socket, self._opened)
            connection.refused = len(self._connections) >= MOST_CONNECTIONS
            self._connections.append(connection)
            self._changed.notify_all()
            return connection

    def _leave(self, connection: Connection) -> None:
        with self._changed:
            self._connections.remove(connection)
            self._changed.notify_all()

    async def _greet(self, connection: Connection, app_id: str) -> None:
        if connection.refused:
            reason = "too_many_websockets"
            await self._write(connection, {"type": "disconnect", "reason": reason})
            await connection.socket.close()
            return
        debug = {"host": "local", "build_number": 1, "approximate_connection_time": 18060}
        await self._write(
            connection,
            {
                "type": "hello",
                "num_connections": len(self._connections),
                "debug_info": debug,
                "connection_info": {"app_id": app_id},
            },
        )

    def _send(self, delivery: Delivery, done: Done) -> None:
        assert self._loop is not None
        open_now = self.connections
        if not open_now:
            done(Outcome(reason="connection_failed"))
            return
        envelope_id = self._ids.uuid()
        timer = self._loop.call_later(self.ack_limit, self._give_up, envelope_id)
        self._waiting[envelope_id] = _Waiting(delivery, done, timer)
        self._spawn(self._frame(self.choose(open_now), delivery.envelope(envelope_id)))

    def _give_up(self, envelope_id: str) -> None:
        waiting = self._waiting.pop(envelope_id)
        waiting.done(Outcome(reason="http_timeout"))

    def _receive(self, connection: Connection, frame: Json) -> None:
        connection.received.append(frame)
        waiting = self._waiting.pop(str(frame.get("envelope_id")), None)
        if waiting is None:
            with self._changed:
                self.stray_acks.append(frame)
                self._changed.notify_all()
            return
        waiting.timer.cancel()
        payload = frame.get("payload")
        body = json.dumps(payload) if payload is not None else ""
        waiting.done(Outcome(status=200, body=body))

    async def _frame(self, connection: Connection, frame: Json) -> None:
        await connection.greeted.wait()
        await self._write(connection, frame)

    async def _write(self, connection: Connection, frame: Json) -> None:
        connection.sent.append(frame)
        try:
            await connection.socket.send_text(json.dumps(frame))
        except (WebSocketDisconnect, RuntimeError):
            # The client left in between: the envelope stays unacknowledged, as on a dead line.
            return

    def _from_outside(self, work: Coroutine[Any, Any, None]) -> None:
        if self._loop is None:
            work.close()
            raise ScriptError("No app is connected by Socket Mode.")
        asyncio.run_coroutine_threadsafe(work, self._loop).result(timeout=10)

    def _spawn(self, work: Coroutine[Any, Any, None]) -> None:
        task = asyncio.get_running_loop().create_task(work)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)

    def _next_in_turn(self, connections: list[Connection]) -> Connection:
        if not connections:
            raise ScriptError("No app is connected by Socket Mode.")
        staying = [c for c in connections if not (c.leaving or c.refused)] or connections
        self._turn += 1
        return staying[self._turn % len(staying)]
