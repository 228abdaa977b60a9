"""Buttons that act at once: `bot.presses` says what each one does."""

import re
from typing import Any

from slack_bolt import Ack, App, BoltContext

from bot.listeners.actions import carried_by
from bot.listeners.actions import press as press_button
from bot.listeners.desk import Desk
from bot.presses import PRESSES
from bot.presses.press import presses

_NAMES = "|".join(map(re.escape, PRESSES))


def register(app: App, desk: Desk) -> None:
    """Listen to every press; a refusal is told to whoever pressed, and changes nothing."""

    @app.action(re.compile(rf"^{re.escape(presses(''))}({_NAMES})\."))
    def pressed(ack: Ack, body: dict[str, Any], context: BoltContext) -> None:
        press = PRESSES[body["actions"][0]["action_id"].split(".")[1]]
        carried = carried_by(body)
        press_button(desk, body, context, lambda hand: press.work(hand, carried))
        ack()
