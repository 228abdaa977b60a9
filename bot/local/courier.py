"""Sends deliveries to the app in order, keeps them back on request, and knows what is under way."""

import threading
from collections import deque
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Protocol

from bot.local.delivery import Delivery, Outcome
from bot.local.errors import ScriptError
from bot.local.records import Json

Done = Callable[[Outcome], None]


class Target(Protocol):
    """Where deliveries go; `send` returns at once and calls `done` exactly once, later."""

    def send(self, delivery: Delivery, done: Done) -> None:
        """Start sending."""


@dataclass(eq=False)
class Courier:
    """The deliveries of one workspace.

    `at_once` is how many may be unanswered at the same time. One (the default) makes
    a script repeatable; Slack itself sends side by side and promises no order.
    """

    changed: threading.Condition
    target: Target | None = None
    at_once: int = 1
    on_failure: Callable[[Delivery], None] | None = None
    complaints: list[ScriptError] = field(default_factory=list)
    all: list[Delivery] = field(default_factory=list)
    _holding: bool = False
    _pumping: bool = False
    _queue: deque[Delivery] = field(default_factory=deque)
    _held: list[Delivery] = field(default_factory=list)
    _sent: list[Delivery] = field(default_factory=list)

    def send(self, delivery: Delivery) -> Delivery:
        """Queue a delivery, or hold it back if holding."""
        with self.changed:
            self.all.append(delivery)
            if self._holding:
                delivery.status = "held"
                self._held.append(delivery)
            else:
                self._queue.append(delivery)
                self._pump()
        return delivery

    def hold(self) -> None:
        """Keep every delivery back from now on, until `release`."""
        with self.changed:
            self._holding = True

    def release(self, order: Iterable[Delivery] | None = None) -> None:
        """Send what was held back, in this order (default: as it happened), and hold no more.

        Raises ScriptError when `order` names something that is not held.
        """
        with self.changed:
            held = list(self._held) if order is None else list(order)
            if strangers := [d for d in held if d not in self._held]:
                raise ScriptError(f"Not held back: {', '.join(map(str, strangers))}")
            rest = [d for d in self._held if d not in held]
            self._holding, self._held = False, []
            for delivery in [*held, *rest]:
                delivery.status = "queued"
                self._queue.append(delivery)
            self._pump()

    def drop_held(self) -> list[Delivery]:
        """Forget what was held back, as if Slack had lost it, and hold no more."""
        with self.changed:
            lost, self._held, self._holding = self._held, [], False
            for delivery in lost:
                self._close(delivery, Outcome(reason="connection_failed"))
            return lost

    def redeliver(
        self, delivery: Delivery, reason: str = "http_timeout", url: str | None = None
    ) -> Delivery:
        """Send the same payload again as Slack's next attempt."""
        return self._again(delivery, delivery.attempt + 1, reason, url)

    def duplicate(self, delivery: Delivery, url: str | None = None) -> Delivery:
        """Send the same payload again with nothing that marks it as a retry."""
        return self._again(delivery, delivery.attempt, delivery.retry_reason, url)

    def time_out(self, delivery: Delivery) -> None:
        """Let a delivery that the app has not answered count as failed now."""
        with self.changed:
            if delivery not in self._sent:
                raise ScriptError(f"{delivery} is not waiting for an answer.")
            self._finish(delivery, Outcome(reason="http_timeout"))

    def outstanding(self) -> list[Delivery]:
        """Return what is queued or unanswered; what is held back does not count."""
        with self.changed:
            return [*self._sent, *self._queue]

    def held(self) -> list[Delivery]:
        """Return what is held back."""
        with self.changed:
            return list(self._held)

    def _again(
        self, delivery: Delivery, attempt: int, reason: str | None, url: str | None
    ) -> Delivery:
        copied: Json = dict(delivery.payload)
        again = Delivery(
            delivery.sort,
            copied,
            self.changed,
            attempt=attempt,
            retry_reason=reason,
            on_ack=delivery.on_ack,
            url=url or delivery.url,
        )
        return self.send(again)

    def _pump(self) -> None:
        if self._pumping:
            # A target answered while being sent to: the loop that is running goes on.
            return
        self._pumping = True
        try:
            self._send_next()
        finally:
            self._pumping = False
        self.changed.notify_all()

    def _send_next(self) -> None:
        while self._queue and len(self._sent) < self.at_once:
            delivery = self._queue.popleft()
            delivery.status = "sent"
            self._sent.append(delivery)
            if self.target is None:
                self._finish(delivery, Outcome(reason="connection_failed"))
            else:
                self.target.send(delivery, self._callback(delivery))

    def _callback(self, delivery: Delivery) -> Done:
        def done(outcome: Outcome) -> None:
            with self.changed:
                self._finish(delivery, outcome)

        return done

    def _finish(self, delivery: Delivery, outcome: Outcome) -> None:
        if delivery.done:
            delivery.late = outcome
            self.changed.notify_all()
            return
        if delivery in self._sent:
            self._sent.remove(delivery)
        self._close(delivery, outcome)
        self._pump()

    def _close(self, delivery: Delivery, outcome: Outcome) -> None:
        delivery.status = "acknowledged" if outcome.acknowledged else "failed"
        delivery.outcome = outcome
        if outcome.acknowledged:
            self._take_answer(delivery, outcome)
        elif self.on_failure is not None:
            self.on_failure(delivery)
        self.changed.notify_all()

    def _take_answer(self, delivery: Delivery, outcome: Outcome) -> None:
        if delivery.on_ack is None:
            return
        try:
            delivery.on_ack(outcome)
        except ScriptError as error:
            # This runs on a delivery thread; the script sees it when it waits or settles.
            delivery.complaint = error
            self.complaints.append(error)
