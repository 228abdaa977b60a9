"""Puts the Bolt app together."""

import logging
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import Any, Final

from slack_bolt import App, BoltContext, BoltRequest, BoltResponse
from slack_bolt.authorization import AuthorizeResult
from slack_sdk import WebClient

from bot.access import Access, Installation
from bot.listeners import actions, command, forms, home, leaving, messages, presses, unheard
from bot.listeners.desk import Desk
from bot.right_of_way import RightOfWay
from bot.wording.install import NOT_INSTALLED

#: Threads for listeners; Slack asks at most ten Socket Mode connections' worth at once.
LISTENERS = 10
#: Seconds to wait for a form to open: Slack waits three for the listener's answer.
LONGEST_OPENING = 2
#: Where a request keeps which installation it is for.
_FOUND: Final = "installation"


class FirstApp(App):
    """A Bolt app whose requests go before the work that can wait."""

    way: RightOfWay

    def dispatch(self, req: BoltRequest) -> BoltResponse:
        """Answer one request, whichever way it came."""
        with self.way.answering():
            return super().dispatch(req)


def make_app(
    access: Access,
    desk: Desk,
    signing_secret: str | None = None,
    way: RightOfWay | None = None,
) -> App:
    """The Bolt app.

    Listeners run before the answer (`process_before_response`): one that raises gives no
    acknowledgement, and Slack sends the event again. The token is given by `authorize`, so
    that no request waits for `auth.test` and nothing in the environment can replace it.
    """

    def admit(
        body: dict[str, Any],
        context: BoltContext,
        next: Callable[[], None],  # noqa: A002 - Bolt's name
    ) -> BoltResponse | None:
        if body.get("type") != "url_verification":
            if context.team_id is None:
                return BoltResponse(status=404)  # of no workspace, so no payload of Slack's
            found = access.find(context.team_id)
            if found is None:
                # With 200, for Slack would send anything else again and again; shown to whoever
                # called the command.
                return BoltResponse(status=200, body=NOT_INSTALLED if "command" in body else "")
            context[_FOUND] = found
        next()
        return None

    def authorize(context: BoltContext, **_request: Any) -> Any:
        found: Installation | None = context.get(_FOUND)
        if found is None:
            return None
        return AuthorizeResult(
            enterprise_id=None,
            team_id=found.workspace_id,
            bot_token=found.bot_token,
            bot_id=found.bot_id,
            bot_user_id=found.bot_user_id,
        )

    # Bolt warns of a token in the environment that it does not use; errors it may log.
    bolt_log = logging.getLogger("bot.bolt")
    bolt_log.setLevel(logging.ERROR)
    app = FirstApp(
        logger=bolt_log,
        client=WebClient(base_url=access.api_url, retry_handlers=[], timeout=LONGEST_OPENING),
        before_authorize=admit,
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
