"""`python -m tests.bench.outbox`: 1,000 queued nudges to 1,000 people, at Slack's pace.

The stand-in workspace enforces Slack's limits, in simulated time that goes on by one second
from tick to tick. Prints posts a minute against the allowed rate, how often Slack said no,
and the processor time of a message. Not a test: the last figure depends on the machine.
"""

import sys
from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from time import process_time

from sqlmodel import col, func, select

from bot.local.rates import POSTS_PER_MINUTE
from bot.local.server import StandIn
from bot.outbox import owe
from core.ledger import Notice, NoticeKind
from core.model import MessageState, OutboxMessage
from core.store import Store, migrate
from tests.support.post_room import PostRoom, post_room_at

PEOPLE = 1_000
TICK = timedelta(seconds=1)


def fill(room: PostRoom) -> None:
    """Owe each of a thousand people one nudge."""
    people = [room.ws.add_person(f"Person {number}").id for number in range(PEOPLE)]
    room.paper.words |= {f"nudge/{one}": "Rest until Wednesday." for one in people}
    at = room.clock.now()
    notices = [Notice(f"nudge/{one}", NoticeKind.REST_DAYS, one, at) for one in people]
    with room.store.writing() as session:
        owe(session, room.ws.team_id, notices)


def waiting(room: PostRoom) -> int:
    """How many messages are not sent yet."""
    count = select(func.count()).where(col(OutboxMessage.state) != MessageState.SENT)
    with room.store.reading() as session:
        return session.exec(count).one()


def deliver(room: PostRoom) -> float:
    """Tick until everything is sent; the simulated seconds from the first to the last post."""
    began = room.clock.now()
    room.outbox.deliver(began)
    while waiting(room):
        room.outbox.deliver(room.clock.advance(TICK))
    return (room.clock.now() - began).total_seconds()


def main() -> None:
    """Print the figures."""
    with TemporaryDirectory() as folder, StandIn() as stand_in:
        store = Store(f"sqlite:///{Path(folder) / 'outbox.sqlite3'}")
        migrate(store)
        with post_room_at(stand_in, store) as room:
            fill(room)
            room.ws.rates.enforce()
            start = process_time()
            took = deliver(room)
            spent = process_time() - start
            calls = room.ws.calls.of("chat.postMessage")
            refused = sum(call.status == 429 for call in calls)
            seen = sum(len(room.seen(room.ws.dm(one))) for one in room.ws.state.people.values())
        store.close()
    rate = 60 * PEOPLE / took
    sys.stdout.write(
        f"{seen} of {PEOPLE} nudges stand in Slack after {took:.0f} s: {rate:.0f} a minute, "
        f"{rate / POSTS_PER_MINUTE:.0%} of the {POSTS_PER_MINUTE} allowed; {refused} refused with "
        f"429; {1000 * spent / PEOPLE:.1f} ms of processor time each, both sides together\n"
    )


if __name__ == "__main__":
    main()
