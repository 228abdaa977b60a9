"""An ASGI application on a free loopback port, in a thread of its own."""

import asyncio
import socket
import threading
from typing import Any

import uvicorn
from starlette.requests import Request
from uvicorn.protocols.http.h11_impl import H11Protocol

# Clients of Slack wait in recv for up to 3 s; a ping wakes them, and closing is then quick.
PING_EVERY = 0.2


class LoopbackServer:
    """Listens from construction on, answers from `start` on; stopping takes about 0.2 s."""

    def __init__(self, app: Any) -> None:
        self._transports: dict[tuple[str, int], asyncio.Transport] = {}
        self._listener = socket.create_server(("127.0.0.1", 0))
        self.base_url = f"http://127.0.0.1:{self._listener.getsockname()[1]}"
        self._server = uvicorn.Server(
            uvicorn.Config(
                app,
                http=_protocol(self._transports),
                ws="websockets-sansio",
                ws_ping_interval=PING_EVERY,
                interface="asgi3",
                proxy_headers=False,
                lifespan="off",
                log_config=None,
                access_log=False,
                loop="asyncio",
            )
        )
        self._thread = threading.Thread(target=self._run, name="loopback-server", daemon=True)

    def start(self) -> None:
        """Begin to answer; whoever connected earlier is answered now."""
        self._thread.start()

    def stop(self) -> None:
        """Close every connection and end the thread."""
        self._server.should_exit = True
        self._server.force_exit = True
        if self._thread.is_alive():
            self._thread.join(timeout=10)
        self._listener.close()

    def hang_up(self, request: Request) -> None:
        """Cut the line on which a request came, with no answer."""
        if request.client is not None:
            self._transports[request.client.host, request.client.port].abort()

    def _run(self) -> None:
        self._server.run(sockets=[self._listener])


def _protocol(transports: dict[tuple[str, int], asyncio.Transport]) -> type[H11Protocol]:
    """Return a protocol that keeps hold of its transports, so that a line can be cut."""

    class Protocol(H11Protocol):
        def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
            # uvicorn narrows the parameter in the same way.
            super().connection_made(transport)
            if self.client is not None:
                transports[self.client] = transport

        def connection_lost(self, exc: Exception | None) -> None:
            super().connection_lost(exc)
            if self.client is not None:
                transports.pop(self.client, None)

    return Protocol
