"""Forms: opened by a button, saved in one transaction; `bot.forms` says what each one is."""

import json
import re
from http.client import HTTPException
from typing import Any

from slack_bolt import Ack, App, BoltContext
from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError

from bot.forms import FORMS
from bot.forms.form import Carried, Filled, Form, FormError, Next, notice_view, opens
from bot.listeners.actions import TOO_LATE, carried_by, tell
from bot.listeners.desk import Desk, presser
from bot.wording.buttons import FORM_ERRORS
from bot.wording.forms import MAY_NOT
from core.ledger.by_hand import ByHandError

_NAMES = "|".join(map(re.escape, FORMS))


def register(app: App, desk: Desk) -> None:
    """Listen to whatever opens a form, and to every form that is sent."""

    @app.action(re.compile(rf"^{re.escape(opens(''))}({_NAMES})\."))
    def opened(ack: Ack, body: dict[str, Any], context: BoltContext, client: WebClient) -> None:
        name = body["actions"][0]["action_id"].split(".")[1]
        view = view_for(desk, body, context, name, carried_by(body))
        ack()
        if not open_view(client, body, view or notice_view(MAY_NOT.get(name, MAY_NOT[""]))):
            tell(desk, str(context.team_id), body, TOO_LATE)

    @app.view(re.compile(rf"^({_NAMES})$"))
    def submitted(
        ack: Ack, body: dict[str, Any], view: dict[str, Any], context: BoltContext
    ) -> None:
        form = FORMS[view["callback_id"]]
        carried = json.loads(view["private_metadata"] or "{}")
        filled = Filled(view["id"], carried, view["state"]["values"])
        try:
            desk.by_hand(str(context.team_id), presser(body), lambda hand: form.save(hand, filled))
        except Next as then:
            ack(response_action="update", view=then.view)
        except FormError as wrong:
            ack(response_action="errors", errors=wrong.errors)
        except ByHandError as refused:
            block = _block(form, refused.field, filled)
            error = "day" if refused.field == "on" else refused.refusal
            ack(response_action="errors", errors={block: FORM_ERRORS[error]})
        else:
            ack()


def _block(form: Form, field: str, filled: Filled) -> str:
    """The input at which the refusal of a field is shown: one that this view really has."""
    block = form.blocks.get(field, field)
    return block if block in filled.values else form.blocks.get("", next(iter(filled.values)))


def open_view(client: WebClient, body: dict[str, Any], view: dict[str, Any]) -> bool:
    """Open a view for whoever acted; False where the trigger ran out, or Slack did not answer.

    From a button in a form it is put on top of that form.
    A trigger lives three seconds, so this one call cannot wait for the outbox.
    """
    try:
        if (body.get("view") or {}).get("type") == "modal":
            client.views_push(trigger_id=body["trigger_id"], view=view)
        else:
            client.views_open(trigger_id=body["trigger_id"], view=view)
    except SlackApiError as problem:
        if "trigger" not in str(problem.response.get("error")):
            raise
        return False
    except (OSError, HTTPException):
        return False
    return True


def view_for(
    desk: Desk, body: dict[str, Any], context: BoltContext, name: str, carried: Carried
) -> dict[str, Any] | None:
    """The view of a form for whoever asks for it; none for somebody who may not open it."""
    try:
        return desk.look(
            str(context.team_id), presser(body), lambda hand: FORMS[name].view(hand, carried)
        )
    except ByHandError:
        return None
