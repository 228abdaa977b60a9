"""A bot that was started without a token: installed while it runs, and found again."""

import os
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from sqlmodel import select

from bot.local.server import StandIn
from core.model import BotToken, Outing, Workspace
from core.store import Store
from tests.support.browser import Browser, Site, query, site_at
from tests.support.process import Process
from tests.support.workspace import AppHost

GAME = "62p 11cb 4.1ip vs Summit no pain"


@pytest.fixture
def any_site(stand_in: StandIn, app_host: AppHost, any_store: Store) -> Iterator[Site]:
    with site_at(stand_in, app_host, any_store) as running:
        yield running


@contextmanager
def started(site: Site, stand_in: StandIn, **more: str) -> Iterator[tuple[Process, str]]:
    """`python -m bot` with all that an install needs; gives its address."""
    kept = {k: v for k, v in os.environ.items() if not k.startswith(("SLACK_", "SPINKEEPER_"))}  # noqa: TID251 - handed on to a child process
    process = Process(
        kept
        | {
            "SLACK_CLIENT_ID": site.ws.client_id,
            "SLACK_CLIENT_SECRET": site.ws.client_secret,
            "SLACK_SIGNING_SECRET": site.ws.signing_secret,
            "SLACK_API_URL": site.ws.api_url,
            "SPINKEEPER_DATABASE_URL": site.store.engine.url.render_as_string(hide_password=False),
            "SPINKEEPER_PORT": "0",
        }
        | more
    )
    try:
        port = process.said(r"running on http://[^:]+:(\d+)")
        base = f"http://127.0.0.1:{port}"
        stand_in.deliver_to(site.ws, f"{base}/slack/events")
        yield process, base
    finally:
        process.kill()


def hears(site: Site, who: str, words: str) -> bool:
    """Wait until the bot has written this to somebody."""
    with site.ws.changed:
        return site.ws.changed.wait_for(lambda: any(words in one for one in site.heard(who)), 20)


def reacts(site: Site, text: str) -> bool:
    """Let somebody type a line, and wait until the bot has shown that it was read."""
    said = site.ws.say(site.people["mateo"], site.log, text)
    with site.ws.changed:
        return site.ws.changed.wait_for(lambda: site.reaction(said) == ["baseball"], 20)


def test_installed_while_it_runs_it_works_at_once_and_after_a_start(
    any_site: Site, stand_in: StandIn
) -> None:
    site = any_site
    with started(site, stand_in) as (_process, base):
        assert site.install(browser=Browser(base)).heading == "Spinkeeper is installed"
        assert hears(site, "ada", "Welcome to Spinkeeper")
        site.seed()
        assert reacts(site, GAME)

    with started(site, stand_in):
        assert reacts(site, "bullpen 20 pitches")


def test_neither_code_nor_state_nor_token_is_in_what_a_process_says(
    any_site: Site, stand_in: StandIn
) -> None:
    site = any_site
    with started(site, stand_in) as (process, base):
        browser = Browser(base)
        back = site.ws.approve(site.people["ada"], browser.to_slack())
        browser.get(back)
        browser.get(back)
        process.terminate()
        process.wait(10)
        said = process.rest()

    assert "install: invalid_browser" in said
    secrets = [*query(back).values(), site.ws.bot_token, site.ws.client_secret]
    assert [one for one in secrets if one in said] == []


def test_a_token_in_the_environment_is_used_where_nothing_is_installed(
    any_site: Site, stand_in: StandIn
) -> None:
    site = any_site
    own = site.ws.reinstall()
    with started(site, stand_in, SLACK_BOT_TOKEN=own):
        site.seed()
        assert reacts(site, GAME)

    with site.store.reading() as session:
        assert session.get(BotToken, site.ws.team_id) is None
        assert session.get_one(Workspace, site.ws.team_id).stopped_at is None


def test_what_is_installed_wins_over_a_token_in_the_environment(
    any_site: Site, stand_in: StandIn
) -> None:
    site = any_site
    site.install()
    site.seed()

    with started(site, stand_in, SLACK_BOT_TOKEN="xoxb-of-before"):
        assert reacts(site, GAME)


def test_a_dead_token_in_the_environment_keeps_nobody_from_installing(
    any_site: Site, stand_in: StandIn
) -> None:
    site = any_site
    with started(site, stand_in, SLACK_BOT_TOKEN="xoxb-dead") as (_process, base):
        assert site.install(browser=Browser(base)).heading == "Spinkeeper is installed"
        assert hears(site, "ada", "Welcome to Spinkeeper")


def test_while_slack_is_away_an_installed_bot_starts_and_keeps_lines(
    any_site: Site, stand_in: StandIn
) -> None:
    site = any_site
    site.install()
    site.seed()

    with started(site, stand_in, SLACK_API_URL="http://127.0.0.1:9/api/") as (_process, base):
        assert '"installed":true' in Browser(base).get("/healthz").text
        said = site.ws.say(site.people["mateo"], site.log, GAME)
        assert said.delivery.wait(20).status == 200

    with site.store.reading() as session:
        assert len(session.exec(select(Outing)).all()) == 1


def test_an_installed_token_that_slack_does_not_accept_any_more_waits_for_a_new_one(
    any_site: Site, stand_in: StandIn
) -> None:
    site = any_site
    site.install()
    site.ws.subscriptions -= {"tokens_revoked", "app_uninstalled"}  # Slack does not get through
    site.ws.uninstall()

    with started(site, stand_in) as (_process, base):
        assert '"installed":false' in Browser(base).get("/healthz").text
        site.install(browser=Browser(base))
        assert '"installed":true' in Browser(base).get("/healthz").text
