"""Buttons that somebody sees in a conversation, found by their label."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from bot.local.delivery import Delivery
from bot.local.errors import ScriptError
from bot.local.records import Channel, Ephemeral, Json, Message, Person, View
from bot.local.touch import elements_of
from bot.local.workspace import Workspace


@dataclass(frozen=True, slots=True)
class Button:
    """A button under a message, in a form or on a Home tab."""

    on: Message | Ephemeral | View
    action_id: str

    def press(self, ws: Workspace, person: Person) -> Delivery:
        """Let a person press it."""
        if isinstance(self.on, Ephemeral):
            return ws.press_ephemeral(person, self.on, self.action_id)
        if isinstance(self.on, View):
            return ws.press_in_view(person, self.on, self.action_id)
        return ws.press(person, self.on, self.action_id)


def find_button(ws: Workspace, person: Person, channel: Channel, label: str) -> Button:
    """The newest button of this label that a person sees, case aside: here, else elsewhere.

    A form in front of the person comes before all messages, the Home tab after them.

    Raises `ScriptError`, naming the buttons that there are.
    """
    there: dict[str, Button] = {}
    for on, blocks in _seen(ws, person, channel):
        for element in (one for block in blocks for one in elements_of(block)):
            if element["type"] == "button":
                name = str(element["text"]["text"])
                there.setdefault(name, Button(on, str(element["action_id"])))
    for name, button in there.items():
        if name.casefold() == label.casefold():
            return button
    if not there:
        raise ScriptError(f"{person.real_name} sees no buttons.")
    raise ScriptError(f"There is no button “{label}”; there is: {', '.join(there)}.")


def _seen(
    ws: Workspace, person: Person, channel: Channel
) -> Iterator[tuple[Message | Ephemeral | View, Iterable[Json]]]:
    for view in reversed(ws.open_views(person)):
        yield view, view.content["blocks"]
    for place in _places(ws, person, channel):
        for message in _newest_first(ws, person, place):
            yield message, message.blocks
    home = ws.home(person)
    if home is not None:
        yield home, home.content["blocks"]


def _places(ws: Workspace, person: Person, first: Channel) -> list[Channel]:
    everywhere = list(ws.state.channels.values())
    return [first, *(one for one in everywhere if person.id in one.members and one != first)]


def _newest_first(ws: Workspace, person: Person, channel: Channel) -> list[Message | Ephemeral]:
    mine = [one for one in ws.ephemerals(person) if one.channel == channel.id]
    everything: list[Message | Ephemeral] = [*ws.state.in_channel(channel.id), *mine]
    return sorted(everything, key=lambda one: one.ts, reverse=True)
