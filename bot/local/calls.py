"""The record of the Web API calls that the app made."""

import threading
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from bot.local.records import Json


@dataclass(eq=False, slots=True)
class Call:
    """One call; `answer` is None while it is under way and after a dead line."""

    method: str
    args: Json
    at: datetime
    answer: Json | None = None
    status: int | None = None
    over: bool = False

    @property
    def ok(self) -> bool:
        """Whether Slack answered `ok: true`."""
        return self.answer is not None and self.answer.get("ok") is True

    @property
    def error(self) -> str | None:
        """Slack's name of the error, if it answered with one."""
        return None if self.answer is None else self.answer.get("error")


class CallLog:
    """Every call in the order of arrival; `at` is the workspace's (simulated) time."""

    def __init__(self, changed: threading.Condition, now: Callable[[], datetime]) -> None:
        self._changed = changed
        self._now = now
        self._calls: list[Call] = []

    def begin(self, method: str, args: Json) -> Call:
        """Note that a call has arrived."""
        call = Call(method, args, self._now())
        with self._changed:
            self._calls.append(call)
            self._changed.notify_all()
        return call

    def end(self, call: Call, status: int | None, answer: Json | None) -> None:
        """Note how a call was answered."""
        with self._changed:
            call.status, call.answer, call.over = status, answer, True
            self._changed.notify_all()

    def of(self, method: str) -> list[Call]:
        """Return the calls of one method."""
        with self._changed:
            return [c for c in self._calls if c.method == method]

    def all(self) -> list[Call]:
        """Return every call."""
        with self._changed:
            return list(self._calls)

    def under_way(self) -> list[Call]:
        """Return the calls without an answer yet."""
        with self._changed:
            return [c for c in self._calls if not c.over]

    def clear(self) -> None:
        """Forget the calls that are over."""
        with self._changed:
            self._calls = [c for c in self._calls if not c.over]

    def wait_for(self, method: str, count: int = 1, timeout: float = 10.0) -> bool:
        """Return when a method was called `count` times; False after `timeout` seconds."""
        with self._changed:
            return self._changed.wait_for(lambda: len(self.of(method)) >= count, timeout)
