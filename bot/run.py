"""Starts the bot on Slack, by Socket Mode or over HTTP, and stops it in good order."""

import logging
import time
from collections.abc import Callable, Sequence
from contextlib import ExitStack
from dataclasses import dataclass
from datetime import datetime
from functools import cache, partial

from slack_bolt import App

from bot.access import Access, Installation
from bot.app import make_app
from bot.blocks import Renderer
from bot.calendar_fetch import Fetcher
from bot.calendars import Calendars, Fetch
from bot.clock import Clock, SystemClock
from bot.daily import Daily
from bot.due import Due
from bot.errands import Errands
from bot.health import Health
from bot.http import make_http
from bot.install import InstallFlow, make_flow
from bot.listeners.desk import Desk
from bot.outbox import Outbox
from bot.right_of_way import RightOfWay
from bot.schedule import Schedule
from bot.settings import Settings, database_url
from bot.starting import find_access
from bot.transports import serve_http, serve_socket
from bot.warming import warm
from core.ledger.binding import BOOKS, Books
from core.rulebooks import RuleBook, builtin_ids, load_books, own_ids
from core.store import Store, migrate

log = logging.getLogger(__name__)

Job = Callable[[datetime], object]


@dataclass(frozen=True, slots=True)
class Bot:
    """One running bot: the Bolt app, its database and what it delivers by."""

    app: App
    store: Store
    outbox: Outbox
    schedule: Schedule
    due: Due
    daily: Daily
    calendars: Calendars
    errands: Errands
    #: What each tick does, in this order.
    jobs: tuple[Job, ...]
    health: Health
    #: The pages by which the app is installed; none where its client id is not given.
    flow: InstallFlow | None

    def tick(self, now: datetime) -> None:
        """Do whatever is due at `now` (UTC)."""
        tick(self.jobs, now)
        self.errands.finish()  # whoever calls this moves the clock himself

    def next_due(self, now: datetime) -> datetime | None:
        """When there is something to do again, if nothing else happens."""
        times = (self.outbox.next_due(), self.errands.next_due(), self.due.next_due(now))
        return min((time for time in times if time is not None), default=None)


def tick(jobs: Sequence[Job], now: datetime) -> None:
    """Owe what the clock calls for and deliver what is owed, each without the others' faults."""
    with ExitStack() as each:  # from the last to the first
        for job in reversed(jobs):
            each.callback(job, now)


def make_bot(
    settings: Settings,
    installation: Installation | None,
    clock: Clock,
    store: Store,
    fetch: Fetch | None = None,
) -> Bot:
    """Put a bot together; nothing runs yet.

    `installation` is what the token in the environment opens, none where the token comes by an
    install. `fetch` gets calendars otherwise than by https.
    """
    access = Access(store, settings.api_url, installation)
    books = books_from(settings)
    store.info[BOOKS] = books
    way = RightOfWay()
    outbox = Outbox(store, access.open, Renderer(books), way.give)
    due, daily = Due(store, way.give), Daily(store)
    calendars = Calendars(store, fetch or Fetcher(time.monotonic))
    known = (*builtin_ids(), *own_ids(settings.rulebooks))
    errands = Errands(store, access.open, known)
    jobs = (due.owe, daily.run, calendars.run, errands.run, outbox.deliver)
    schedule = Schedule(clock, partial(tick, jobs))
    errands.done = schedule.wake
    secret = settings.signing_secret.get_secret_value() if settings.signing_secret else None
    desk = Desk(store, clock, schedule.wake)
    app = make_app(access, desk, secret, way)
    flow = make_flow(settings, desk)
    health = Health(access, clock, schedule.last_run)
    return Bot(
        app=app,
        store=store,
        outbox=outbox,
        schedule=schedule,
        due=due,
        daily=daily,
        calendars=calendars,
        errands=errands,
        jobs=jobs,
        health=health,
        flow=flow,
    )


def books_from(settings: Settings) -> Books:
    """Rule books by id, from the built-in ones and the team's own folder, each loaded once."""

    @cache
    def books(names: tuple[str, ...]) -> tuple[RuleBook, ...]:
        return load_books(names, settings.rulebooks)

    return books


def open_store(url: str) -> Store:
    """A database at the newest schema."""
    store = Store(url)
    migrate(store)
    return store


def run_on_slack(settings: Settings) -> None:
    """Run until SIGTERM or Ctrl-C. Raises `SlackAccessError`, `StoreError` before it begins."""
    store = open_store(database_url(settings))
    clock = SystemClock()
    own = find_access(settings, store, clock.now())
    bot = make_bot(settings, own, clock, store)
    warm()
    bot.schedule.start()
    log.info("started by %s", settings.transport)
    try:
        if settings.transport == "socket":
            token = settings.app_token.get_secret_value() if settings.app_token else ""
            serve_socket(bot.app, token, bot.outbox.stop)
        else:
            serve_http(make_http(bot.app, bot.health, bot.flow), settings.port, bot.outbox.stop)
    finally:
        bot.outbox.stop()
        bot.schedule.stop()
        bot.calendars.stop()
        bot.errands.stop()
        store.close()
