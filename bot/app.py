"""Puts the Bolt app together."""

import logging
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from http.client import HTTPException
from typing import Any

from slack_bolt import App, BoltRequest, BoltResponse
from slack_bolt.authorization import AuthorizeResult
from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError

from bot.listeners import actions, command, forms, home, leaving, messages, presses, unheard
from bot.listeners.desk import Desk
from bot.right_of_way import RightOfWay

#: Threads for listeners; Slack asks at most ten Socket Mode connections' worth at once.
LISTENERS = 10
#: Seconds to wait for Slack; a few calls must fit into the lease of an outbox row (60 s).
LONGEST_CALL = 10
#: Seconds to wait for a form to open: Slack waits three for the listener's answer.
LONGEST_OPENING = 2


class SlackAccessError(Exception):
    """Slack does not let us in; the message is one sentence for a person."""


@dataclass(frozen=True, slots=True)
class Installation:
    """The workspace that a bot token opens, as `auth.test` names it."""

    workspace_id: str
    workspace_name: str
    bot_user_id: str
    bot_id: str
    bot_token: str


def make_client(token: str, api_url: str) -> WebClient:
    """A Web API client that never repeats a call by itself: a repeated post is a second post."""
    return WebClient(token=token, base_url=api_url, retry_handlers=[], timeout=LONGEST_CALL)


def find_installation(client: WebClient) -> Installation:
    """Ask Slack whose token this is; `SlackAccessError` when it is nobody's or Slack is away."""
    try:
        answer = client.auth_test()
    except SlackApiError as problem:
        raise refused("SLACK_BOT_TOKEN", "xoxb-", problem) from problem
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


def refused(variable: str, prefix: str, problem: SlackApiError) -> SlackAccessError:
    """The sentence for a token that Slack does not accept."""
    return SlackAccessError(
        f"Slack does not accept {variable} ({problem.response.get('error')}): copy the token that "
        f"begins with {prefix} from your app's pages again."
    )


class FirstApp(App):
    """A Bolt app whose requests go before the work that can wait."""

    way: RightOfWay

    def dispatch(self, req: BoltRequest) -> BoltResponse:
        """Answer one request, whichever way it came."""
        with self.way.answering():
            return super().dispatch(req)


def make_app(
    installation: Installation,
    api_url: str,
    desk: Desk,
    signing_secret: str | None = None,
    way: RightOfWay | None = None,
) -> App:
    """The Bolt app of one workspace.

    Listeners run before the answer (`process_before_response`): one that raises gives no
    acknowledgement, and Slack sends the event again. The token is given by `authorize`, so
    that no request waits for `auth.test` and nothing in the environment can replace it.
    """

    def authorize(**_request: Any) -> AuthorizeResult:
        return AuthorizeResult(
            enterprise_id=None,
            team_id=installation.workspace_id,
            bot_token=installation.bot_token,
            bot_id=installation.bot_id,
            bot_user_id=installation.bot_user_id,
        )

    # Bolt warns of a token in the environment that it does not use; errors it may log.
    bolt_log = logging.getLogger("bot.bolt")
    bolt_log.setLevel(logging.ERROR)
    app = FirstApp(
        logger=bolt_log,
        client=WebClient(base_url=api_url, retry_handlers=[], timeout=LONGEST_OPENING),
        authorize=authorize,
        signing_secret=signing_secret or "",
        process_before_response=True,
        attaching_conversation_kwargs_enabled=False,
        listener_executor=ThreadPoolExecutor(LISTENERS, thread_name_prefix="listener"),
    )
    app.way = way or RightOfWay()
    register_listeners(app, desk)
    return app


def register_listeners(app: App, desk: Desk) -> None:
    """Let the app listen to all that the manifest asks for."""
    messages.register(app, desk)
    actions.register(app, desk)
    forms.register(app, desk)
    command.register(app, desk)
    home.register(app, desk)
    leaving.register(app, desk)
    presses.register(app, desk)
    unheard.register(app)
