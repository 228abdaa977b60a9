"""Keeps log records off the screen, and remembers those that tell of something gone wrong."""

import logging
from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager

OURS = ("bot.", "core.")


class Overheard(logging.Handler):
    """Collects warnings of our own code and errors of everybody's, without tracebacks."""

    def __init__(self) -> None:
        """Begin with nothing heard."""
        super().__init__(logging.WARNING)
        self._heard: deque[str] = deque()

    def emit(self, record: logging.LogRecord) -> None:
        """Keep the first line of a record that matters."""
        if record.levelno >= logging.ERROR or record.name.startswith(OURS):
            first, *_ = record.getMessage().splitlines() or [""]
            self._heard.append(f"{record.name}: {first}")

    def take(self) -> list[str]:
        """What was heard since this was asked last."""
        return [self._heard.popleft() for _ in range(len(self._heard))]


@contextmanager
def overheard() -> Iterator[Overheard]:
    """Let nothing be logged to the screen meanwhile."""
    root, mine = logging.getLogger(), Overheard()
    before, root.handlers = root.handlers, [mine]
    try:
        yield mine
    finally:
        root.handlers = before
