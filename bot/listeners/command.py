"""The slash command and the shortcuts: answered at once, or recorded like a line to the bot."""

from typing import Any

from slack_bolt import Ack, App, BoltContext
from slack_sdk import WebClient

from bot.command import Keeps, Opens, Says, keep, understand
from bot.forms import FORMS, fix_line
from bot.forms.form import Carried, notice_view
from bot.listeners.actions import TOO_LATE, tell
from bot.listeners.desk import Desk, presser
from bot.listeners.events import storable, unescape
from bot.listeners.forms import open_view
from bot.manifest import COMMAND, FIX_SHORTCUT, LOG_SHORTCUT
from bot.wording import command as say
from bot.wording.first_steps import SET_UP_FIRST
from bot.wording.forms import MAY_NOT
from core.ledger.by_hand import ByHandError, Hand


def register(app: App, desk: Desk) -> None:
    """Listen to the command and to the shortcuts."""

    @app.command(COMMAND)
    def called(ack: Ack, body: dict[str, Any], context: BoltContext, client: WebClient) -> None:
        workspace_id, person = str(context.team_id), str(body["user_id"])
        text = unescape(storable(str(body.get("text") or "")))
        try:
            done = desk.look(workspace_id, person, lambda hand: understand(hand, text))
        except ByHandError:
            ack(text=say.STRANGER if desk.has_team(workspace_id) else SET_UP_FIRST)
            return
        match done:
            case Says(answer):
                ack(text=answer)
            case Opens(view):
                opened = open_view(client, body, view)
                ack() if opened else ack(text=say.TOO_LATE)
            case Keeps(line):
                trigger = str(body["trigger_id"])
                desk.by_hand(workspace_id, person, lambda hand: keep(hand, trigger, line))
                ack(text=say.RECORDED)

    @app.shortcut(LOG_SHORTCUT)
    def log(ack: Ack, body: dict[str, Any], context: BoltContext, client: WebClient) -> None:
        ack()
        show(body, context, client, "outing", {})

    @app.shortcut(FIX_SHORTCUT)
    def fix(ack: Ack, body: dict[str, Any], context: BoltContext, client: WebClient) -> None:
        ack()
        carried = {"channel": body["channel"]["id"], "ts": body["message"]["ts"]}
        show(body, context, client, fix_line.NAME, carried)

    def show(
        body: dict[str, Any], context: BoltContext, client: WebClient, name: str, carried: Carried
    ) -> None:
        if not open_view(client, body, _view(desk, body, context, name, carried)):
            tell(desk, str(context.team_id), body, TOO_LATE)


def _view(
    desk: Desk, body: dict[str, Any], context: BoltContext, name: str, carried: Carried
) -> dict[str, Any]:
    """The view of a form; for somebody who may not, one that says so."""

    def see(hand: Hand) -> dict[str, Any] | None:
        return FORMS[name].view(hand, carried)

    try:
        view = desk.look(str(context.team_id), presser(body), see)
    except ByHandError:
        return notice_view(say.STRANGER)
    return view or notice_view(MAY_NOT[name])
