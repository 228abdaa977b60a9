"""By which token the bot works in a workspace: the one installed there, else its own."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from http.client import HTTPException

from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError
from sqlalchemy import bindparam
from sqlalchemy import select as sa_select
from sqlmodel import col

from core.model import BotToken, Workspace
from core.store import Store

#: Seconds to wait for Slack; a few calls must fit into the lease of an outbox row (60 s).
LONGEST_CALL = 10


class SlackAccessError(Exception):
    """Slack does not let us in; the message is one sentence for a person."""


class TokenRefusedError(SlackAccessError):
    """Slack answers, and does not accept the token."""


@dataclass(frozen=True, slots=True)
class Installation:
    """The bot in a workspace, as `auth.test` names it; without a token when it was taken away."""

    workspace_id: str
    workspace_name: str
    bot_user_id: str
    bot_id: str
    bot_token: str | None = field(repr=False)


@dataclass(frozen=True, slots=True)
class Opened:
    """A workspace that can be worked in."""

    client: WebClient
    #: The opening of the workspace that this token belongs to (UTC); none for the process' own
    #: token, of which other processes know nothing.
    at: datetime | None


_WITH_TOKENS = sa_select(
    col(Workspace.id),
    col(Workspace.name),
    col(Workspace.bot_user_id),
    col(Workspace.opened_at),
    col(BotToken.token),
    col(BotToken.bot_id),
).join_from(Workspace, BotToken, isouter=True)
_ONE = _WITH_TOKENS.where(col(Workspace.id) == bindparam("id"))
_SERVED = _WITH_TOKENS.where(col(Workspace.stopped_at).is_(None))

#: The workspaces that can be worked in now, by id.
Open = Callable[[], Mapping[str, Opened]]


def make_client(token: str | None, api_url: str) -> WebClient:
    """A Web API client that never repeats a call by itself: a repeated post is a second post."""
    return WebClient(token=token, base_url=api_url, retry_handlers=[], timeout=LONGEST_CALL)


def find_installation(client: WebClient, named: str = "SLACK_BOT_TOKEN") -> Installation:
    """Ask Slack whose token this is.

    Raises `TokenRefusedError` when it is nobody's, `SlackAccessError` when Slack is away; the
    sentence calls the token what `named` says.
    """
    try:
        answer = client.auth_test()
    except SlackApiError as problem:
        raise refused(named, "xoxb-", problem) from problem
    except (OSError, HTTPException) as problem:
        raise SlackAccessError(
            f"Slack cannot be reached ({type(problem).__name__}): check the network and "
            "SLACK_API_URL, then start again."
        ) from problem
    return Installation(
        workspace_id=str(answer["team_id"]),
        workspace_name=str(answer.get("team") or ""),
        bot_user_id=str(answer["user_id"]),
        bot_id=str(answer.get("bot_id") or ""),
        bot_token=str(client.token),
    )


def refused(variable: str, prefix: str, problem: SlackApiError) -> TokenRefusedError:
    """The sentence for a token that Slack does not accept."""
    return TokenRefusedError(
        f"Slack does not accept {variable} ({problem.response.get('error')}): copy the token that "
        f"begins with {prefix} from your app's pages again."
    )


class Access:
    """Looks the token up in the database each time, so that no process works with an old one."""

    def __init__(self, store: Store, api_url: str, own: Installation | None) -> None:
        """`own` is what the token in the environment opens: used where nothing is installed."""
        self.store, self.api_url, self._own = store, api_url, own
        self._clients: dict[str, WebClient] = {}

    def find(self, workspace_id: str) -> Installation | None:
        """The bot in a workspace; none for one that nothing is known of."""
        own = self._own if self._own and self._own.workspace_id == workspace_id else None
        with self.store.engine.connect() as connection:  # each line waits for it
            row = connection.execute(_ONE, {"id": workspace_id}).first()
        if row is None or (row.token is None and own is not None):
            return own
        return Installation(
            workspace_id, row.name, row.bot_user_id, str(row.bot_id or ""), row.token
        )

    def open(self) -> dict[str, Opened]:
        """The workspaces that can be worked in now: they have a token, and are served."""
        with self.store.engine.connect() as connection:
            rows = connection.execute(_SERVED).all()
        found = {}
        for row in rows:
            if row.token is not None:
                found[row.id] = Opened(self._client(row.token), row.opened_at)
            elif self._own and self._own.workspace_id == row.id and self._own.bot_token:
                found[row.id] = Opened(self._client(self._own.bot_token), None)
        return found

    def _client(self, token: str) -> WebClient:
        known = self._clients.get(token)
        if known is None:
            known = make_client(token, self.api_url)
            self._clients = {token: known}  # one workspace: a token of before is of no use
        return known
