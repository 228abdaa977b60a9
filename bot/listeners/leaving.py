"""The app is taken away, or somebody's account is closed: Slack's events of an ending."""

from datetime import UTC, datetime
from typing import Any

from slack_bolt import App, BoltContext

from bot.listeners.desk import Desk
from core.leaving import account_closed, account_open, take_away


def register(app: App, desk: Desk) -> None:
    """Listen to endings; they come in any order, late and twice."""

    @app.event("app_uninstalled")
    def uninstalled(body: dict[str, Any], context: BoltContext) -> None:
        _take_away(desk, body, context)

    @app.event("tokens_revoked")
    def revoked(event: dict[str, Any], body: dict[str, Any], context: BoltContext) -> None:
        # A person's own token may be revoked too, which leaves the bot where it is.
        if (event.get("tokens") or {}).get("bot"):
            _take_away(desk, body, context)

    @app.event("user_change")
    def changed(event: dict[str, Any], context: BoltContext) -> None:
        workspace_id, user = str(context.team_id), event["user"]
        with desk.store.writing() as session:
            if user.get("deleted"):
                account_closed(session, workspace_id, str(user["id"]))
            else:
                account_open(session, workspace_id, [str(user["id"])])


def _take_away(desk: Desk, body: dict[str, Any], context: BoltContext) -> None:
    # Slack gives whole seconds: it was said before the next one.
    said_at = datetime.fromtimestamp(int(body["event_time"]) + 1, UTC)
    with desk.store.writing() as session:
        take_away(session, str(context.team_id), said_at, desk.clock.now())
