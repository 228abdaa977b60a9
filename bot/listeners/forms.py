"""The form that puts an outing right: opened by "fix", saved in one transaction."""

import json
import re
from collections.abc import Mapping
from datetime import date
from typing import Any

from slack_bolt import Ack, App, BoltContext
from slack_sdk import WebClient

from bot.blocks.buttons import FIX
from bot.blocks.form import CALLBACK, FormError, outing_form, values_of
from bot.listeners.actions import carried_by
from bot.listeners.desk import Desk, presser
from bot.wording.buttons import FORM_ERRORS
from core.ledger.by_hand import ByHandError, put_right, see_outing
from core.model import Outing


def register(app: App, desk: Desk) -> None:
    """Listen to "fix" and to the form that it opens."""

    @app.action(re.compile(rf"^{FIX}\."))
    def opened(ack: Ack, body: dict[str, Any], context: BoltContext, client: WebClient) -> None:
        outing = _outing(desk, body, context)
        ack()
        if outing is not None:
            # A trigger lives three seconds, so this one call cannot wait for the outbox.
            client.views_open(trigger_id=body["trigger_id"], view=outing_form(outing))

    @app.view(CALLBACK)
    def submitted(
        ack: Ack, body: dict[str, Any], view: dict[str, Any], context: BoltContext
    ) -> None:
        outing_id = int(json.loads(view["private_metadata"])["outing"])
        try:
            fields = values_of(view["state"]["values"])
            _save(desk, body, context, outing_id, fields)
        except FormError as wrong:
            ack(response_action="errors", errors={wrong.block: FORM_ERRORS[wrong.error]})
        except ByHandError as refused:
            block = _block(refused.field)
            error = "day" if refused.field == "on" else refused.refusal
            ack(response_action="errors", errors={block: FORM_ERRORS[error]})
        else:
            ack()


def _outing(desk: Desk, body: dict[str, Any], context: BoltContext) -> Outing | None:
    outing_id = int(carried_by(body)["outing"])
    with desk.store.reading() as session:
        return see_outing(session, str(context.team_id), presser(body), outing_id)


def _save(
    desk: Desk,
    body: dict[str, Any],
    context: BoltContext,
    outing_id: int,
    fields: Mapping[str, int | str | date | None],
) -> None:
    desk.by_hand(
        str(context.team_id), presser(body), lambda hand: put_right(hand, outing_id, fields)
    )


def _block(field: str) -> str:
    """The block that shows an error: the field's own, else the first."""
    return {"outs": "innings", "": "kind"}.get(field, field)
