"""The demo club at play: a stand-in workspace, the real bot, and what people do there.

Time is simulated; whoever plays moves it, and the bot's tick runs as it goes by.
"""

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from bot.clock import SimulatedClock
from bot.local.errors import ScriptError
from bot.local.happenings import News
from bot.local.records import Channel, Person
from bot.local.talk import Said
from bot.local.workspace import Workspace
from bot.run import Bot

#: As time goes by, the tick runs at every full hour and whenever a message falls due.
STEP = timedelta(hours=1)
#: Slack takes about a message a second: what is held back for that alone is sent at once.
SOON = timedelta(minutes=1)


@dataclass(eq=False)
class Clubhouse:
    """The workspace, the bot that serves it, and what people said to it so far.

    After something was done, `settle` lets the bot finish.
    """

    ws: Workspace
    clock: SimulatedClock
    bot: Bot
    people: dict[str, Person]
    channels: dict[str, Channel]
    zone: ZoneInfo
    said: dict[str, list[Said]] = field(default_factory=dict)
    _news: deque[News] = field(default_factory=deque)

    @property
    def local_now(self) -> datetime:
        """The simulated time in the team's zone."""
        return self.clock.now().astimezone(self.zone)

    def place(self, key: str, person: Person) -> Channel:
        """The channel with this key; "dm" is the person's conversation with the bot."""
        return self.ws.dm(person) if key == "dm" else self.ws.state.channel(self.channels[key])

    def say(self, person: Person, where: Channel, text: str, under: Said | None = None) -> Said:
        """Let somebody type a line; raises `ScriptError` when they cannot post there."""
        said = self.ws.say(person, where, text, under=under)
        self.said.setdefault(person.id, []).append(said)
        return said

    def command(self, person: Person, where: Channel, text: str) -> None:
        """Let somebody call a slash command."""
        word, _, rest = text.partition(" ")
        self.ws.command(person, where, word, rest.strip())

    def last_said(self, person: Person) -> Said:
        """Somebody's newest line; raises `ScriptError` when there is none."""
        if not (lines := self.said.get(person.id)):
            raise ScriptError(f"{person.real_name} has not said anything yet.")
        return lines[-1]

    def delete(self, said: Said) -> None:
        """Let the author delete a line."""
        self.ws.delete(said)
        self.said[said.user].remove(said)

    def pass_time(self, until: datetime) -> Iterator[datetime]:
        """Let time go by, step by step; gives each moment once its tick has run."""
        due = self.bot.next_due(self.clock.now())
        while (now := self.local_now) < until:
            full_hour = now.replace(minute=0, second=0, microsecond=0)
            stops = [until, full_hour + STEP, *([due] if due is not None and due > now else [])]
            self.clock.set(min(stops))
            due = self.settle()
            yield self.clock.now()

    def jump(self, moment: datetime) -> None:
        """Go on to a moment at once, if it is still to come."""
        self.clock.set(max(moment, self.clock.now()))

    def settle(self) -> datetime | None:
        """Let every delivery be answered and every message that is due soon be sent.

        Gives the time at which the next message is due, or none when none will be.
        """
        self.ws.settle()
        soon = self.clock.now() + SOON
        self.bot.tick(self.clock.now())
        tried: datetime | None = None
        while (due := self.bot.outbox.next_due()) is not None and due <= soon and due != tried:
            self.jump(due)
            self.bot.tick(self.clock.now())
            tried = due  # what is due still after this must wait for a later tick
        self.ws.settle()
        return self.bot.next_due(self.clock.now())

    def watch(self) -> None:
        """Remember what happens from now on, for `news`."""
        self.ws.watch(self._news.append)

    def news(self) -> list[News]:
        """What happened since this was asked last, in order."""
        return [self._news.popleft() for _ in range(len(self._news))]
