"""What is there to see in a workspace."""

from bot.local.emoji import STANDARD
from bot.local.errors import ScriptError
from bot.local.records import Channel, Ephemeral, Message, Person, Reaction
from bot.local.stage import Stage
from bot.local.talk import Said


class Reading(Stage):
    """Questions about the contents; every answer is a snapshot."""

    emoji: frozenset[str] = STANDARD

    def messages(self, channel: Channel | str) -> list[Message]:
        """Return what stands in a channel outside threads, oldest first."""
        where = self.state.channel(channel)
        everything = self.state.in_channel(where.id)
        return [m for m in everything if not m.is_reply or m.subtype == "thread_broadcast"]

    def replies(self, channel: Channel | str, below: Said | Message | str) -> list[Message]:
        """Return the thread below a message, without that message."""
        where = self.state.channel(channel)
        ts = below if isinstance(below, str) else below.ts
        return [m for m in self.state.in_channel(where.id) if m.is_reply and m.thread_ts == ts]

    def dm_messages(self, person: Person) -> list[Message]:
        """Return the direct conversation of a person and the app, oldest first."""
        channel = self.state.conversation_of("im", (person.id, self.bot.id))
        return [] if channel is None else self.state.in_channel(channel.id)

    def bot_messages(self, channel: Channel | str | None = None) -> list[Message]:
        """Return what the app posted, in a channel or everywhere, replies too."""
        where = list(self.state.channels) if channel is None else [self.state.channel(channel).id]
        everything = [m for c in where for m in self.state.in_channel(c)]
        return sorted((m for m in everything if m.user == self.bot.id), key=lambda m: m.ts)

    def find(self, said: Said | Message) -> Message | None:
        """Return a message as it stands now, None if it is gone."""
        return self.state.find_message(said.channel, said.ts)

    def reactions(self, said: Said | Message) -> tuple[Reaction, ...]:
        """Return the reactions under a message."""
        found = self.find(said)
        return () if found is None else found.reactions

    def reactions_of_bot(self, said: Said | Message) -> list[str]:
        """Return the names of the emoji that the app put under a message."""
        return [r.name for r in self.reactions(said) if self.bot.id in r.users]

    def ephemerals(self, person: Person) -> list[Ephemeral]:
        """Return the messages that only this person saw, oldest first."""
        with self.changed:
            return [e for e in self.state.ephemerals if e.user == person.id]

    def add_emoji(self, name: str) -> None:
        """Add a custom emoji to the workspace."""
        if not name.replace("_", "").replace("-", "").isalnum() or name != name.lower():
            raise ScriptError(f"{name!r} is no emoji name: lower-case letters, digits, _ and -.")
        self.emoji = self.emoji | {name}
