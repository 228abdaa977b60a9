"""Slack's pace: posts per channel and per workspace, and per-minute tiers of the methods.

From docs.slack.dev, "Rate limits": about one post a second in a channel, and "several hundred"
a minute in a workspace, taken here as 300. Slack tolerates bursts of undisclosed size, this
does not. Off unless a test or the demo turns it on.
"""

import math
from collections import defaultdict, deque
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from bot.local.records import Json

POSTS: Final = frozenset({"chat.postMessage"})
POSTS_PER_MINUTE: Final = 300
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


@dataclass(frozen=True, slots=True)
class _Limit:
    """At most so many calls of `key` in any stretch of `seconds`."""

    key: tuple[str, str]
    most: int
    seconds: float


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
            return self._take(
                _Limit((method, str(args.get("channel"))), most=1, seconds=1.0),
                _Limit((method, ""), most=POSTS_PER_MINUTE, seconds=60.0),
            )
        if method in PER_MINUTE:
            return self._take(_Limit((method, ""), most=PER_MINUTE[method], seconds=60.0))
        return None

    def _take(self, *limits: _Limit) -> int | None:
        """Count a call against all its limits, or against none where one is used up."""
        now = self._now().timestamp()
        waits = [wait for limit in limits if (wait := self._wait(limit, now)) is not None]
        if waits:
            return max(waits)
        for limit in limits:
            self._calls[limit.key].append(now)
        return None

    def _wait(self, limit: _Limit, now: float) -> int | None:
        calls = self._calls[limit.key]
        while calls and calls[0] <= now - limit.seconds:
            calls.popleft()
        if len(calls) < limit.most:
            return None
        return max(1, math.ceil(calls[0] + limit.seconds - now))
