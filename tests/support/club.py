"""A small invented club in a stand-in workspace, with the real bot serving it.

The people: Dana coaches, Priya keeps score; Mateo (17) types for himself and Elena is his
mother; Leo (13) has no account, Carmen and Tom are his parents, and Tom has no account
either; Sam Ruiz and Sam Oduya share a first name; Ben has no consent on file.
"""

from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from pydantic import SecretStr
from slack_bolt import App

from bot.access import find_installation, make_client
from bot.calendars import Fetch
from bot.clock import SimulatedClock
from bot.http import make_http
from bot.local.records import Channel, Message, Person
from bot.local.server import StandIn
from bot.local.talk import Said
from bot.local.workspace import Workspace
from bot.manifest import make_manifest
from bot.run import Bot, make_bot
from bot.settings import Settings
from bot.sockets import SocketLine, open_line
from bot.starting import remember_workspace
from core import model
from core.calendar.ics import CalendarError
from core.model import GuardianLink, Membership, Pitcher, PitcherTeam, Role, Team, key
from core.store import Store
from tests.support.workspace import AppHost

#: Saturday 2 May 2026, 18:00 in Chicago.
SATURDAY_EVENING = datetime(2026, 5, 2, 23, 0, tzinfo=UTC)
ZONE = "America/Chicago"


@dataclass
class Club:
    """The workspace, the bot and everybody in it."""

    ws: Workspace
    clock: SimulatedClock
    bot: Bot
    store: Store
    people: dict[str, Person]
    log: Channel
    staff: Channel

    def say(self, who: str, text: str, channel: Channel | str | None = None) -> Said:
        """Let somebody type a line in the log channel, and let the bot finish."""
        said = self.ws.say(self.people[who], channel or self.log, text)
        self.settle()
        return said

    def tell_bot(self, who: str, text: str) -> Said:
        """Let somebody type a line to the bot in a direct message."""
        return self.say(who, text, self.ws.dm(self.people[who]))

    def edit(self, said: Said, text: str) -> None:
        """Let the author edit a line, a little later."""
        self.clock.advance(timedelta(seconds=30))
        self.ws.edit(said, text)
        self.settle()

    def delete(self, said: Said) -> None:
        """Let the author delete a line, a little later."""
        self.clock.advance(timedelta(seconds=30))
        self.ws.delete(said)
        self.settle()

    def settle(self) -> None:
        """Let every delivery be answered and every message that is due soon be sent."""
        self.ws.settle()
        soon = self.clock.now() + timedelta(minutes=1)
        self.run_errands()
        self.bot.outbox.deliver(self.clock.now())
        while (due := self.bot.outbox.next_due()) is not None and due <= soon:
            self.clock.set(max(due, self.clock.now()))
            self.bot.outbox.deliver(self.clock.now())
        self.ws.settle()

    def run_errands(self) -> None:
        """Let the bot do what it put off, and what follows from it; not what must wait."""
        for _ in range(5):
            self.bot.errands.run(self.clock.now())
            self.bot.errands.finish()

    def settle_now(self) -> None:
        """Let what is due at this moment be sent, and nothing later."""
        self.bot.outbox.deliver(self.clock.now())
        self.ws.settle()

    def heard(self, who: str) -> list[str]:
        """What the bot wrote to somebody in direct messages, as it stands now."""
        mine = self.ws.dm_messages(self.people[who])
        return [message.text for message in mine if message.user == self.ws.bot.id]

    def in_staff_channel(self) -> list[str]:
        """What the bot wrote in the staff channel, threads included."""
        return [message.text for message in self.ws.bot_messages(self.staff)]

    def in_log_channel(self) -> list[Message]:
        """What the bot wrote in the log channel: it must stay empty."""
        return self.ws.bot_messages(self.log)

    def reaction(self, said: Said) -> list[str]:
        """The bot's reactions under a line."""
        return self.ws.reactions_of_bot(said)


def make_people(ws: Workspace) -> tuple[dict[str, Person], Channel, Channel]:
    """The accounts and channels of the workspace."""
    names = {
        "dana": "Dana Mercer", "priya": "Priya Venn", "mateo": "Mateo Cruz",
        "elena": "Elena Cruz", "carmen": "Carmen Ortiz", "sam_r": "Sam Ruiz",
        "sam_o": "Sam Oduya", "joan": "Joan Oduya", "visitor": "Vic Stray",
    }  # fmt: skip
    people = {who: ws.add_person(name) for who, name in names.items()}
    log = ws.add_channel("pitching-log", list(people.values()))
    staff = ws.add_channel("staff", [people["dana"]], private=True)
    return people, log, staff


def seed(store: Store, ws: Workspace, people: dict[str, Person], log: str, staff: str) -> None:
    """Put the club into the database."""
    with store.writing() as session:
        team = Team(
            workspace_id=ws.team_id, name="Herons", time_zone=ZONE, log_channel=log,
            staff_channel=staff, rule_books=["pitch-smart"], season_start=date(2026, 3, 1),
        )  # fmt: skip
        rows = {
            who: model.Person(workspace_id=ws.team_id, slack_id=one.id, name=one.real_name)
            for who, one in people.items()
            if who != "visitor"
        }
        rows["tom"] = model.Person(workspace_id=ws.team_id, slack_id=None, name="Tom Ortiz")
        session.add(team)
        session.add_all(rows.values())
        session.flush()
        for who, role in (("dana", Role.COACH), ("priya", Role.SCOREKEEPER)):
            session.add(
                Membership(
                    workspace_id=ws.team_id, team_id=key(team), person_id=key(rows[who]), role=role
                )
            )
        for name, born, account, parents in _PITCHERS:
            pitcher = Pitcher(
                workspace_id=ws.team_id,
                name=name,
                birth_date=born,
                person_id=key(rows[account]) if account else None,
                consent_on=None if name == "Ben Abara" else date(2026, 2, 1),
                breaking_pitch="curveball",
            )
            session.add(pitcher)
            session.flush()
            session.add(
                PitcherTeam(workspace_id=ws.team_id, pitcher_id=key(pitcher), team_id=key(team))
            )
            session.add_all(
                GuardianLink(
                    workspace_id=ws.team_id, pitcher_id=key(pitcher), person_id=key(rows[parent])
                )
                for parent in parents
            )


_PITCHERS: list[tuple[str, date, str | None, list[str]]] = [
    ("Mateo Cruz", date(2009, 1, 10), "mateo", ["elena"]),
    ("Leo Ortiz", date(2012, 6, 1), None, ["carmen", "tom"]),
    ("Sam Ruiz", date(2009, 3, 3), "sam_r", []),
    ("Sam Oduya", date(2008, 8, 8), "sam_o", ["joan"]),
    ("Ben Abara", date(2012, 9, 9), None, ["joan"]),
]


def no_network(_address: str) -> bytes:
    """No test reads a calendar from the network."""
    raise CalendarError("no answer")


@contextmanager
def club_at(
    stand_in: StandIn,
    host: AppHost,
    store: Store,
    *,
    socket: bool = False,
    rulebooks: Path | None = None,
    fetch: Fetch = no_network,
    seeded: bool = True,
) -> Iterator[Club]:
    """The club with the bot serving it, over signed HTTP or Socket Mode; `seeded` with a team."""
    clock = SimulatedClock(SATURDAY_EVENING)
    ws = stand_in.new_workspace(clock.now)
    ws.follow(make_manifest())
    people, log, staff = make_people(ws)
    settings = Settings(
        api_url=ws.api_url, signing_secret=SecretStr(ws.signing_secret), rulebooks=rulebooks
    )
    installation = find_installation(make_client(ws.bot_token, ws.api_url))
    remember_workspace(store, installation, settings, clock.now())
    if seeded:
        seed(store, ws, people, log.id, staff.id)
    bot = make_bot(settings, installation, clock, store, fetch)
    with ExitStack() as running:
        if socket:
            running.enter_context(connected(ws, bot.app))
        else:
            url = running.enter_context(host.serving(make_http(bot.app, bot.health)))
            stand_in.deliver_to(ws, f"{url}/slack/events")
        yield Club(ws, clock, bot, store, people, log, staff)
        stand_in.close_workspace(ws)


@contextmanager
def connected(ws: Workspace, app: App, **options: Any) -> Iterator[SocketLine]:
    """Connect the bot's app by Socket Mode, as on Slack."""
    line = open_line(app, ws.app_token, **options)
    line.connect()
    try:
        yield line
    finally:
        line.hang_up(within=1.0)


@pytest.fixture
def club(stand_in: StandIn, app_host: AppHost, store: Store) -> Iterator[Club]:
    """The club over signed HTTP."""
    with club_at(stand_in, app_host, store) as running:
        yield running


@pytest.fixture(params=["http", "socket"])
def either(
    request: pytest.FixtureRequest, stand_in: StandIn, app_host: AppHost, store: Store
) -> Iterator[Club]:
    """The club over each transport."""
    with club_at(stand_in, app_host, store, socket=request.param == "socket") as running:
        yield running


@pytest.fixture
def socket_club(stand_in: StandIn, app_host: AppHost, store: Store) -> Iterator[Club]:
    """The club over Socket Mode."""
    with club_at(stand_in, app_host, store, socket=True) as running:
        yield running
