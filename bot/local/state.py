"""The contents of one workspace, without any delivery: who is there and what was said.

Everything is guarded by one re-entrant lock, `State.changed`, which is also the
condition that is notified after each change.
"""

import threading
from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import datetime

from bot.local.errors import ScriptError
from bot.local.records import Channel, Ephemeral, Kind, Message, Person, View
from bot.local.stamps import Ids, Stamps

PREFIXES: dict[Kind, str] = {"public": "C", "private": "C", "im": "D", "mpim": "G"}


class State:
    """People, channels, messages, views; a lookup that finds nothing returns None."""

    def __init__(self, number: int, now: Callable[[], datetime]) -> None:
        self.now = now
        self.stamps = Stamps(now)
        self.ids = Ids(number)
        self.changed = threading.Condition(threading.RLock())
        self.people: dict[str, Person] = {}
        self.channels: dict[str, Channel] = {}
        self.ephemerals: list[Ephemeral] = []
        self.views: dict[str, View] = {}
        self.homes: dict[str, View] = {}
        self._messages: dict[str, dict[str, Message]] = {}

    def keep_person(self, person: Person) -> Person:
        """Store a person, new or changed."""
        with self.changed:
            self.people[person.id] = person
            self.changed.notify_all()
        return person

    def keep_channel(self, channel: Channel) -> Channel:
        """Store a channel, new or changed."""
        with self.changed:
            self.channels[channel.id] = channel
            self.changed.notify_all()
        return channel

    def keep_message(self, message: Message) -> Message:
        """Store a message, new or changed."""
        with self.changed:
            self._messages.setdefault(message.channel, {})[message.ts] = message
            self.changed.notify_all()
        return message

    def drop_message(self, message: Message) -> None:
        """Remove a message for good."""
        with self.changed:
            del self._messages[message.channel][message.ts]
            self.changed.notify_all()

    def open_channel(
        self, kind: Kind, members: Iterable[str], name: str = "", channel_id: str | None = None
    ) -> Channel:
        """Make a new conversation, under an id of its own unless one is given."""
        with self.changed:
            new_id = channel_id or self.ids.next(PREFIXES[kind])
            created = self.stamps.seconds()
            return self.keep_channel(Channel(new_id, name, kind, created, tuple(members)))

    def conversation_of(self, kind: Kind, members: Iterable[str]) -> Channel | None:
        """Return the direct conversation of exactly these people."""
        wanted = frozenset(members)
        with self.changed:
            same = (c for c in self.channels.values() if c.kind == kind)
            return next((c for c in same if frozenset(c.members) == wanted), None)

    def direct(self, kind: Kind, members: Iterable[str]) -> Channel:
        """Return the direct conversation of these people, opening it the first time."""
        people = tuple(dict.fromkeys(members))
        with self.changed:
            return self.conversation_of(kind, people) or self.open_channel(kind, people)

    def find_message(self, channel: str, ts: str) -> Message | None:
        """Return one message."""
        with self.changed:
            return self._messages.get(channel, {}).get(ts)

    def in_channel(self, channel: str) -> list[Message]:
        """Return all messages of a channel, replies too, oldest first."""
        with self.changed:
            # Stamps only grow, so the order of storing is the order of posting.
            return list(self._messages.get(channel, {}).values())

    def replies_to(self, message: Message) -> list[Message]:
        """Return the replies that hang on a message, oldest first."""
        below = self.in_channel(message.channel)
        return [m for m in below if m.is_reply and m.thread_ts == message.ts]

    def person(self, who: Person | str) -> Person:
        """Return a person as they stand now; raises ScriptError for a stranger."""
        key = who if isinstance(who, str) else who.id
        with self.changed:
            if key not in self.people:
                raise ScriptError(f"There is no person {key} in this workspace: add_person first.")
            return self.people[key]

    def channel(self, which: Channel | str) -> Channel:
        """Return a channel as it stands now, by itself, id or name; raises ScriptError."""
        key = which if isinstance(which, str) else which.id
        with self.changed:
            named = (c for c in self.channels.values() if c.name and c.name == key.lstrip("#"))
            found = self.channels.get(key) or next(named, None)
        if found is None:
            raise ScriptError(f"There is no channel {key} in this workspace: add_channel first.")
        return found

    def change_members(self, channel: Channel, members: Iterable[str]) -> Channel:
        """Set who is in a channel."""
        return self.keep_channel(replace(self.channel(channel), members=tuple(members)))
