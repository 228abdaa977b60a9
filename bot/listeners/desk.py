"""What every listener needs, and how it finishes: one commit, then the bell for the outbox."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeVar

from sqlmodel import Session

from bot.clock import Clock
from bot.outbox import owe
from bot.outbox.homes import refresh_homes
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.crew import find_person
from core.roster.first_steps import has_team
from core.store import Store

Seen = TypeVar("Seen")


@dataclass(frozen=True, slots=True)
class Desk:
    """The database, the time, and a bell that wakes the outbox."""

    store: Store
    clock: Clock
    committed: Callable[[], None]

    def by_hand(
        self, workspace_id: str, slack_id: str, work: Callable[[Hand], list[Notice]]
    ) -> None:
        """Do what somebody pressed or filled in, in one transaction.

        Raises `ByHandError`; then nothing was changed.
        """
        with self.store.writing() as session:
            notices = work(self._hand(session, workspace_id, slack_id))
            owe(session, workspace_id, notices)
            refresh_homes(session, workspace_id, notices, self.clock.now())
        self.committed()

    def look(self, workspace_id: str, slack_id: str, see: Callable[[Hand], Seen]) -> Seen:
        """What somebody may see, read without a write lock; `ByHandError` for a stranger."""
        with self.store.reading() as session:
            return see(self._hand(session, workspace_id, slack_id))

    def has_team(self, workspace_id: str) -> bool:
        """Whether any team is set up in a workspace."""
        with self.store.reading() as session:
            return has_team(session, workspace_id)

    def _hand(self, session: Session, workspace_id: str, slack_id: str) -> Hand:
        person = find_person(session, workspace_id, slack_id)
        if person is None:
            raise ByHandError(Refusal.NOT_ALLOWED)
        return Hand(session, person, self.clock.now())


def presser(body: dict[str, Any]) -> str:
    """The Slack id of whoever pressed or submitted."""
    return str(body["user"]["id"])
