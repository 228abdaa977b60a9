"""A process dies at every step between owing a message and its stored outcome.

Each step is a transaction: the process dies before it is committed, or right after. Between
two of them stand the calls to Slack. What the next process sends makes each message stand
once.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta

import pytest
from pydantic import SecretStr
from sqlmodel import Session, select

from bot.access import find_installation, make_client
from bot.run import Bot, make_bot
from bot.settings import Settings
from core.model import MessageState, OutboxMessage
from core.store import Store
from tests.support.club import Club, no_network
from tests.support.hours import chicago, go_to, start

LEASE = timedelta(seconds=61)


class KilledError(BaseException):
    """The process is dead: nothing in it catches this."""


class Dying(Store):
    """A database whose process dies at its n-th transaction, before or after the commit."""

    def __init__(self, url: str, nth: int, *, committed: bool) -> None:
        super().__init__(url)
        self.left, self.committed, self.dead = nth, committed, False

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """Write until the process dies."""
        self._live()
        self.left -= 1
        with super().writing() as session:
            yield session
            session.flush()
            if not self.left and not self.committed:
                self._die()
        if not self.left:
            self._die()

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """Read until the process dies."""
        self._live()
        with super().reading() as session:
            yield session

    def _die(self) -> None:
        self.dead = True
        raise KilledError

    def _live(self) -> None:
        if self.dead:
            raise KilledError


def bot_on(club: Club, store: Store) -> Bot:
    """Another process that serves the club."""
    settings = Settings(api_url=club.ws.api_url, signing_secret=SecretStr(club.ws.signing_secret))
    installation = find_installation(make_client(club.ws.bot_token, club.ws.api_url))
    return make_bot(settings, installation, club.clock, store, no_network)


def two_outings(club: Club) -> None:
    """Two families are owed rest days on Monday at 08:00, and the staff a summary at 07:00."""
    start(club)
    go_to(club, chicago("05-03", "18:00"))
    club.say("mateo", "62p 11cb vs Summit")
    club.say("carmen", "Leo 45 pitches 6 curves vs Summit")
    go_to(club, chicago("05-04", "06:30"))


def unasked(club: Club) -> list[str]:
    """The beginnings of what was sent unasked, in the staff channel and to the parents."""
    told = [*club.in_staff_channel(), *club.heard("elena"), *club.heard("carmen")]
    return [
        text.partition("\n")[0] for text in told if "Monday summary" in text or "about rest" in text
    ]


SENT = [
    "*Monday summary, Herons*, Mon 27 Apr to Sun 3 May",
    "Elena Cruz, about rest from pitching:",
    "Carmen Ortiz, about rest from pitching:",
]
#: Transactions: one that owes, the day's look at the team, two for each of the three messages
#: (claim and outcome). A look that finds nothing to claim is none.
STEPS = 8


@pytest.mark.parametrize("committed", [False, True], ids=["before commit", "after commit"])
@pytest.mark.parametrize("nth", range(1, STEPS + 1))
def test_what_a_dead_process_left_stands_once(club: Club, nth: int, *, committed: bool) -> None:
    two_outings(club)
    dying = Dying(str(club.store.engine.url), nth, committed=committed)
    club.clock.set(chicago("05-04", "08:00"))

    with pytest.raises(KilledError):
        bot_on(club, dying).tick(club.clock.now())
    dying.close()
    heir = bot_on(club, club.store)
    for _ in range(2):
        heir.tick(club.clock.advance(LEASE))

    assert unasked(club) == SENT
    assert all_sent(club)


def test_there_are_no_more_steps_than_these(club: Club) -> None:
    two_outings(club)
    dying = Dying(str(club.store.engine.url), STEPS + 1, committed=False)
    club.clock.set(chicago("05-04", "08:00"))

    bot_on(club, dying).tick(club.clock.now())

    assert dying.left == 1
    assert unasked(club) == SENT
    dying.close()


def all_sent(club: Club) -> bool:
    with club.store.reading() as session:
        states = set(session.exec(select(OutboxMessage.state)))
    return states <= {MessageState.SENT, MessageState.DROPPED}
