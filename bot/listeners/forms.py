"""Forms: opened by a button, saved in one transaction; `bot.forms` says what each one is."""

import json
import re
from typing import Any

from slack_bolt import Ack, App, BoltContext
from slack_sdk import WebClient

from bot.forms import FORMS
from bot.forms.form import Carried, Filled, FormError, opens
from bot.listeners.actions import carried_by
from bot.listeners.desk import Desk, presser
from bot.wording.buttons import FORM_ERRORS
from core.ledger.by_hand import ByHandError

_NAMES = "|".join(map(re.escape, FORMS))


def register(app: App, desk: Desk) -> None:
    """Listen to whatever opens a form, and to every form that is sent."""

    @app.action(re.compile(rf"^{re.escape(opens(''))}({_NAMES})\."))
    def opened(ack: Ack, body: dict[str, Any], context: BoltContext, client: WebClient) -> None:
        name = body["actions"][0]["action_id"].split(".")[1]
        view = view_for(desk, body, context, name, carried_by(body))
        ack()
        if view is not None:
            # A trigger lives three seconds, so this one call cannot wait for the outbox.
            client.views_open(trigger_id=body["trigger_id"], view=view)

    @app.view(re.compile(rf"^({_NAMES})$"))
    def submitted(
        ack: Ack, body: dict[str, Any], view: dict[str, Any], context: BoltContext
    ) -> None:
        form = FORMS[view["callback_id"]]
        carried = json.loads(view["private_metadata"] or "{}")
        filled = Filled(view["id"], carried, view["state"]["values"])
        try:
            desk.by_hand(str(context.team_id), presser(body), lambda hand: form.save(hand, filled))
        except FormError as wrong:
            ack(response_action="errors", errors={wrong.block: wrong.error})
        except ByHandError as refused:
            block = form.blocks.get(refused.field, refused.field)
            error = "day" if refused.field == "on" else refused.refusal
            ack(response_action="errors", errors={block: FORM_ERRORS[error]})
        else:
            ack()


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
