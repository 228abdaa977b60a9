"""Starts the bot on Slack, by Socket Mode or over HTTP, and stops it in good order."""

import logging
import time
from collections.abc import Callable, Sequence
from contextlib import ExitStack
from dataclasses import dataclass
from datetime import datetime
from functools import cache, partial

from slack_bolt import App

from bot.app import Installation, find_installation, make_app, make_client
from bot.blocks import Renderer
from bot.calendar_fetch import Fetcher
from bot.calendars import Calendars, Fetch
from bot.clock import Clock, SystemClock
from bot.daily import Daily
from bot.due import Due
from bot.errands import Errands
from bot.errands.errand import Tools
from bot.health import Health
from bot.http import make_http
from bot.listeners.desk import Desk
from bot.outbox import Outbox
from bot.right_of_way import RightOfWay
from bot.schedule import Schedule
from bot.settings import Settings, database_url
from bot.transports import serve_http, serve_socket
from bot.warming import warm
from core.leaving import open_workspace
from core.ledger.binding import BOOKS, Books
from core.model import Workspace
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
    installation: Installation,
    clock: Clock,
    store: Store,
    fetch: Fetch | None = None,
) -> Bot:
    """Put a bot together; nothing runs yet. `fetch` gets calendars otherwise than by https."""
    client = make_client(installation.bot_token, settings.api_url)
    books = books_from(settings)
    store.info[BOOKS] = books
    way = RightOfWay()
    outbox = Outbox(store, client, Renderer(books), way.give)
    due, daily = Due(store, way.give), Daily(store)
    calendars = Calendars(store, fetch or Fetcher(time.monotonic))
    known = (*builtin_ids(), *own_ids(settings.rulebooks))
    errands = Errands(Tools(store, client, known))
    jobs = (due.owe, daily.run, calendars.run, errands.run, outbox.deliver)
    schedule = Schedule(clock, partial(tick, jobs))
    errands.done = schedule.wake
    secret = settings.signing_secret.get_secret_value() if settings.signing_secret else None
    desk = Desk(store, clock, schedule.wake)
    app = make_app(installation, settings.api_url, desk, secret, way)
    health = Health(store, clock, schedule.last_run)
    return Bot(app, store, outbox, schedule, due, daily, calendars, errands, jobs, health)


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


def remember_workspace(
    store: Store, installation: Installation, settings: Settings, now: datetime
) -> None:
    """Keep the workspace's own row up to date; its token works, so it is served from now on."""
    workspace = Workspace(
        id=installation.workspace_id,
        name=installation.workspace_name,
        bot_user_id=installation.bot_user_id,
        own_books=list(own_ids(settings.rulebooks)),
    )
    with store.writing() as session:
        open_workspace(session, workspace, now)


def run_on_slack(settings: Settings) -> None:
    """Run until SIGTERM or Ctrl-C. Raises `SlackAccessError`, `StoreError` before it begins."""
    token = settings.bot_token.get_secret_value() if settings.bot_token else ""
    installation = find_installation(make_client(token, settings.api_url))
    store = open_store(database_url(settings))
    clock = SystemClock()
    remember_workspace(store, installation, settings, clock.now())
    bot = make_bot(settings, installation, clock, store)
    warm()
    bot.schedule.start()
    log.info("workspace %s: started by %s", installation.workspace_id, settings.transport)
    try:
        if settings.transport == "socket":
            token = settings.app_token.get_secret_value() if settings.app_token else ""
            serve_socket(bot.app, token, bot.outbox.stop)
        else:
            serve_http(make_http(bot.app, bot.health), settings.port, bot.outbox.stop)
    finally:
        bot.outbox.stop()
        bot.schedule.stop()
        bot.calendars.stop()
        bot.errands.stop()
        store.close()
