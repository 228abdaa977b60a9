"""What an errand is: what is asked of Slack first, then one transaction with what follows."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from slack_sdk import WebClient
from sqlmodel import Session

from core.ledger import Notice
from core.model import Errand
from core.store import Store


@dataclass(frozen=True, slots=True)
class Tools:
    """What an errand works with; calls to Slack are made outside of any transaction."""

    store: Store
    client: WebClient
    #: Ids of the rule books that a team may name.
    known_books: tuple[str, ...]


#: What an errand changes, in one transaction with its end; gives what must be told.
Finish = Callable[[Session], list[Notice]]
#: Does what must be done outside of a transaction. Raises `ErrandError`, or any error of
#: Slack's or the network's, after which it is tried again for a while.
Work = Callable[[Tools, Errand, datetime], Finish]


class ErrandError(Exception):
    """Trying again changes nothing; `finish` tells those who wait."""

    def __init__(self, says: str, finish: Finish) -> None:
        """Name the fault (no names, no texts: it is logged) and what follows."""
        super().__init__(says)
        self.finish = finish
