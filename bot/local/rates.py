"""Slack's pace: about one post a second per channel, and per-minute tiers of the methods.

From docs.slack.dev, "Rate limits"; Slack tolerates bursts of undisclosed size, this does
not. Off unless a test or the demo turns it on.
"""

import math
from collections import defaultdict, deque
from collections.abc import Callable
from datetime import datetime
from typing import Final

from bot.local.records import Json

POSTS: Final = frozenset({"chat.postMessage"})
PER_MINUTE: Final = {
    "chat.update": 50,
    "conversations.open": 50,
    "reactions.add": 50,
    "reactions.remove": 20,
    "conversations.history": 50,
    "conversations.replies": 50,
    "conversations.list": 20,
    "conversations.members": 100,
    "conversations.info": 50,
    "users.list": 20,
    "users.info": 100,
    "views.open": 100,
    "views.publish": 100,
    "views.update": 100,
}


class Rates:
    """Counts calls by the workspace's clock."""

    def __init__(self, now: Callable[[], datetime]) -> None:
        self._now = now
        self._calls: dict[tuple[str, str], deque[float]] = defaultdict(deque)
        self.enforced = False

    def enforce(self) -> None:
        """Answer 429 from now on to calls that come too fast."""
        self.enforced = True

    def wait(self, method: str, args: Json) -> int | None:
        """Count a call; return the seconds to wait if it is one too many."""
        if not self.enforced:
            return None
        if method in POSTS:
            return self._take((method, str(args.get("channel"))), most=1, seconds=1.0)
        if method in PER_MINUTE:
            return self._take((method, ""), most=PER_MINUTE[method], seconds=60.0)
        return None

    def _take(self, key: tuple[str, str], most: int, seconds: float) -> int | None:
        now, calls = self._now().timestamp(), self._calls[key]
        while calls and calls[0] <= now - seconds:
            calls.popleft()
        if len(calls) >= most:
            return max(1, math.ceil(calls[0] + seconds - now))
        calls.append(now)
        return None
