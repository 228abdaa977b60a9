"""`python -m tests.bench.acks [seconds [pace]]`: 50 lines a second, stored and acknowledged.

The evening of a big club: 200 pitchers of 20 teams, and their coaches, write in turn. The bot
runs as on a server, under uvicorn, in one process on SQLite and two on PostgreSQL (one for each
of two cores), which get the requests in turn; signed requests come at a fixed pace whether or
not earlier ones were answered, and an answer's time counts from when its request was due.
Slack's Web API is quick, slow (every call stands still) or down (503). On SQLite and, where
SPINKEEPER_TEST_POSTGRES names a server, on PostgreSQL. Not a test: the figures depend on the
machine.
"""

import json
import os
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, contextmanager
from datetime import timedelta
from http.client import HTTPConnection
from itertools import cycle
from pathlib import Path
from statistics import quantiles
from tempfile import TemporaryDirectory
from threading import local
from urllib.parse import urlsplit

from sqlalchemy import create_engine, text
from sqlmodel import func, select

from bot.clock import SystemClock
from bot.local.faults import Gate, HttpError
from bot.local.http_target import HttpTarget
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from core.model import Line
from core.model import Workspace as Stored
from core.store import Store, migrate
from tests.bench.big_club import make_club
from tests.support.process import Process, bot_process

SENDERS = 32
#: Lines before the clock starts: a process that just began reads its rule books and compiles.
WARM_UP = 40
TYPED = (
    "62p 11cb 4.1ip vs Summit no pain", "bullpen 24 pitches 6 changeups yesterday",
    "catch 30 throws 12 spins 50%", "see you all on saturday, bring the big cooler",
    "58p 9cb vs Sawmill, elbow pain 4/10", "44p 8cb 14 vs Summit", "tired arm today, no throwing",
)  # fmt: skip
METHODS = ("chat.postMessage", "chat.update", "reactions.add", "conversations.history")


class Sender:
    """Sends signed requests, one connection for each thread."""

    def __init__(self, targets: list[HttpTarget]) -> None:
        self._target = targets[0]  # they all sign alike
        self._urls = cycle([urlsplit(target.url) for target in targets])
        self._mine = local()
        #: Not acknowledged: Slack would send these again.
        self.refused = 0

    def send(self, body: bytes, due: float) -> float:
        """Post at `due`; gives the seconds from then to the answer."""
        time.sleep(max(0.0, due - time.perf_counter()))
        connection = self._connection()
        headers = self._target.signed(body) | {"Content-Type": "application/json"}
        connection.request("POST", "/slack/events", body, headers)
        answer = connection.getresponse()
        answer.read()
        took = time.perf_counter() - due
        if answer.status != 200:
            self.refused += 1
        return took

    def _connection(self) -> HTTPConnection:
        if not hasattr(self._mine, "connection"):
            url = next(self._urls)
            self._mine.connection = HTTPConnection(url.hostname or "", url.port)
        found: HTTPConnection = self._mine.connection
        return found


def events(ws: Workspace, writers: list[tuple[str, str, str]], count: int) -> Iterator[bytes]:
    """So many typed lines of yesterday evening, each with a message timestamp of its own."""
    today = SystemClock().now().replace(hour=0, minute=0, second=0, microsecond=0)
    evening = int((today - timedelta(hours=1)).timestamp())  # 17 or 18 in Chicago
    said = zip(cycle(TYPED), cycle(writers), range(count), strict=False)
    for typed, (author, channel, named), number in said:
        yield json.dumps(
            ws.event_callback(
                {
                    "type": "message", "user": author, "text": f"{named} {typed}".strip(),
                    "ts": f"{evening + number}.000100", "channel": channel,
                    "channel_type": "channel",
                }
            )
        ).encode()  # fmt: skip


def processor_time(processes: list[Process]) -> float:
    """Seconds of processor time that these took until now, the outbox's ticks included (Linux)."""
    ticks = 0
    for process in processes:
        stat = Path(f"/proc/{process.popen.pid}/stat").read_text().rpartition(")")[2].split()
        ticks += int(stat[11]) + int(stat[12])  # utime and stime of proc(5), after the name
    return ticks / os.sysconf("SC_CLK_TCK")


def measure(store: Store, slack: str, seconds: int, pace: int) -> tuple[list[float], int, float]:
    """The times of all answers (s), how many were no 200, processor time of a line (s)."""
    processes = 1 if store.engine.dialect.name == "sqlite" else 2
    with StandIn() as stand_in:
        ws = stand_in.new_workspace(SystemClock().now)
        with store.writing() as session:
            session.add(Stored(id=ws.team_id))
        writers = make_club(store, ws)
        for method in METHODS:
            if slack == "slow":
                ws.faults.order(method, Gate(), times=100_000)
            elif slack == "down":
                ws.faults.order(method, HttpError(503), times=100_000)
        with ExitStack() as running:
            targets, bots = [], []
            for _ in range(processes):
                bots.append(running.enter_context(bot_process(ws, store, stand_in, "http")))
                assert isinstance(ws.courier.target, HttpTarget)
                targets.append(ws.courier.target)
            pool = running.enter_context(ThreadPoolExecutor(SENDERS))
            sender = Sender(targets)
            bodies = list(events(ws, writers, WARM_UP + pace * seconds))
            for body in bodies[:WARM_UP]:
                sender.send(body, time.perf_counter())
            sender.refused = 0
            before = processor_time(bots)
            began = time.perf_counter() + 0.5
            sent = [
                pool.submit(sender.send, body, began + number / pace)
                for number, body in enumerate(bodies[WARM_UP:])
            ]
            took = [one.result() for one in sent]
            cost = (processor_time(bots) - before) / len(took)
    with store.reading() as session:
        stored = session.exec(select(func.count()).select_from(Line)).one()
    if stored < WARM_UP + len(took) - sender.refused:
        raise AssertionError(f"{stored} lines stored of {len(took)}, {sender.refused} refused")
    return took, sender.refused, cost


@contextmanager
def stores() -> Iterator[Iterator[tuple[str, Store]]]:
    """A way to fresh databases of each engine."""
    server = os.environ.get("SPINKEEPER_TEST_POSTGRES")  # noqa: TID251 - tests alone go by it
    with TemporaryDirectory() as folder, ExitStack() as opened:

        def fresh() -> Iterator[tuple[str, Store]]:
            for slack in ("quick", "slow", "down"):
                yield f"SQLite, Slack {slack}", _open(f"sqlite:///{Path(folder) / slack}.sqlite3")
                if server:
                    name = f"spinkeeper_acks_{os.getpid()}_{slack}"
                    engine = create_engine(server, isolation_level="AUTOCOMMIT")
                    with engine.connect() as connection:
                        connection.execute(text(f"CREATE DATABASE {name}"))
                    opened.callback(_drop, server, name)
                    url = engine.url.set(database=name).render_as_string(hide_password=False)
                    engine.dispose()
                    yield f"PostgreSQL, Slack {slack}", _open(url)

        yield fresh()


def _open(url: str) -> Store:
    store = Store(url)
    migrate(store)
    return store


def _drop(server: str, name: str) -> None:
    engine = create_engine(server, isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(text(f"DROP DATABASE {name} WITH (FORCE)"))
    engine.dispose()


def main() -> None:
    """Print the figures."""
    seconds, pace = [*map(int, sys.argv[1:]), *(20, 50)[len(sys.argv) - 1 :]]
    with stores() as fresh:
        for name, store in fresh:
            took, refused, cost = measure(store, name.split()[-1], seconds, pace)
            cuts = quantiles(took, n=1000)
            store.close()
            print(  # noqa: T201 - the figures are what this prints
                f"{name}: {len(took)} lines, {pace} a second: median {cuts[499] * 1000:.1f} ms, "
                f"p99 {cuts[989] * 1000:.1f} ms, longest {max(took) * 1000:.1f} ms, "
                f"{refused} not acknowledged, {cost * 1000:.1f} ms of processor time a line",
                flush=True,
            )


if __name__ == "__main__":
    main()
