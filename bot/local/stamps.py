"""Message timestamps and ids: unique within a server, increasing within a workspace."""

import hashlib
from collections.abc import Callable
from datetime import datetime
from itertools import count
from typing import Final

MICROSECONDS: Final = 1_000_000


class Stamps:
    """Makes `ts` strings such as "1767225600.000001" from the workspace's clock.

    Slack's `ts` is the message's id within its channel, so two of them are never
    equal here even when the clock stands still.
    """

    def __init__(self, now: Callable[[], datetime]) -> None:
        self._now = now
        self._last = 0

    def next(self) -> str:
        """Return a stamp later than every one before it."""
        self._last = max(self._last + 1, self.micros())
        return f"{self._last // MICROSECONDS}.{self._last % MICROSECONDS:06d}"

    def edit(self) -> str:
        """Return the stamp of an edit: Slack gives it in whole seconds.

        So two edits within a second have the same one, and an edit can be stamped earlier
        than the message. Seen in slackapi/bolt-python, tests/scenario_tests/
        test_message_changed.py ("1665102362.000000"), and in other captured payloads.
        """
        return f"{self.seconds()}.000000"

    def micros(self) -> int:
        """Return the clock in microseconds since 1970-01-01 UTC."""
        moment = self._now()
        if moment.utcoffset() is None:
            raise ValueError("The workspace's clock must give times with a zone (UTC).")
        seconds = int(moment.replace(microsecond=0).timestamp())
        return seconds * MICROSECONDS + moment.microsecond

    def seconds(self) -> int:
        """Return the clock in whole seconds since 1970-01-01 UTC."""
        return self.micros() // MICROSECONDS


class Ids:
    """Numbers people, channels and the rest; no two workspaces of one server share an id."""

    def __init__(self, workspace: int) -> None:
        self._workspace = workspace
        self._counts = count(1)

    def next(self, prefix: str) -> str:
        """Return an id such as "U0001000A3" (letters and digits, like Slack's)."""
        return f"{prefix}{self._workspace:04X}{next(self._counts):05X}"

    def secret(self, purpose: str) -> str:
        """Return 32 hexadecimal digits that look random and are the same on every run."""
        text = f"{self._workspace}:{next(self._counts)}:{purpose}"
        return hashlib.sha256(text.encode()).hexdigest()[:32]

    def uuid(self) -> str:
        """Return an id in the form of a UUID."""
        digits = self.secret("uuid")
        return "-".join((digits[:8], digits[8:12], digits[12:16], digits[16:20], digits[20:]))


def moment_of(ts: str) -> int:
    """Return a `ts` as whole microseconds, for ordering; raises ValueError if it is none."""
    seconds, _, fraction = ts.partition(".")
    if not (seconds.isdigit() and len(fraction) == 6 and fraction.isdigit()):
        raise ValueError(f"{ts!r} is not a message timestamp such as 1767225600.000001")
    return int(seconds) * MICROSECONDS + int(fraction)
