"""Saying, correcting, taking back and reacting: the same for people and for the app.

Each act changes the workspace and sends the events that Slack sends for it.
"""

from dataclasses import dataclass, replace
from typing import Any

from bot.local import events
from bot.local.delivery import Delivery
from bot.local.errors import ScriptError
from bot.local.files import file_json
from bot.local.happenings import EphemeralNews, MessageNews, ReactionNews
from bot.local.records import Channel, Edited, Ephemeral, Json, Message, Person, Reaction
from bot.local.shapes import message_json
from bot.local.stage import Stage
from bot.local.subscriptions import MESSAGE_EVENTS
from bot.local.typed import message_text, rich_text


@dataclass(frozen=True, slots=True)
class Said:
    """A message that somebody sent, and the deliveries that it caused (maybe none)."""

    channel: str
    ts: str
    user: str
    deliveries: tuple[Delivery, ...] = ()

    @property
    def delivery(self) -> Delivery:
        """The first delivery; raises ScriptError when the app was sent nothing."""
        if not self.deliveries:
            raise ScriptError("The app was sent no event: is it in the channel, and subscribed?")
        return self.deliveries[0]


class Talk(Stage):
    """Acts on messages."""

    def say(
        self,
        person: Person,
        channel: Channel | str,
        text: str,
        *,
        under: Said | Message | str | None = None,
        literal: bool = False,
        broadcast: bool = False,
    ) -> Said:
        """Let a person type a message, in the thread `under` another one if that is given.

        With `literal`, even `<@U…>` and `<!here>` are typed characters; `broadcast` sends a
        reply to the channel too. Raises ScriptError when the person cannot post there.
        """
        where = self._may_post(person, channel)
        thread = self._thread_of(where, under)
        draft = self._typed(person, where, text, literal=literal)
        subtype = "thread_broadcast" if broadcast and thread is not None else None
        return self.post(replace(draft, thread_ts=thread, subtype=subtype))

    def say_as_webhook(self, app: Person, channel: Channel | str, text: str) -> Said:
        """Let another app post the classic way: `bot_message`, with a bot id and no user."""
        draft = self._typed(app, self._may_post(app, channel), text, literal=False)
        return self.post(
            replace(draft, subtype="bot_message", user=None, app_id=None, username=app.real_name)
        )

    def photo(self, person: Person, channel: Channel | str, caption: str = "") -> Said:
        """Let a person post a picture; an empty caption gives a message with empty text."""
        where = self._may_post(person, channel)
        draft = self._typed(person, where, caption, literal=False)
        picture = self._file(person, "image.png", b"", 48213)
        blocks = draft.blocks if caption else ()
        return self.post(replace(draft, subtype="file_share", files=(picture,), blocks=blocks))

    def drop_file(
        self, person: Person, channel: Channel | str, name: str, content: str | bytes
    ) -> Said:
        """Let a person drop a file into a channel, with no words."""
        where = self._may_post(person, channel)
        held = content.encode() if isinstance(content, str) else content
        file = self._file(person, name, held, len(held))
        draft = self._typed(person, where, "", literal=False)
        return self.post(replace(draft, subtype="file_share", files=(file,), blocks=()))

    def edit(self, said: Said | Message, text: str, *, literal: bool = False) -> list[Delivery]:
        """Let the author correct a message."""
        message = self.message(said)
        block = rich_text(text, self.new_block_id(), literal=literal)
        stamp = Edited(message.user or "", self.state.stamps.edit())
        return self.change(
            message,
            text=message_text(text, literal=literal),
            blocks=(block,) if text else (),
            edited=stamp,
        )

    def unfurl(self, said: Said | Message, url: str) -> list[Delivery]:
        """Let a link preview appear: Slack sends an edit with the same text."""
        preview = {"from_url": url, "original_url": url, "fallback": url, "id": 1, "title": url}
        return self.change(self.message(said), attachments=(preview,))

    def delete(self, said: Said | Message) -> list[Delivery]:
        """Delete a message; with replies below it, a tombstone stays and that is the event."""
        message = self.message(said)
        channel = self.state.channel(message.channel)
        team = self.installation.team_id
        with self.changed:
            before = message_json(self.state, message, team)
            if self.state.replies_to(message):
                tombstone = _tombstone(message)
                self.state.keep_message(tombstone)
                self.tell(MessageNews("changed", tombstone))
                event = events.message_changed(self.state, before, tombstone, channel, team)
            else:
                self.state.drop_message(message)
                self.tell(MessageNews("deleted", message))
                self._clear_tombstone(message)
                event = events.message_deleted(self.state, before, channel, team)
            return self.emit(MESSAGE_EVENTS[channel.kind], event, channel)

    def react(self, person: Person, said: Said | Message, name: str) -> list[Delivery]:
        """Put an emoji (its name without colons) under a message."""
        return self.set_reaction(self.message(said), person.id, name, present=True)

    def message(self, said: Said | Message) -> Message:
        """Return a message as it stands now; raises ScriptError if it is gone."""
        found = self.state.find_message(said.channel, said.ts)
        if found is None:
            raise ScriptError(f"There is no message {said.ts} in {said.channel} any more.")
        return found

    def post(self, draft: Message) -> Said:
        """Store a new message under a fresh `ts`, and send its events."""
        with self.changed:
            message = self.state.keep_message(replace(draft, ts=self.state.stamps.next()))
            self.tell(MessageNews("posted", message))
            channel = self.state.channel(message.channel)
            team = self.installation.team_id
            event = events.message_posted(self.state, message, channel, team)
            sent = self.emit(MESSAGE_EVENTS[channel.kind], event, channel)
            if self._mentions_app(message, channel):
                event = events.app_mentioned(self.state, message, channel, team)
                sent += self.emit("app_mention", event, channel)
            return Said(channel.id, message.ts, message.user or "", tuple(sent))

    def change(self, message: Message, **fields: Any) -> list[Delivery]:
        """Change fields of a message, and send the edit event."""
        with self.changed:
            team = self.installation.team_id
            channel = self.state.channel(message.channel)
            message = self.message(message)
            before = message_json(self.state, message, team)
            after = self.state.keep_message(replace(message, **fields))
            self.tell(MessageNews("changed", after))
            event = events.message_changed(self.state, before, after, channel, team)
            return self.emit(MESSAGE_EVENTS[channel.kind], event, channel)

    def set_reaction(
        self, message: Message, user: str, name: str, *, present: bool
    ) -> list[Delivery]:
        """Add or remove one user's emoji; the event goes out if the app asked for it."""
        with self.changed:
            message = self.message(message)
            users = [u for u in message.reacted(name) if u != user] + [user] * present
            others = tuple(r for r in message.reactions if r.name != name)
            mine = Reaction(name, tuple(users))
            kept = (*others, mine) if users else others
            after = self.state.keep_message(replace(message, reactions=kept))
            self.tell(ReactionNews(after, user, mine, present))
            kind = "reaction_added" if present else "reaction_removed"
            event = events.reaction(kind, user, name, message, self.state.stamps.next())
            return self.emit(kind, event, self.state.channel(message.channel))

    def keep_ephemeral(self, ephemeral: Ephemeral) -> None:
        """Show a message to one person."""
        with self.changed:
            self.state.ephemerals.append(ephemeral)
            self.tell(EphemeralNews(ephemeral))
            self.changed.notify_all()

    def new_block_id(self) -> str:
        """Return an id such as Slack gives to a block without one."""
        return self.state.ids.secret("block")[:5]

    def mention(self, person: Person) -> str:
        """Return what stands in a text for "@somebody" picked from the menu."""
        return f"<@{person.id}>"

    def _typed(self, person: Person, channel: Channel, text: str, *, literal: bool) -> Message:
        block = rich_text(text, self.new_block_id(), literal=literal)
        return Message(
            ts="",
            channel=channel.id,
            user=person.id,
            text=message_text(text, literal=literal),
            blocks=(block,) if text else (),
            bot_id=person.bot_id,
            app_id=person.app_id,
            client_msg_id=None if person.is_bot else self.state.ids.uuid(),
        )

    def _clear_tombstone(self, reply: Message) -> None:
        """A tombstone goes with the last reply that hung on it."""
        parent = self.state.find_message(reply.channel, reply.thread_ts or "")
        if parent is not None and parent.is_tombstone and not self.state.replies_to(parent):
            self.state.drop_message(parent)
            self.tell(MessageNews("deleted", parent))

    def _may_post(self, person: Person, channel: Channel | str) -> Channel:
        where, who = self.state.channel(channel), self.state.person(person)
        if who.deleted:
            raise ScriptError(f"{who.real_name} is deactivated and cannot post.")
        if who.id not in where.members:
            raise ScriptError(f"{who.real_name} is not in {where.name or where.id}: join first.")
        if where.archived:
            raise ScriptError(f"{where.name} is archived: nobody can post there.")
        if where.kind == "im" and self.bot.id in where.members:
            writable = self.features is None or self.features.messages_tab_writable
            if not (self.messages_tab and writable):
                raise ScriptError("The app's messages tab is off: nobody can write to it.")
        return where

    def _thread_of(self, channel: Channel, under: Said | Message | str | None) -> str | None:
        if under is None:
            return None
        ts = under if isinstance(under, str) else under.ts
        found = self.state.find_message(channel.id, ts)
        return ts if found is None else found.thread_ts or ts

    def _file(self, person: Person, name: str, content: bytes, size: int) -> Json:
        file_id, created = self.state.ids.next("F"), self.state.stamps.seconds()
        self.contents[file_id] = content
        address = f"{self.base_url}/files/{self.installation.team_id}/{file_id}"
        return file_json(address, file_id, created, person, name, size)

    def _mentions_app(self, message: Message, channel: Channel) -> bool:
        in_channel = channel.kind in ("public", "private")
        return in_channel and message.user != self.bot.id and f"<@{self.bot.id}" in message.text


def _tombstone(message: Message) -> Message:
    return Message(
        ts=message.ts,
        channel=message.channel,
        user="USLACKBOT",
        text="This message was deleted.",
        subtype="tombstone",
    )
