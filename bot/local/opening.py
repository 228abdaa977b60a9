"""Opens the demo club: people move in, the team is loaded, the bot is connected."""

import sqlite3
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from zoneinfo import ZoneInfo

from slack_bolt import App, BoltRequest
from slack_sdk import WebClient
from sqlalchemy import event
from sqlalchemy.pool import ConnectionPoolEntry
from sqlmodel import col, select

from bot.access import find_installation, make_client
from bot.clock import SimulatedClock
from bot.local.clubhouse import Clubhouse
from bot.local.courier import Done
from bot.local.delivery import Delivery, Outcome
from bot.local.demo import Cast, DemoError, read_cast
from bot.local.records import Channel, Kind, Person
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from bot.manifest import make_manifest
from bot.outbox import owe
from bot.run import make_bot
from bot.settings import Settings
from bot.sockets import open_line
from bot.starting import remember_workspace
from bot.team_file import DirectoryError, TeamFileError, load_team_file, read_directory
from core.model import Team
from core.rulebooks import builtin_ids
from core.store import Store, migrate


@contextmanager
def open_clubhouse(settings: Settings, folder: Path, start: datetime) -> Iterator[Clubhouse]:
    """The demo club of `folder`, a little before `start` (the team's local time, naive).

    Events go to the bot in-process until `connected` is entered. The database lies in a
    temporary folder and is deleted at the end. Raises `DemoError` when the files cannot
    be used.
    """
    with ExitStack() as opened:
        # A day early, for the zone is not known yet.
        clock = SimulatedClock(start.replace(tzinfo=UTC) - timedelta(days=1))
        ws = opened.enter_context(StandIn()).new_workspace(clock.now)
        ws.follow(make_manifest())
        people, channels = move_in(ws, read_cast(folder))
        scratch = opened.enter_context(TemporaryDirectory(prefix="spinkeeper-demo-"))
        store = _scratch_store(Path(scratch) / "demo.sqlite3")
        opened.callback(store.close)
        client = make_client(ws.bot_token, ws.api_url)
        installation = find_installation(client)
        # Every run shows the same: a rule-book folder of one's own is left out.
        local = settings.model_copy(update={"api_url": ws.api_url, "rulebooks": None})
        remember_workspace(store, installation, local, clock.now())
        zone = _load_team(store, client, ws.team_id, folder / "team.toml", start)
        bot = make_bot(local, installation, clock, store)
        ws.deliver_by(InProcess(bot.app))
        yield Clubhouse(ws, clock, bot, people, channels, zone)


def move_in(ws: Workspace, cast: Cast) -> tuple[dict[str, Person], dict[str, Channel]]:
    """Give everybody an account and make the channels, under the ids of the files."""
    people = {
        one.key: ws.state.keep_person(Person(one.id, one.handle, one.name)) for one in cast.people
    }
    channels = {}
    for one in cast.channels:
        members = (*(people[key].id for key in one.members), ws.bot.id)
        kind: Kind = "private" if one.private else "public"
        created = ws.state.stamps.seconds()
        channels[one.key] = ws.state.keep_channel(Channel(one.id, one.name, kind, created, members))
    return people, channels


@contextmanager
def connected(club: Clubhouse) -> Iterator[None]:
    """Connect the bot by Socket Mode, as on Slack; from now on events go that way."""
    line = open_line(club.bot.app, club.ws.app_token)
    line.connect()
    club.ws.sockets.wait_connected()
    club.ws.deliver_by_sockets()
    try:
        yield
    finally:
        line.hang_up(within=1.0)


class InProcess:
    """Hands events to the Bolt app without a line between: three weeks go in in a second.

    A listener that calls the Web API would wait for itself here; those of typed lines
    never do.
    """

    def __init__(self, app: App) -> None:
        """Deliver to this app."""
        self._app = app

    def send(self, delivery: Delivery, done: Done) -> None:
        """Let the app handle a payload now."""
        request = BoltRequest(mode="socket_mode", body=delivery.payload)
        answer = self._app.dispatch(request)
        acknowledged = answer.status == 200
        done(Outcome(None if acknowledged else "http_error", answer.status, answer.body or ""))


def _scratch_store(file: Path) -> Store:
    """A database that need not survive a power cut: a thousand commits wait for no disk."""
    store = Store(f"sqlite:///{file}")
    event.listen(store.engine, "connect", _let_commits_be_quick)
    migrate(store)
    return store


def _let_commits_be_quick(connection: sqlite3.Connection, _entry: ConnectionPoolEntry) -> None:
    connection.execute("PRAGMA synchronous = OFF")


def _load_team(
    store: Store, client: WebClient, workspace_id: str, file: Path, start: datetime
) -> ZoneInfo:
    try:
        with store.writing() as session:
            report = load_team_file(
                file,
                read_directory(client),
                session,
                workspace_id,
                known_books=builtin_ids(),
                now=start.replace(tzinfo=UTC),
            )
            owe(session, workspace_id, report.notices)
            zones = select(Team.time_zone).order_by(col(Team.id))
            return ZoneInfo(session.exec(zones).first() or "UTC")
    except (TeamFileError, DirectoryError) as wrong:
        raise DemoError(f"The demo's team cannot be loaded: {wrong}") from wrong
