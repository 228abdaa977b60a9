"""Pressing, choosing, commanding: what a person does to the app's buttons and commands."""

from functools import cached_property
from typing import Any

from bot.local import events
from bot.local.blockkit import check_message_blocks
from bot.local.delivery import Delivery, Outcome
from bot.local.errors import ApiError, ScriptError
from bot.local.interactions import Sender, action, slash_command, view_json
from bot.local.records import Channel, Ephemeral, Json, Message, Person, View
from bot.local.shapes import message_json
from bot.local.talk import Said, Talk
from bot.local.tickets import Tickets


class Touch(Talk):
    """Interactions with messages, with the Home tab and by command; modals are in `Forms`."""

    @cached_property
    def tickets(self) -> Tickets:
        """The trigger ids and response URLs that are out."""
        return Tickets(self.state.ids, self.state.stamps)

    def press(
        self, person: Person, on: Said | Message, action_id: str, chosen: Any = None
    ) -> Delivery:
        """Press a button of a message, or choose in one of its menus.

        Raises ScriptError when the person does not see the message or it has no such
        element.
        """
        message = self.message(on)
        channel = self.state.channel(message.channel)
        if person.id not in channel.members:
            raise ScriptError(f"{person.real_name} is not in {channel.name} and sees no message.")
        element, block_id = find_element(message.blocks, action_id)
        with self.changed:
            payload = self._sender(person).base("block_actions") | {
                "container": _container(message),
                "trigger_id": self.tickets.trigger(person.id),
                "channel": {"id": channel.id, "name": channel.name or "directmessage"},
                "message": message_json(self.state, message, self.installation.team_id),
                "state": {"values": {}},
                "response_url": self._response_url(
                    channel.id, person.id, message.ts, message.thread_ts
                ),
                "actions": [action(element, block_id, self.state.stamps.next(), chosen)],
            }
            return self.deliver("interactive", payload)

    def press_ephemeral(self, person: Person, on: Ephemeral, action_id: str) -> Delivery:
        """Press a button of a message that only this person sees."""
        element, block_id = find_element(on.blocks, action_id)
        channel = self.state.channel(on.channel)
        with self.changed:
            container = {
                "type": "message",
                "message_ts": on.ts,
                "channel_id": on.channel,
                "is_ephemeral": True,
            }
            payload = self._sender(person).base("block_actions") | {
                "container": container,
                "trigger_id": self.tickets.trigger(person.id),
                "channel": {"id": channel.id, "name": channel.name or "directmessage"},
                "state": {"values": {}},
                "response_url": self._response_url(channel.id, person.id, on.ts, on.thread_ts),
                "actions": [action(element, block_id, self.state.stamps.next(), None)],
            }
            return self.deliver("interactive", payload)

    def command(
        self, person: Person, channel: Channel | str, command: str, text: str = ""
    ) -> Delivery:
        """Call a slash command such as "/spin" in a channel."""
        where = self.state.channel(channel)
        if not command.startswith("/"):
            raise ScriptError(f"A command starts with a slash, {command!r} does not.")
        if self.features is not None:
            self.features.need(command in self.features.commands, f"command {command}")
        with self.changed:
            payload = slash_command(
                self._sender(person),
                where,
                command,
                text,
                self.tickets.trigger(person.id),
                self._response_url(where.id, person.id, None),
            )

            def answered(outcome: Outcome) -> None:
                self._answer_command(where, person, outcome)

            return self.deliver("slash_commands", payload, answered)

    def shortcut(self, person: Person, callback_id: str) -> Delivery:
        """Call a global shortcut."""
        self._need_shortcut("global", callback_id)
        with self.changed:
            payload = self._sender(person).base("shortcut") | {
                "callback_id": callback_id,
                "trigger_id": self.tickets.trigger(person.id),
                "action_ts": self.state.stamps.next(),
            }
            return self.deliver("interactive", payload)

    def message_shortcut(self, person: Person, on: Said | Message, callback_id: str) -> Delivery:
        """Call a shortcut from the menu of a message."""
        self._need_shortcut("message", callback_id)
        message = self.message(on)
        channel = self.state.channel(message.channel)
        with self.changed:
            payload = self._sender(person).base("message_action") | {
                "callback_id": callback_id,
                "trigger_id": self.tickets.trigger(person.id),
                "response_url": self._response_url(channel.id, person.id, message.ts),
                "message_ts": message.ts,
                "channel": {"id": channel.id, "name": channel.name or "directmessage"},
                "message": message_json(self.state, message, self.installation.team_id),
                "action_ts": self.state.stamps.next(),
            }
            return self.deliver("interactive", payload)

    def open_home(self, person: Person, tab: str = "home") -> list[Delivery]:
        """Open the app's Home tab (or its messages tab)."""
        if self.features is not None and tab == "home":
            self.features.need(self.features.home_tab, "Home tab")
        with self.changed:
            channel = self.state.direct("im", (person.id, self.bot.id))
            home = self.state.homes.get(person.id)
            shown = self.shown_view(home) if home is not None and tab == "home" else None
            stamp = self.state.stamps.next()
            event = events.home_opened(person.id, channel, tab, shown, stamp)
            return self.emit("app_home_opened", event)

    def shown_view(self, view: View) -> Json:
        """Return a view as the app gets to see it."""
        return view_json(view, self.installation.team_id, self.installation.app_id, self.bot.bot_id)

    def _need_shortcut(self, kind: str, callback_id: str) -> None:
        if self.features is not None:
            there = (kind, callback_id) in self.features.shortcuts
            self.features.need(there, f"{kind} shortcut {callback_id}")

    def _sender(self, person: Person) -> Sender:
        found = self.state.person(person)
        known = self.installation
        return Sender(known.team_id, self.domain, known.app_id, known.verification_token, found)

    def _response_url(
        self, channel: str, user: str, message_ts: str | None, thread_ts: str | None = None
    ) -> str:
        ticket = self.tickets.response(channel, user, message_ts, thread_ts)
        return f"{self.base_url}/response/{self.installation.team_id}/{ticket}"

    def _answer_command(self, channel: Channel, person: Person, outcome: Outcome) -> None:
        answer = outcome.json() or {"text": outcome.body}
        if not answer.get("text") and not answer.get("blocks"):
            return
        blocks = tuple(answer.get("blocks") or ())
        try:
            check_message_blocks(list(blocks))
        except ApiError as error:
            raise ScriptError(f"The app answered with wrong blocks: {error.answer()}") from error
        stamp = self.state.stamps.next()
        text = str(answer.get("text", ""))
        self.keep_ephemeral(Ephemeral(stamp, channel.id, person.id, text, blocks))


def find_element(blocks: tuple[Json, ...], action_id: str) -> tuple[Json, str]:
    """Return the element with this action id, and its block's id.

    Raises ScriptError when there is none; it lists what there is.
    """
    there: list[str] = []
    for block in blocks:
        for element in elements_of(block):
            there.append(str(element.get("action_id")))
            if element.get("action_id") == action_id:
                return element, str(block.get("block_id"))
    raise ScriptError(f"There is no {action_id} to press; there is: {', '.join(there) or 'none'}.")


def elements_of(block: Json) -> list[Json]:
    """Return the interactive elements of a block."""
    single = [block[name] for name in ("accessory", "element") if name in block]
    several = block.get("elements", []) if block.get("type") == "actions" else []
    return [e for e in [*single, *several] if "action_id" in e]


def _container(message: Message) -> Json:
    container: Json = {
        "type": "message",
        "message_ts": message.ts,
        "channel_id": message.channel,
        "is_ephemeral": False,
    }
    return container | ({"thread_ts": message.thread_ts} if message.is_reply else {})
