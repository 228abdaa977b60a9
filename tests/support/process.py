"""`python -m bot` in a process of its own, serving a club of a test."""

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from queue import Queue
from threading import Thread
from typing import Literal

from bot.local.server import StandIn
from bot.local.workspace import Workspace
from core.store import Store

ROOT = Path(__file__).parents[2]
Transport = Literal["http", "socket"]


class Process:
    """A running bot, and what it logs: a pipe that nobody reads would stop it."""

    def __init__(self, environment: dict[str, str]) -> None:
        self.popen = subprocess.Popen(
            [sys.executable, "-m", "bot"], cwd=ROOT, env=environment, text=True,
            stderr=subprocess.PIPE, stdout=subprocess.DEVNULL,
        )  # fmt: skip
        self._lines: Queue[str | None] = Queue()
        self._reader = Thread(target=self._read, daemon=True)
        self._reader.start()

    def said(self, pattern: str, timeout: float = 30.0) -> str:
        """Wait until it logs this; gives the group."""
        while (line := self._lines.get(timeout=timeout)) is not None:
            if found := re.search(pattern, line):
                return found[1]
        raise AssertionError(f"the bot ended before it said {pattern}")

    def rest(self) -> str:
        """What it has logged that nobody waited for, once it has ended."""
        self._reader.join(10)
        return "\n".join(iter(self._lines.get_nowait, None))

    def terminate(self) -> None:
        """Send SIGTERM."""
        self.popen.terminate()

    def wait(self, timeout: float) -> int:
        """The exit status."""
        return self.popen.wait(timeout)

    def kill(self) -> None:
        """End it at once."""
        self.popen.kill()
        self.popen.wait()
        self._reader.join()
        assert self.popen.stderr is not None
        self.popen.stderr.close()

    def _read(self) -> None:
        assert self.popen.stderr is not None
        for line in self.popen.stderr:
            self._lines.put(line)
        self._lines.put(None)


@contextmanager
def bot_process(
    ws: Workspace, store: Store, stand_in: StandIn, transport: Transport
) -> Iterator[Process]:
    """Start the bot, let everything be delivered to it, and kill it in the end."""
    kept = {k: v for k, v in os.environ.items() if not k.startswith(("SLACK_", "SPINKEEPER_"))}  # noqa: TID251 - handed on to a child process
    environment = kept | {
        "SLACK_BOT_TOKEN": ws.bot_token,
        "SLACK_API_URL": ws.api_url,
        "SPINKEEPER_DATABASE_URL": store.engine.url.render_as_string(hide_password=False),
        "SPINKEEPER_PORT": "0",
    }
    if transport == "socket":
        environment["SLACK_APP_TOKEN"] = ws.app_token
    else:
        environment["SLACK_SIGNING_SECRET"] = ws.signing_secret
    process = Process(environment)
    before = ws.courier.target
    try:
        if transport == "socket":
            ws.deliver_by_sockets()
            ws.sockets.wait_connected(timeout=30)
        else:
            port = process.said(r"running on http://[^:]+:(\d+)")
            stand_in.deliver_to(ws, f"http://127.0.0.1:{port}/slack/events")
        yield process
    finally:
        ws.faults.clear()
        process.kill()
        if before is not None:
            ws.deliver_by(before)
