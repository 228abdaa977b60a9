"""An outbox against a stand-in workspace, with messages whose words the test sets."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta

from slack_sdk import WebClient
from sqlmodel import Session, select

from bot.access import Open, Opened, make_client
from bot.clock import SimulatedClock
from bot.local.records import Channel, Message, Person
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from bot.outbox import Outbox, Reaction, Rendered, Words, owe
from core.ledger import Notice, NoticeKind
from core.model import OutboxMessage
from core.model import Workspace as Stored
from core.store import Store

NOON = datetime(2026, 5, 2, 17, 0, tzinfo=UTC)


@dataclass
class Paper:
    """Renders what the test wrote for a slot; none where it wrote nothing."""

    words: dict[str, str] = field(default_factory=dict)
    reactions: dict[str, Reaction] = field(default_factory=dict)
    torn: set[str] = field(default_factory=set)

    def __call__(self, _session: Session, row: OutboxMessage, _now: datetime) -> Rendered | None:
        if row.slot in self.torn:
            raise ZeroDivisionError("a fault inside the renderer")
        if row.slot in self.reactions:
            return self.reactions[row.slot]
        text = self.words.get(row.slot)
        return None if text is None else Words(text)


@dataclass
class PostRoom:
    """One channel, one person, and what is owed to them."""

    ws: Workspace
    store: Store
    clock: SimulatedClock
    person: Person
    channel: Channel
    paper: Paper
    outbox: Outbox

    def owe(
        self,
        slot: str,
        text: str | None = None,
        to: str | None = None,
        kind: NoticeKind = NoticeKind.ANSWER,
        *,
        at: datetime | None = None,
        anew: bool = False,
    ) -> None:
        """Owe a message, or its newest words; to the channel when nobody is named."""
        if text is not None:
            self.paper.words[slot] = text
        moment = at or self.clock.now()
        notice = Notice(slot, kind, to or self.channel.id, moment, anew=anew)
        with self.store.writing() as session:
            owe(session, self.ws.team_id, [notice])

    def another(self) -> Outbox:
        """A second process' outbox on the same database."""
        return Outbox(self.store, opened(self.ws), self.paper)

    def deliver(self, after: float = 0.0) -> int:
        """Let `after` seconds go by, then deliver once."""
        return self.outbox.deliver(self.clock.advance(timedelta(seconds=after)))

    def row(self, slot: str) -> OutboxMessage:
        """The row of a slot as stored now."""
        with self.store.reading() as session:
            return session.exec(select(OutboxMessage).where(OutboxMessage.slot == slot)).one()

    def seen(self, where: Channel | str | None = None) -> list[str]:
        """The bot's words in the channel as they stand now."""
        return [message.text for message in self.messages(where)]

    def messages(self, where: Channel | str | None = None) -> list[Message]:
        """The bot's messages in the channel."""
        return self.ws.bot_messages(where or self.channel)

    def posts(self) -> int:
        """How often chat.postMessage was called."""
        return len(self.ws.calls.of("chat.postMessage"))


def opened(ws: Workspace, client: WebClient | None = None) -> Open:
    """That workspace alone, by this client or by one with the token of this moment."""
    by = client or make_client(ws.bot_token, ws.api_url)
    return lambda: {ws.team_id: Opened(by, None)}


@contextmanager
def post_room_at(stand_in: StandIn, store: Store) -> Iterator[PostRoom]:
    """A post room on this server and database."""
    clock = SimulatedClock(NOON)
    ws = stand_in.new_workspace(clock.now)
    person = ws.add_person("Dana Mercer")
    channel = ws.add_channel("staff", [person])
    with store.writing() as session:
        session.add(Stored(id=ws.team_id))
    paper = Paper()
    outbox = Outbox(store, opened(ws), paper)
    yield PostRoom(ws, store, clock, person, channel, paper, outbox)
    stand_in.close_workspace(ws)
