"""Slack's OAuth flow on our database: Bolt's steps, our states, token and pages.

Bolt's own parts would write the code to the log where the exchange fails, and keep a state that
two browsers could use at once.
"""

import logging
import re
from collections.abc import Callable, Sequence
from http.client import HTTPException
from typing import Any, Final
from urllib.parse import urlencode, urljoin

from slack_bolt import BoltRequest, BoltResponse
from slack_bolt.oauth import OAuthFlow
from slack_bolt.oauth.callback_options import CallbackOptions, FailureArgs, SuccessArgs
from slack_bolt.oauth.oauth_settings import OAuthSettings
from slack_sdk.errors import SlackApiError
from slack_sdk.oauth import AuthorizeUrlGenerator
from slack_sdk.oauth.installation_store import Installation, InstallationStore
from slack_sdk.oauth.state_store import OAuthStateStore
from sqlalchemy.exc import SQLAlchemyError

from bot.access import make_client
from bot.install.pages import HEADERS, html
from bot.listeners.desk import Desk
from bot.manifest import SCOPES
from bot.outbox import owe
from bot.settings import Settings
from bot.wording.install import BEGIN, BEGIN_AGAIN, Page, done, missing, problem
from core.installing import (
    STATE_HOLDS,
    OtherWorkspaceError,
    begin,
    begun,
    holds,
    install,
    use_up,
    workspace_here,
)
from core.model import BotToken, Workspace
from core.roster.first_steps import opened_home
from core.rulebooks import own_ids

log = logging.getLogger(__name__)

#: Slack's names of errors, such as access_denied; anything else in an address is not repeated.
_NAME: Final = re.compile(r"[a-z][a-z0-9_]{0,49}")
#: Installs that may be under way at once: a club installs the app once, a few people try.
MOST_BEGUN: Final = 100


class RefusedError(Exception):
    """The install goes no further; nothing was kept."""

    def __init__(self, reason: str, page: Page, status: int = 400) -> None:
        """Name the reason (it is logged), the page that tells it, and its HTTP status."""
        super().__init__(reason)
        self.page, self.status = page, status


class States(OAuthStateStore):
    """States in the database, each used once, by whichever process is asked.

    Anybody may open the pages, so that only few of those who do get to write: lines wait for
    whoever writes.
    """

    def __init__(self, desk: Desk) -> None:
        """Use the desk's database and clock."""
        self._desk = desk

    def issue(self, *_args: Any, **_kwargs: Any) -> str:
        """A new state; `RefusedError` while too many others are under way."""
        with self._desk.store.reading() as session:
            if begun(session, self._desk.clock.now()) >= MOST_BEGUN:
                raise RefusedError("too many begun", problem("too_many"), 503)
        with self._desk.store.writing() as session:
            return begin(session, self._desk.clock.now())

    def consume(self, state: str) -> bool:
        """Use a state up; false when it was, or is too old."""
        with self._desk.store.reading() as session:
            if not holds(session, state, self._desk.clock.now()):
                return False
        with self._desk.store.writing() as session:
            return use_up(session, state, self._desk.clock.now())


class InstallFlow(OAuthFlow):
    """`GET /slack/install` and `GET /slack/oauth_redirect`, as Bolt goes through them."""

    def __init__(self, settings: OAuthSettings, api_url: str, desk: Desk, books: list[str]) -> None:
        """`books` are the ids of the rule books in the club's own folder."""
        settings.callback_options = CallbackOptions(success=self._succeeded, failure=self._failed)
        super().__init__(client=make_client(None, api_url), logger=log, settings=settings)
        self._desk, self._books = desk, books

    def install_page(self, request: BoltRequest) -> BoltResponse:
        """The page that leads to Slack."""
        return self._answer(self.handle_installation, request)

    def redirect_page(self, request: BoltRequest) -> BoltResponse:
        """The page that Slack leads back to: it installs, or says why not."""
        return self._answer(self.handle_callback, request)

    def _answer(
        self, step: Callable[[BoltRequest], BoltResponse], request: BoltRequest
    ) -> BoltResponse:
        try:
            answer = step(request)
        except RefusedError as refused:
            log.warning("install: %s", refused)
            return self._page(refused.page, refused.status, "install")
        except SQLAlchemyError as fault:
            log.error("install: %s", type(fault).__name__)  # its text has an address, or more
            return self._page(problem("database"), 503, "install")
        answer.headers |= {name.lower(): [value] for name, value in HEADERS.items()}
        return answer

    def build_authorize_url(self, state: str, _request: BoltRequest) -> str:
        """Slack's page, with the workspace chosen already where there can be only one."""
        generator = self.settings.authorize_url_generator
        return generator.generate(state=state, team=self._workspace_here())

    def build_install_page_html(self, url: str, _request: BoltRequest) -> str:
        """Our page instead of Bolt's."""
        return html(BEGIN_AGAIN if self._workspace_here() else BEGIN, url)

    def run_installation(self, code: str) -> Installation:
        """Exchange the code for the token; `RefusedError` when that is no install for us."""
        try:
            given = self.client.oauth_v2_access(
                code=code,
                client_id=self.settings.client_id,
                client_secret=self.settings.client_secret,
                redirect_uri=self.settings.redirect_uri,
            )
            if given.get("is_enterprise_install") or not given.get("team"):
                raise RefusedError("organization", problem("organization"))
            if given.get("refresh_token"):
                raise RefusedError("rotation", problem("rotation"))
            lacking = sorted({*SCOPES} - {*str(given.get("scope") or "").split(",")})
            if lacking:
                raise RefusedError(f"without {','.join(lacking)}", missing(lacking))
            bot = self.client.auth_test(token=given["access_token"])
        except SlackApiError as fault:
            reason = _reason(fault)
            status = 502 if reason == "no_answer" else 400
            raise RefusedError(reason, problem(reason), status) from None
        except (OSError, HTTPException) as fault:
            raise RefusedError(type(fault).__name__, problem("no_answer"), 502) from None
        return Installation(
            app_id=given.get("app_id"),
            team_id=given["team"]["id"],
            team_name=given["team"].get("name"),
            bot_token=given["access_token"],
            bot_id=bot.get("bot_id"),
            bot_user_id=given.get("bot_user_id"),
            bot_scopes=given["scope"],
            user_id=given["authed_user"]["id"],
        )

    def store_installation(self, _request: BoltRequest, installation: Installation) -> None:
        """Keep the token, serve the workspace, and owe the installer his first steps."""
        now = self._desk.clock.now()
        workspace_id, installer = str(installation.team_id), str(installation.user_id)
        workspace = Workspace(
            id=workspace_id,
            name=installation.team_name or "",
            bot_user_id=installation.bot_user_id or "",
            own_books=self._books,
        )
        token = BotToken(
            workspace_id=workspace_id,
            token=installation.bot_token or "",
            bot_id=installation.bot_id or "",
            bot_user_id=installation.bot_user_id or "",
            app_id=installation.app_id or "",
            scopes=",".join(installation.bot_scopes or ()),
            installed_by=installer,
            installed_at=now,
        )
        try:
            with self._desk.store.writing() as session:
                install(session, workspace, token, now)
                # The installer has come as far as whoever opens Home for the first time.
                owe(session, workspace_id, opened_home(session, workspace_id, installer, now))
        except OtherWorkspaceError:
            reason = f"workspace {workspace_id}: another one is here"
            raise RefusedError(reason, problem("other_workspace"), 409) from None
        log.warning("workspace %s: installed by %s", workspace_id, installer)
        self._desk.committed()

    def _succeeded(self, args: SuccessArgs) -> BoltResponse:
        """The last page; it leads into Slack."""
        kept = args.installation
        asked = urlencode({"app": kept.app_id or "", "team": kept.team_id or ""})
        return self._page(
            done(kept.team_name or ""), 200, f"https://slack.com/app_redirect?{asked}"
        )

    def _failed(self, args: FailureArgs) -> BoltResponse:
        """What Bolt found wrong, or what Slack sent back instead of a code."""
        reason = _named(args.reason)
        log.warning("install: %s", reason)
        return self._page(problem(reason), args.suggested_status_code, "install")

    def _page(self, page: Page, status: int, address: str) -> BoltResponse:
        forget = self.settings.state_utils.build_set_cookie_for_deletion()
        headers: dict[str, str | Sequence[str]] = {**HEADERS, "Set-Cookie": forget}
        return BoltResponse(status=status, body=html(page, address), headers=headers)

    def _workspace_here(self) -> str | None:
        with self._desk.store.reading() as session:
            return workspace_here(session)


def make_flow(settings: Settings, desk: Desk) -> InstallFlow | None:
    """The flow; none where the app's client id and secret are not given."""
    if settings.client_id is None or settings.client_secret is None:
        return None
    oauth = OAuthSettings(
        client_id=settings.client_id,
        client_secret=settings.client_secret.get_secret_value(),
        scopes=SCOPES,
        user_scopes=(),
        installation_store=InstallationStore(),  # never asked: `store_installation` keeps it
        state_store=States(desk),
        state_expiration_seconds=int(STATE_HOLDS.total_seconds()),
    )
    # Slack goes back to the redirect URL of the app's settings; none is named here.
    oauth.redirect_uri = None
    oauth.authorize_url_generator = AuthorizeUrlGenerator(
        client_id=oauth.client_id,
        scopes=SCOPES,
        authorization_url=urljoin(f"{settings.api_url.rstrip('/')}/", "../oauth/v2/authorize"),
    )
    return InstallFlow(oauth, settings.api_url, desk, [*own_ids(settings.rulebooks)])


def _reason(fault: SlackApiError) -> str:
    """Slack's name of the error; "no_answer" for a page that is none of the Web API's."""
    data = fault.response.data
    answered = isinstance(data, dict) and fault.response.status_code < 500
    return _named(data.get("error")) if answered else "no_answer"


def _named(reason: object) -> str:
    """Slack's name of an error, or "unknown": what stands in an address may be anybody's words."""
    text = str(reason)
    return text if _NAME.fullmatch(text) else "unknown"
