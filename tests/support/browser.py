"""Somebody's browser at the pages of installing, and a bot that nobody has installed yet."""

import html
import re
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.client import HTTPConnection
from urllib.parse import parse_qs, urlsplit

from pydantic import SecretStr

from bot.clock import SimulatedClock
from bot.http import make_http
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from bot.manifest import make_manifest
from bot.run import Bot, make_bot
from bot.settings import Settings
from core.store import Store
from tests.support.club import SATURDAY_EVENING, Club, make_people, no_network, seed
from tests.support.workspace import AppHost

#: Where the app's manifest says that the bot is; the browser goes to the loopback address.
PUBLIC = "https://bot.example.org"


@dataclass(frozen=True)
class Answer:
    """A page as the browser got it."""

    status: int
    text: str
    headers: dict[str, str]

    @property
    def link(self) -> str:
        """Where its one link leads."""
        (found,) = re.findall(r'<a href="([^"]*)"', self.text)
        return html.unescape(found)

    @property
    def heading(self) -> str:
        """Its heading."""
        (found,) = re.findall(r"<h1>([^<]*)</h1>", self.text)
        return html.unescape(found)


@dataclass
class Browser:
    """Keeps the cookies that it gets, and sends them along; `base` is the bot's address."""

    base: str
    cookies: dict[str, str] = field(default_factory=dict)

    def get(self, address: str) -> Answer:
        """Go to a page of the bot, by its path or its public address."""
        target = urlsplit(self.base + address.removeprefix(PUBLIC))
        connection = HTTPConnection(target.hostname or "", target.port, timeout=20)
        kept = "; ".join(f"{name}={value}" for name, value in self.cookies.items())
        path = f"{target.path}?{target.query}" if target.query else target.path
        connection.request("GET", path, headers={"Cookie": kept} if kept else {})
        response = connection.getresponse()
        headers = {name.lower(): value for name, value in response.getheaders()}
        answer = Answer(response.status, response.read().decode(), headers)
        connection.close()
        self._keep(headers.get("set-cookie", ""))
        return answer

    def to_slack(self) -> str:
        """Open the page that leads to Slack; gives where it leads."""
        return self.get("/slack/install").link

    def _keep(self, cookie: str) -> None:
        name, _, value = cookie.partition(";")[0].partition("=")
        if value == "deleted":
            self.cookies.pop(name, None)
        elif value:
            self.cookies[name] = value


@dataclass
class Site(Club):
    """A club whose bot serves the pages of installing at `base`."""

    base: str
    settings: Settings

    def seed(self) -> None:
        """Put the club into the database; Ada has a row as soon as she is welcomed."""
        people = {who: one for who, one in self.people.items() if who != "ada"}
        seed(self.store, self.ws, people, self.log.id, self.staff.id)

    def install(self, who: str = "ada", browser: Browser | None = None) -> Answer:
        """Let somebody install the app; gives the last page."""
        by = browser or Browser(self.base)
        return by.get(self.ws.approve(self.people[who], by.to_slack()))


def settings_of(ws: Workspace) -> Settings:
    """An environment with no bot token, and all that an install needs."""
    return Settings(
        api_url=ws.api_url,
        signing_secret=SecretStr(ws.signing_secret),
        client_id=ws.client_id,
        client_secret=SecretStr(ws.client_secret),
    )


@contextmanager
def site_at(stand_in: StandIn, host: AppHost, store: Store) -> Iterator[Site]:
    """A workspace without the app, and the bot waiting for somebody to install it."""
    clock = SimulatedClock(SATURDAY_EVENING)
    ws = stand_in.new_workspace(clock.now)
    ws.follow(make_manifest(PUBLIC))
    ws.not_yet_installed()
    people, log, staff = make_people(ws)
    people["ada"] = ws.add_person("Ada Owner", is_owner=True, tz="America/Denver")
    settings = settings_of(ws)
    bot = make_bot(settings, None, clock, store, no_network)
    with serving(host, bot) as base:
        stand_in.deliver_to(ws, f"{base}/slack/events")
        yield Site(ws, clock, bot, store, people, log, staff, base, settings)
        stand_in.close_workspace(ws)


@contextmanager
def serving(host: AppHost, bot: Bot) -> Iterator[str]:
    """Serve a bot's pages; gives its address."""
    with host.serving(make_http(bot.app, bot.health, bot.flow)) as base:
        yield base


def query(address: str) -> dict[str, str]:
    """What is asked in an address."""
    return {name: values[0] for name, values in parse_qs(urlsplit(address).query).items()}
