"""How fast each method of a workspace may be called, so that Slack never has to say no.

From docs.slack.dev, "Rate limits": posts about one a second in a channel and several hundred
a minute in a workspace; other methods by tiers, at least so many a minute. Slack tolerates
bursts and does not say how long ones. Each process keeps to the pace by itself; `shared` keeps
the posts of all of them together to it, and for the rest Slack's own `Retry-After` holds.
"""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

#: A channel takes about one post a second.
CHANNEL = timedelta(seconds=1)
POST = "chat.postMessage"
LONG_AGO = datetime.min.replace(tzinfo=UTC)


@dataclass(frozen=True, slots=True)
class Budget:
    """At most `per_minute` calls in any minute, and at most `burst` of them at once."""

    per_minute: int
    burst: int

    @property
    def step(self) -> timedelta:
        """The time after which one more call of a burst that was used up is allowed."""
        return timedelta(seconds=60 / (self.per_minute - self.burst))


#: Posts are spread evenly, since Slack may leave the excess of a burst undisplayed. 300 is our
#: reading of "several hundred".
BUDGETS = {
    POST: Budget(300, 15),
    "chat.update": Budget(50, 20),
    "reactions.add": Budget(50, 20),
    "reactions.remove": Budget(20, 8),
    "views.publish": Budget(100, 40),
    "conversations.open": Budget(50, 20),
    "conversations.history": Budget(50, 20),
    "conversations.replies": Budget(50, 20),
}
#: For a method that nobody gave a budget: the lowest tier that the bot uses.
SLOWEST = Budget(20, 8)


class Pace:
    """When which method may be called next, by what was called before."""

    def __init__(self) -> None:
        self._spent_until: dict[tuple[str, str], datetime] = {}
        self._blocked: dict[tuple[str, str], datetime] = {}
        self._posted: dict[tuple[str, str], datetime] = {}

    def free_at(self, workspace: str, method: str, channel: str = "") -> datetime:
        """The first moment (UTC) at which the method may be called; it may be long past."""
        budget, about = BUDGETS.get(method, SLOWEST), (workspace, method)
        spent = self._spent_until.get(about)
        times = [self._blocked.get(about, LONG_AGO)]
        if spent is not None:
            times.append(spent - budget.step * (budget.burst - 1))
        if method == POST and (posted := self._posted.get((workspace, channel))) is not None:
            times.append(posted + CHANNEL)
        return max(times)

    def took(self, workspace: str, method: str, channel: str, now: datetime) -> None:
        """Count a call at `now` (UTC)."""
        spent = self._spent_until.get((workspace, method), now)
        self._spent_until[workspace, method] = max(spent, now) + BUDGETS.get(method, SLOWEST).step
        if method == POST:
            old = [key for key, at in self._posted.items() if at + CHANNEL <= now]
            for key in old:
                del self._posted[key]
            self._posted[workspace, channel] = now

    def block(self, workspace: str, method: str, until: datetime) -> None:
        """Slack asks for no more calls of this method in this workspace before `until`."""
        self._blocked[workspace, method] = until

    def closed(self, now: datetime) -> list[tuple[str, str]]:
        """The workspaces and methods that must wait at `now`."""
        known = {*self._spent_until, *self._blocked}
        return [about for about in sorted(known) if self.free_at(*about) > now]

    def resting(self, now: datetime) -> list[str]:
        """The channels that had a post within the last second."""
        return [channel for (_, channel), at in self._posted.items() if at + CHANNEL > now]
