"""Lines first: work that can wait stands back while something from Slack is being answered.

All threads of a process share one processor at a time, and SQLite lets one writer in: a message
that is rendered and stored a tenth of a second later is no harm, an acknowledgement is.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from threading import Condition

#: Work stands back so long (s), then it is done all the same: a busy evening must not keep
#: every message back.
LONGEST = 0.1


class RightOfWay:
    """Counts what is being answered; `give` waits until that is nothing."""

    def __init__(self, longest: float = LONGEST) -> None:
        """`longest` is how long work stands back at most (s)."""
        self._longest = longest
        self._answering = 0
        self._free = Condition()

    @contextmanager
    def answering(self) -> Iterator[None]:
        """Something from Slack is being answered."""
        with self._free:
            self._answering += 1
        try:
            yield
        finally:
            with self._free:
                self._answering -= 1
                if not self._answering:
                    self._free.notify_all()

    def give(self) -> bool:
        """Stand back while anything is being answered; whether it came to an end in time."""
        with self._free:
            return self._free.wait_for(lambda: not self._answering, self._longest)
