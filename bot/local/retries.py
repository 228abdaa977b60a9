"""Slack's own retries of events that were not acknowledged (docs.slack.dev, "The Events API")."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Final

from bot.local.courier import Courier
from bot.local.delivery import Delivery

# "Almost immediately", after a minute, after five minutes.
DELAYS: Final = (timedelta(), timedelta(minutes=1), timedelta(minutes=5))


@dataclass(eq=False)
class Retries:
    """Sends failed events again by the workspace's clock; off until `begin`."""

    courier: Courier
    now: Callable[[], datetime]
    _due: list[tuple[datetime, Delivery]] = field(default_factory=list)

    def begin(self) -> None:
        """Retry from now on: the first time at once, later ones when `send_due` is called."""
        self.courier.on_failure = self._failed

    def send_due(self) -> list[Delivery]:
        """Send the retries whose time has come; returns them."""
        with self.courier.changed:
            now = self.now()
            ready = [failed for at, failed in self._due if at <= now]
            self._due = [(at, failed) for at, failed in self._due if at > now]
        return [self._again(failed) for failed in ready]

    def _failed(self, failed: Delivery) -> None:
        gave_up = failed.attempt >= len(DELAYS)
        if failed.sort != "events_api" or gave_up or _refused_retries(failed):
            return
        delay = DELAYS[failed.attempt]
        if not delay:
            self._again(failed)
        else:
            self._due.append((self.now() + delay, failed))

    def _again(self, failed: Delivery) -> Delivery:
        reason = failed.outcome.reason if failed.outcome is not None else None
        return self.courier.redeliver(failed, reason or "unknown_error")


def _refused_retries(failed: Delivery) -> bool:
    # A timeout is retried all the same: Slack never saw the header.
    outcome = failed.outcome
    return outcome is not None and outcome.no_retry and outcome.reason != "http_timeout"
