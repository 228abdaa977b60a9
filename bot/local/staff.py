"""Setting a workspace up and changing it: accounts, channels, membership, the installation."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from bot.local import events
from bot.local.delivery import Delivery
from bot.local.errors import ScriptError
from bot.local.records import Channel, Kind, Message, Person
from bot.local.talk import Talk


class Staff(Talk):
    """What the workspace's owner does."""

    def add_person(self, real_name: str, **fields: Any) -> Person:
        """Give somebody an account; `fields` are those of Person (id, tz, is_admin, …).

        With `is_bot=True` it is another app's bot user, with a bot id of its own.
        """
        fields.setdefault("name", real_name.lower().replace(" ", "."))
        if fields.get("is_bot"):
            fields.setdefault("bot_id", self.state.ids.next("B"))
            fields.setdefault("app_id", self.state.ids.next("A"))
        fields.setdefault("id", self.state.ids.next("U"))
        return self.state.keep_person(Person(real_name=real_name, **fields))

    def add_channel(
        self,
        name: str,
        members: Iterable[Person] = (),
        *,
        private: bool = False,
        bot: bool = True,
        channel_id: str | None = None,
    ) -> Channel:
        """Make a channel in which these people are, and the app too unless `bot=False`.

        No event is sent; use `join` for somebody who comes later.
        """
        kind: Kind = "private" if private else "public"
        ids = [p.id for p in members] + [self.bot.id] * bot
        if any(c.name == name for c in self.state.channels.values()):
            raise ScriptError(f"There is already a channel #{name}.")
        return self.state.open_channel(kind, dict.fromkeys(ids), name, channel_id)

    def dm(self, person: Person) -> Channel:
        """Return the direct conversation of a person and the app."""
        return self.state.direct("im", (person.id, self.bot.id))

    def group_dm(self, *people: Person) -> Channel:
        """Return the group conversation of these people and the app."""
        return self.state.direct("mpim", (*(p.id for p in people), self.bot.id))

    def join(self, person: Person, channel: Channel, by: Person | None = None) -> list[Delivery]:
        """Let somebody come into a channel; `by` invited them.

        Slack writes a line into the channel (`channel_join`) and sends the event: two
        deliveries.
        """
        with self.changed:
            now = self.state.channel(channel)
            joined = self.state.change_members(now, dict.fromkeys([*now.members, person.id]))
            inviter = by.id if by is not None else person.id
            stamp = self.state.stamps.next()
            event = events.member_joined(
                person.id, joined, self.installation.team_id, stamp, inviter
            )
            says = "has joined the channel"
            line = self._notice(joined, person, "channel_join", says, inviter=by)
            return [*line, *self.emit("member_joined_channel", event, joined)]

    def invite_app(self, channel: Channel, by: Person) -> list[Delivery]:
        """Let a person invite the app: its own joining is an event too."""
        return self.join(self.bot, channel, by)

    def leave(self, person: Person, channel: Channel) -> list[Delivery]:
        """Let somebody leave a channel."""
        with self.changed:
            now = self.state.channel(channel)
            line = self._notice(now, person, "channel_leave", "has left the channel")
            left = self.state.change_members(now, [m for m in now.members if m != person.id])
            stamp = self.state.stamps.next()
            event = events.member_left(person.id, left, self.installation.team_id, stamp)
            return [*line, *self.emit("member_left_channel", event, left)]

    def archive(self, channel: Channel, by: Person, *, back: bool = False) -> list[Delivery]:
        """Archive a channel, or bring it `back`."""
        with self.changed:
            changed = replace(self.state.channel(channel), archived=not back)
            self.state.keep_channel(changed)
            kind = "channel_unarchive" if back else "channel_archive"
            event = events.channel_archived(kind, changed, by.id, self.state.stamps.next())
            line = self._notice(changed, by, kind, "archived the channel")
            return [*line, *self.emit(kind, event, changed)]

    def change_person(self, person: Person, **fields: Any) -> list[Delivery]:
        """Change a profile (real_name, tz, deleted=True, …), and send `user_change`."""
        with self.changed:
            changed = self.state.keep_person(replace(self.state.person(person), **fields))
            team = self.installation.team_id
            event = events.user_changed(self.state, changed, team, self.state.stamps.next())
            return self.emit("user_change", event)

    def _notice(
        self,
        channel: Channel,
        person: Person,
        subtype: str,
        says: str,
        inviter: Person | None = None,
    ) -> tuple[Delivery, ...]:
        text = f"<@{person.id}> {says}"
        invited_by = inviter.id if inviter is not None else None
        draft = Message("", channel.id, person.id, text, subtype=subtype, inviter=invited_by)
        return self.post(draft).deliveries
