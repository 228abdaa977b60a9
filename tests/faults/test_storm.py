"""Whatever fails, however often: in the end each message stands once, with its newest words."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from itertools import count

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlmodel import Session

from bot.local.faults import Dropped, HttpError, RateLimited, Refused
from bot.outbox import Outbox
from core.store import Store
from tests.support.post_room import PostRoom, opened

_numbers = count(1)


class Stormy(Store):
    """A database whose commits fail as told: the outcome of a send is lost with them."""

    fails: list[bool]

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """Write, and fail at the end when it is the turn for it."""
        with super().writing() as session:
            yield session
            if self.fails and self.fails.pop():
                raise sqlite3.OperationalError("database is locked")


faults = st.sampled_from(
    [
        None,
        Dropped(processed=True),
        Dropped(processed=False),
        HttpError(500),
        HttpError(503, processed=True),
        Refused("fatal_error", processed=True),
        RateLimited(7),
    ]
)
METHODS = ("chat.postMessage", "chat.update", "conversations.history")
rounds = st.lists(
    st.tuples(
        st.tuples(faults, faults, faults), st.lists(st.booleans(), max_size=4), st.booleans()
    ),
    min_size=1,
    max_size=5,
)


@settings(
    max_examples=20, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(rounds)
def test_each_message_stands_once_with_its_newest_words(
    room: PostRoom, storm: list[tuple[tuple[object, ...], list[bool], bool]]
) -> None:
    slots = [f"first {next(_numbers)}", f"second {next(_numbers)}"]
    stormy = Stormy(str(room.store.engine.url))
    in_storm = replace(room, outbox=Outbox(stormy, opened(room.ws), room.paper))
    for slot in slots:
        room.owe(slot, f"{slot}: 0")

    for number, (broken, stormy.fails, changed) in enumerate(storm, start=1):
        for method, fault in zip(METHODS, broken, strict=True):
            if isinstance(fault, Dropped | HttpError | Refused | RateLimited):
                room.ws.faults.order(method, fault)
        if changed:
            room.owe(slots[0], f"{slots[0]}: {number}")
        try_to_deliver(in_storm)
    room.ws.faults.clear()
    for _ in range(4):
        room.deliver(after=15 * 60)

    wanted = [room.paper.words[slot] for slot in slots]
    assert [text for text in room.seen() if text.split(":")[0] in slots] == wanted
    stormy.close()


def try_to_deliver(room: PostRoom) -> None:
    """One run, as the schedule makes them: an error ends it, and the next one comes later."""
    try:
        room.deliver(after=120)
    except sqlite3.OperationalError:
        return
