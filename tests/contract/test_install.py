"""Installing by OAuth (docs.slack.dev, "Installing with OAuth"): from nothing to a first line."""

import json
import logging
from collections.abc import Iterator
from datetime import timedelta
from html import unescape
from http.client import HTTPConnection
from typing import Any
from urllib.parse import urlsplit

import pytest
from sqlmodel import select

from bot.install.flow import MOST_BEGUN
from bot.local.faults import Dropped, HttpError
from bot.local.server import StandIn
from bot.manifest import SCOPES
from bot.run import make_bot
from core.model import BotToken, InstallState, Line, Outing, Team, Workspace
from core.store import Store
from tests.support.browser import Browser, Site, query, serving, settings_of, site_at
from tests.support.club import Club, no_network
from tests.support.taps import answer_to, tap
from tests.support.workspace import AppHost

GAME = "62p 11cb 4.1ip vs Summit no pain"
EXCHANGE = "oauth.v2.access"


@pytest.fixture
def site(stand_in: StandIn, app_host: AppHost, store: Store) -> Iterator[Site]:
    with site_at(stand_in, app_host, store) as running:
        yield running


@pytest.fixture
def any_site(stand_in: StandIn, app_host: AppHost, any_store: Store) -> Iterator[Site]:
    with site_at(stand_in, app_host, any_store) as running:
        yield running


def token(site: Site) -> str | None:
    with site.store.reading() as session:
        kept = session.get(BotToken, site.ws.team_id)
    return kept.token if kept is not None else None


def nothing_kept(site: Site) -> bool:
    with site.store.reading() as session:
        return not [*session.exec(select(BotToken)), *session.exec(select(Workspace))]


def health(site: Site) -> dict[str, Any]:
    answer: dict[str, Any] = json.loads(Browser(site.base).get("/healthz").text)
    return answer


def test_from_nothing_to_the_first_counted_line(any_site: Site) -> None:
    site = any_site
    assert site.install().heading == "Spinkeeper is installed"
    site.settle()
    assert "Welcome to Spinkeeper" in answer_to(site, "ada").text

    log = site.ws.add_channel("log", [site.people["ada"], site.people["joan"]])
    staff = site.ws.add_channel("coaches", [site.people["ada"]], private=True)
    tap(site, "ada", answer_to(site, "ada"), "Set up the team")
    site.ws.submit(
        site.people["ada"], {"name": "Herons", "log_channel": log.id, "staff_channel": staff.id}
    )
    site.settle()
    tap(site, "ada", answer_to(site, "ada"), "Add a pitcher")
    rio = {"name": "Rio Vale", "birth_date": "2014-07-01", "guardians": [site.people["joan"].id]}
    site.ws.submit(site.people["ada"], rio)
    site.settle()
    tap(site, "joan", answer_to(site, "joan"), "I agree")
    said = site.say("ada", "Rio 30 pitches 3 cb vs Summit today", log)

    assert site.reaction(said) == ["baseball"]
    with site.store.reading() as session:
        assert session.exec(select(Outing.pitches)).all() == [30]


def test_before_and_after_the_health_page_says_so(site: Site) -> None:
    assert (health(site)["installed"], health(site)["database"]) == (False, True)

    site.install()

    assert health(site)["installed"] is True


def test_what_is_kept_is_what_slack_gave(site: Site) -> None:
    site.install()

    with site.store.reading() as session:
        kept = session.exec(select(BotToken)).one()
    assert (kept.token, kept.installed_by) == (site.ws.bot_token, site.people["ada"].id)
    assert (kept.bot_user_id, kept.bot_id) == (site.ws.bot.id, site.ws.bot.bot_id)
    assert set(kept.scopes.split(",")) == set(SCOPES)
    assert site.ws.bot_token not in repr(kept)


def test_the_page_that_leads_to_slack_asks_for_the_scopes_of_the_manifest(site: Site) -> None:
    page = Browser(site.base).get("/slack/install")
    asked = query(page.link)

    assert page.link.startswith(f"{stand_in_base(site)}/oauth/v2/authorize?")
    assert set(asked["scope"].split(",")) == set(SCOPES)
    assert asked["client_id"] == site.ws.client_id
    assert "user_scope" not in asked
    assert "redirect_uri" not in asked  # Slack takes the one of the app's settings
    assert "team" not in asked


def stand_in_base(site: Site) -> str:
    return site.ws.api_url.removesuffix("/api/")


def test_installed_once_the_page_leads_to_that_workspace(site: Site) -> None:
    site.install()

    page = Browser(site.base).get("/slack/install")

    assert query(page.link)["team"] == site.ws.team_id
    assert "new token" in page.text


def test_the_state_is_new_each_time_and_long(site: Site) -> None:
    states = {query(Browser(site.base).to_slack())["state"] for _ in range(5)}

    assert len(states) == 5
    assert min(map(len, states)) >= 43  # 32 random bytes


def test_the_cookie_is_for_this_browser_over_https_alone_and_for_ten_minutes(site: Site) -> None:
    cookie = Browser(site.base).get("/slack/install").headers["set-cookie"]

    asked = {"secure", "httponly", "samesite=lax", "max-age=600"}
    assert asked <= set(cookie.lower().split("; "))


@pytest.mark.parametrize("path", ["/slack/install", "/slack/oauth_redirect?error=access_denied"])
def test_the_pages_load_nothing_and_are_kept_by_nobody(site: Site, path: str) -> None:
    page = Browser(site.base).get(path)

    assert page.headers["content-type"] == "text/html; charset=utf-8"
    assert page.headers["content-security-policy"].startswith("default-src 'none'; ")
    assert "frame-ancestors 'none'" in page.headers["content-security-policy"]
    assert page.headers["x-content-type-options"] == "nosniff"
    assert page.headers["referrer-policy"] == "no-referrer"
    assert page.headers["cache-control"] == "no-store"
    assert 'name="viewport"' in page.text
    assert "<script" not in page.text


def test_who_does_not_allow_it_is_told_that_nothing_was_kept(site: Site) -> None:
    browser = Browser(site.base)

    page = browser.get(site.ws.decline(browser.to_slack()))

    assert "You did not allow it at Slack. Nothing was kept." in page.text
    assert page.link == "install"
    assert nothing_kept(site)


def refused(site: Site, browser: Browser, address: str, status: int, words: str) -> None:
    page = browser.get(address)

    assert page.status == status
    assert words in unescape(page.text)
    assert "Nothing was kept." in page.text
    assert nothing_kept(site)


def test_another_browser_cannot_end_what_one_began(site: Site) -> None:
    browser = Browser(site.base)
    back = site.ws.approve(site.people["ada"], browser.to_slack())

    refused(site, Browser(site.base), back, 400, "did not begin the install")
    assert "installed" in browser.get(back).heading


def test_without_a_state_it_does_not_go_on(site: Site) -> None:
    browser = Browser(site.base)
    back = site.ws.approve(site.people["ada"], browser.to_slack())

    refused(site, browser, back.partition("&state=")[0], 400, "did not begin the install")


def test_after_ten_minutes_it_does_not_go_on(site: Site) -> None:
    browser = Browser(site.base)
    back = site.ws.approve(site.people["ada"], browser.to_slack())

    site.clock.advance(timedelta(minutes=10))

    refused(site, browser, back, 401, "more than ten minutes old")


def test_a_state_is_used_once_also_by_two_processes(any_site: Site, app_host: AppHost) -> None:
    site, browser = any_site, Browser(any_site.base)
    back = site.ws.approve(site.people["ada"], browser.to_slack())
    cookies = dict(browser.cookies)

    with second_process(site, app_host) as (base, _bot):
        first = browser.get(back)
        again = Browser(base, cookies).get(back)

    assert (first.status, again.status) == (200, 401)
    assert "was used already" in again.text
    assert token(site) == site.ws.bot_token


def test_states_that_are_over_are_not_kept(site: Site) -> None:
    Browser(site.base).to_slack()
    site.clock.advance(timedelta(minutes=11))
    Browser(site.base).to_slack()

    with site.store.reading() as session:
        assert len(session.exec(select(InstallState)).all()) == 1


def test_whoever_opens_the_page_without_end_does_not_write_without_end(site: Site) -> None:
    for _ in range(MOST_BEGUN):
        Browser(site.base).to_slack()

    refused(site, Browser(site.base), "/slack/install", 503, "Too many installs were begun")
    site.clock.advance(timedelta(minutes=11))
    assert site.install().heading == "Spinkeeper is installed"


def test_a_code_that_was_used_is_refused(site: Site) -> None:
    browser = Browser(site.base)
    back = site.ws.approve(site.people["ada"], browser.to_slack())
    site.ws.grants[query(back)["code"]].used = True

    refused(site, browser, back, 400, "Slack's code was used already")


def test_a_code_that_slack_does_not_know_is_refused(site: Site) -> None:
    browser = Browser(site.base)
    back = site.ws.approve(site.people["ada"], browser.to_slack())

    refused(site, browser, back.replace("code=", "code=x"), 400, "does not accept its code")


def test_without_a_code_it_does_not_go_on(site: Site) -> None:
    browser = Browser(site.base)
    state = query(browser.to_slack())["state"]

    refused(site, browser, f"/slack/oauth_redirect?state={state}", 401, "without its code")


def test_a_wrong_redirect_url_is_named(site: Site) -> None:
    browser = Browser(site.base)
    elsewhere = "&redirect_uri=https%3A%2F%2Fbot.example.org%2Fslack%2Foauth_redirect%2F"
    back = site.ws.approve(site.people["ada"], browser.to_slack() + elsewhere)

    address = back.replace("oauth_redirect/", "oauth_redirect")
    refused(site, browser, address, 400, "redirect URL in the app's settings")


def test_an_install_for_a_whole_organization_is_refused(site: Site) -> None:
    browser = Browser(site.base)
    ada = site.people["ada"]
    back = site.ws.approve(ada, browser.to_slack(), whole_organization=True)

    refused(site, browser, back, 400, "for a whole organization")


def test_a_token_that_would_end_within_hours_is_refused(site: Site) -> None:
    browser, site.ws.rotates = Browser(site.base), True
    back = site.ws.approve(site.people["ada"], browser.to_slack())

    refused(site, browser, back, 400, "have token rotation on")


def test_without_a_database_the_pages_say_that_nothing_was_done(
    site: Site, app_host: AppHost
) -> None:
    nowhere = Store("sqlite:////nowhere/at/all.sqlite3")
    bot = make_bot(site.settings, None, site.clock, nowhere, no_network)
    with serving(app_host, bot) as base:
        browser = Browser(base)
        begun = Browser(site.base)
        browser.cookies = begun.cookies
        back = site.ws.approve(site.people["ada"], begun.to_slack())

        for path in (back, "/slack/install"):
            page = browser.get(path)
            assert page.status == 503
            assert "The database could not be reached" in page.text


def test_less_than_the_bot_needs_is_refused_and_what_is_missing_is_named(site: Site) -> None:
    browser = Browser(site.base)
    asked = browser.to_slack().replace("chat%3Awrite%2C", "").replace("chat:write,", "")
    back = site.ws.approve(site.people["ada"], asked)

    refused(site, browser, back, 400, "did not grant all that Spinkeeper needs: chat:write.")


def test_words_that_somebody_puts_into_the_address_are_not_shown(site: Site) -> None:
    page = Browser(site.base).get("/slack/oauth_redirect?error=%3Cb%3Ecall+555-0100%3C/b%3E")

    assert "555" not in page.text
    assert "Slack refused the install (unknown)" in page.text


def test_a_wrong_secret_is_named(site: Site, app_host: AppHost) -> None:
    settings = site.settings.model_copy(update={"client_id": "another"})
    bot = make_bot(settings, None, site.clock, site.store, no_network)
    with serving(app_host, bot) as base:
        browser = Browser(base)
        asked = browser.to_slack().replace("another", site.ws.client_id)
        back = site.ws.approve(site.people["ada"], asked)

        refused(site, browser, back, 400, "client id and secret")


def test_slack_away_after_the_code_keeps_nothing(site: Site) -> None:
    for fault in (HttpError(503), Dropped()):
        site.ws.faults.order("auth.test", fault)
        page = site.install()
        assert (page.status, page.heading) == (502, "Slack did not answer")
        assert "Nothing was kept." in page.text
        assert nothing_kept(site)

    assert site.install().heading == "Spinkeeper is installed"


def test_a_second_workspace_is_refused_and_the_first_is_served_as_before(
    any_site: Site, stand_in: StandIn
) -> None:
    site = any_site
    site.install()
    site.seed()
    second = stand_in.new_workspace(site.clock.now, same_app_as=site.ws)
    second.follow({"oauth_config": {"redirect_urls": ["https://bot.example.org/"]}})
    nico = second.add_person("Nico Bell")
    browser = Browser(site.base)

    page = browser.get(
        second.approve(nico, browser.to_slack()).replace(".org/?", ".org/slack/oauth_redirect?")
    )

    assert page.status == 409
    assert "serves another workspace" in page.text
    assert "SPINKEEPER_DATABASE_URL" in page.text
    with site.store.reading() as session:
        assert session.exec(select(BotToken.workspace_id)).all() == [site.ws.team_id]
    assert site.reaction(site.say("mateo", GAME)) == ["baseball"]


def test_what_an_uninstalled_workspace_sends_is_acknowledged_and_not_kept(site: Site) -> None:
    event = {"type": "message", "user": "U1", "text": GAME, "ts": "1.1", "channel": "C1"}
    site.ws.installed = True  # Slack thinks so, as in a workspace that was refused

    delivery = site.ws.deliver("events_api", site.ws.event_callback(event))
    called = site.ws.command(site.people["ada"], site.log, "/spinkeeper", "help")
    site.ws.settle()

    assert delivery.status == "acknowledged"
    assert called.outcome is not None
    assert "not installed in this workspace" in called.outcome.body
    assert nothing_kept(site)


def test_the_handshake_is_answered_before_anybody_installs(site: Site) -> None:
    body = json.dumps({"type": "url_verification", "challenge": "abc123"}).encode()
    target: Any = site.ws.courier.target

    outcome = target.post(body, {"Content-Type": "application/json"} | target.signed(body))

    assert (outcome.status, "abc123" in outcome.body) == (200, True)


def test_taken_away_and_installed_again_it_has_another_token_and_the_same_record(
    any_site: Site,
) -> None:
    site = any_site
    site.install()
    site.seed()
    site.say("mateo", GAME)
    before = token(site)
    site.ws.uninstall()
    site.ws.settle()
    assert token(site) is None
    assert health(site)["installed"] is False
    site.clock.advance(timedelta(days=13))

    site.install()
    site.bot.tick(site.clock.now())
    site.bot.daily.run(site.clock.advance(timedelta(days=30)))
    said = site.say("mateo", "bullpen 20 pitches")

    assert token(site) not in {before, None}
    assert site.reaction(said) == ["baseball"]
    with site.store.reading() as session:
        assert len(session.exec(select(Outing)).all()) == 2
        assert session.exec(select(Team.name)).all() == ["Herons"]


def test_what_slack_says_late_of_the_install_before_leaves_the_new_token(site: Site) -> None:
    site.install()
    site.ws.courier.hold()
    late = site.ws.uninstall()
    site.clock.advance(timedelta(hours=1))
    site.install()

    site.ws.courier.release(late)
    site.ws.settle()

    assert token(site) == site.ws.bot_token


def test_a_token_that_is_found_dead_stops_sends_until_it_is_installed_again(site: Site) -> None:
    site.install()
    site.seed()
    site.settle()
    site.ws.subscriptions -= {"tokens_revoked", "app_uninstalled"}  # Slack does not get through
    said = site.ws.say(site.people["mateo"], site.log, GAME)
    site.ws.settle()
    site.ws.uninstall()
    site.bot.tick(site.clock.now())
    dead = len(site.ws.calls.all())
    site.bot.tick(site.clock.advance(timedelta(minutes=5)))
    assert len(site.ws.calls.all()) == dead
    assert health(site)["installed"] is False

    site.install()
    site.bot.tick(site.clock.now())
    site.settle()

    assert site.reaction(said) == ["baseball"]


class second_process:  # noqa: N801 - used like a function
    """A second bot on the same database, with a connection of its own; gives its address."""

    def __init__(self, site: Site, host: AppHost) -> None:
        url = site.store.engine.url.render_as_string(hide_password=False)
        self._store = Store(url)
        self.bot = make_bot(settings_of(site.ws), None, site.clock, self._store, no_network)
        self._served = serving(host, self.bot)

    def __enter__(self) -> tuple[str, Any]:
        return self._served.__enter__(), self.bot

    def __exit__(self, *error: Any) -> None:
        self._served.__exit__(*error)
        self._store.close()


def test_what_one_process_installs_the_other_works_with_at_once(
    any_site: Site, app_host: AppHost, stand_in: StandIn
) -> None:
    site = any_site
    with second_process(site, app_host) as (base, other):
        other.tick(site.clock.now())
        site.install()  # the first process
        site.seed()
        stand_in.deliver_to(site.ws, f"{base}/slack/events")
        said = site.ws.say(site.people["mateo"], site.log, GAME)
        site.ws.settle()
        other.tick(site.clock.advance(timedelta(minutes=1)))
        assert site.reaction(said) == ["baseball"]

        site.ws.uninstall()
        site.ws.settle()
        calls = len(site.ws.calls.all())
        site.bot.tick(site.clock.advance(timedelta(minutes=1)))
        assert len(site.ws.calls.all()) == calls

        site.install(browser=Browser(base))  # now the second one
        again = site.ws.say(site.people["mateo"], site.log, "bullpen 20 pitches")
        site.ws.settle()
        site.bot.tick(site.clock.advance(timedelta(minutes=1)))
        assert site.reaction(again) == ["baseball"]


def test_no_code_state_or_token_is_logged(site: Site, caplog: pytest.LogCaptureFixture) -> None:
    caplog.set_level(logging.INFO)
    browser = Browser(site.base)
    back = site.ws.approve(site.people["ada"], browser.to_slack())
    browser.get(back)
    browser.get(back)
    site.ws.grants[query(back)["code"]].used = True
    site.install()
    bad = site.ws.approve(site.people["ada"], browser.to_slack())
    browser.get(bad.replace("code=", "code=x"))

    secrets = [*query(back).values(), *query(bad).values(), site.ws.bot_token]
    # The server of the tests logs addresses as soon as a test looks at logs; ours does not.
    said = [one.getMessage() for one in caplog.records if one.name != "uvicorn.access"]
    assert [one for one in secrets if one in " ".join(said)] == []
    assert "install: invalid_code" in said


def test_without_its_client_id_the_pages_are_not_there(site: Site, app_host: AppHost) -> None:
    settings = site.settings.model_copy(update={"client_id": None, "client_secret": None})
    bot = make_bot(settings, None, site.clock, site.store, no_network)

    with serving(app_host, bot) as base:
        connection = HTTPConnection(urlsplit(base).hostname or "", urlsplit(base).port)
        connection.request("GET", f"{urlsplit(base).path}/slack/install")
        assert connection.getresponse().status == 404
        connection.close()


def test_what_another_workspace_of_the_app_sends_is_acknowledged_and_not_kept(
    either: Club, stand_in: StandIn
) -> None:
    second = stand_in.new_workspace(either.clock.now, same_app_as=either.ws)
    target = either.ws.courier.target
    if target is not None:
        second.deliver_by(target)
    nico = second.add_person("Nico Bell")

    said = second.say(nico, second.add_channel("log", [nico]), GAME)
    second.settle()
    either.settle()

    assert said.delivery.status == "acknowledged"
    assert second.reactions_of_bot(said) == []
    with either.store.reading() as session:
        assert session.exec(select(Line)).all() == []
