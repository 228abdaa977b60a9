"""By which token the bot works in a workspace: the one installed there, else its own."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from http.client import HTTPException

from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError
from sqlmodel import col, select

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
        asked = (
            select(Workspace.name, Workspace.bot_user_id, BotToken)
            .join(BotToken, isouter=True)
            .where(Workspace.id == workspace_id)
        )
        with self.store.reading() as session:
            row = session.exec(asked).first()
        if row is None or (row[2] is None and own is not None):
            return own
        name, bot_user_id, kept = row
        if kept is None:
            return Installation(workspace_id, name, bot_user_id, "", None)
        return Installation(workspace_id, name, kept.bot_user_id, kept.bot_id, kept.token)

    def open(self) -> dict[str, Opened]:
        """The workspaces that can be worked in now: they have a token, and are served."""
        asked = (
            select(Workspace.id, Workspace.opened_at, BotToken.token)
            .join(BotToken, isouter=True)
            .where(col(Workspace.stopped_at).is_(None))
        )
        with self.store.reading() as session:
            rows = session.exec(asked).all()
        found = {}
        for workspace_id, opened_at, token in rows:
            if token is not None:
                found[workspace_id] = Opened(self._client(token), opened_at)
            elif self._own and self._own.workspace_id == workspace_id and self._own.bot_token:
                found[workspace_id] = Opened(self._client(self._own.bot_token), None)
        return found

    def _client(self, token: str) -> WebClient:
        if token not in self._clients:
            self._clients = {token: make_client(token, self.api_url)}
        return self._clients[token]
