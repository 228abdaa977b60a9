"""How many calls of the Web API pass from a press to what whoever pressed sees of it.

A form that is sent needs none: it closes, changes or complains by the answer to its sending.
"""

from dataclasses import dataclass
from itertools import zip_longest
from typing import Any

import pytest

from bot.local.calls import Call
from bot.local.delivery import Delivery
from bot.local.records import Message, Person
from bot.local.workspace import Workspace

#: "Button to visible answer at most two Web API calls."
MOST = 2
OPENS = frozenset({"views.open", "views.push"})
SPEAKS = frozenset({"chat.postMessage", "chat.update"})
#: Calls of errands: those ask Slack in a thread of their own, and no message waits for them.
BESIDE = frozenset({"users.list", "users.info", "conversations.list", "conversations.info"})


@dataclass(frozen=True)
class Press:
    """A button that was pressed, with the number of calls made before it."""

    ws: Workspace
    person: Person
    what: str
    #: The conversations in which the answer is seen.
    seen_in: frozenset[str]
    before: int

    def calls(self, until: int | None) -> list[Call]:
        """The calls since, to those before the next press."""
        made = self.ws.calls.all()[self.before : until]
        return [call for call in made if call.method not in BESIDE]

    def is_seen(self, call: Call) -> bool:
        """Whether the call shows something to whoever pressed."""
        if call.method in OPENS:
            return True
        if call.method == "views.publish":
            return call.args.get("user_id") == self.person.id
        return call.method in SPEAKS and call.args.get("channel") in self.seen_in


class Watch:
    """Remembers every press of every workspace of a test."""

    def __init__(self) -> None:
        self.presses: list[Press] = []

    def begin(self, patch: pytest.MonkeyPatch) -> None:
        """Watch from now on."""
        press, in_view = Workspace.press, Workspace.press_in_view

        def pressed(
            ws: Workspace, person: Person, on: Any, action_id: str, chosen: Any = None
        ) -> Delivery:
            self._note(ws, person, action_id, ws.message(on))
            return press(ws, person, on, action_id, chosen)

        def pressed_in_view(
            ws: Workspace, person: Person, view: Any, action_id: str, chosen: Any = None
        ) -> Delivery:
            self._note(ws, person, action_id, None)
            return in_view(ws, person, view, action_id, chosen)

        patch.setattr(Workspace, "press", pressed)
        patch.setattr(Workspace, "press_in_view", pressed_in_view)

    def _note(self, ws: Workspace, person: Person, what: str, on: Message | None) -> None:
        seen_in = {person.id, ws.dm(person).id, *([on.channel] if on is not None else [])}
        self.presses.append(Press(ws, person, what, frozenset(seen_in), len(ws.calls.all())))

    def slow(self) -> list[str]:
        """The presses that took more calls to be answered than they may."""
        found = []
        for press, then in zip_longest(self.presses, self.presses[1:]):
            calls = press.calls(then.before if then is not None else None)
            number = next((n for n, call in enumerate(calls, 1) if press.is_seen(call)), 0)
            if number > MOST:
                methods = ", ".join(call.method for call in calls[:number])
                found.append(f"{press.what}: {number} calls ({methods})")
        return found
