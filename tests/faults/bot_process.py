"""A bot in a process of its own, to be killed: connected by Socket Mode to a stand-in.

Run with one JSON object as argument. `dies` names the point at which it kills itself:
"before commit", "after commit"; with "after ack" it never delivers and waits to be killed.
"""

import json
import os
import signal
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime
from threading import Event

from sqlmodel import Session

from bot.access import Access, find_installation, make_client
from bot.app import make_app
from bot.clock import SimulatedClock
from bot.listeners.desk import Desk
from bot.run import make_bot
from bot.settings import Settings
from bot.sockets import open_line
from core.store import Store


def die() -> None:
    os.kill(os.getpid(), signal.SIGKILL)


class Doomed(Store):
    """A database whose process is killed just before its first commit."""

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """Write everything but the commit."""
        with super().writing() as session:
            yield session
            session.flush()
            die()


def main(given: dict[str, str]) -> None:
    clock = SimulatedClock(datetime.fromisoformat(given["now"]))
    store = Store(given["database"])
    settings = Settings(api_url=given["api_url"])
    installation = find_installation(make_client(given["bot_token"], settings.api_url))
    bot = make_bot(settings, installation, clock, store)
    owed = Event()
    desk = Desk(store, clock, owed.set)
    if given["dies"] == "before commit":
        desk = replace(desk, store=Doomed(given["database"]))
    elif given["dies"] == "after commit":
        desk = replace(desk, committed=die)
    app = make_app(Access(store, settings.api_url, installation), desk)
    open_line(app, given["app_token"]).connect()
    while given["dies"] != "after ack":
        owed.wait()
        owed.clear()
        bot.outbox.deliver(clock.now())
    Event().wait()


if __name__ == "__main__":
    main(json.loads(sys.argv[1]))
