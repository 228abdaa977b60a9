"""Faults that a test orders for the next calls of a Web API method."""

import threading
from collections import deque
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class RateLimited:
    """429; `retry_after` in seconds, None for a reply without the header."""

    retry_after: int | None = 30


@dataclass(frozen=True, slots=True)
class HttpError:
    """An HTTP error with a body that is not JSON; with `processed` the work was done first."""

    status: int = 500
    body: str = "<!DOCTYPE html><html><body>Server Error</body></html>"
    processed: bool = False


@dataclass(frozen=True, slots=True)
class Dropped:
    """The line goes dead without an answer, by default after the work was done."""

    processed: bool = True


@dataclass(frozen=True, slots=True)
class Refused:
    """`ok: false` with this error; with `processed` (as for fatal_error) the work was done."""

    error: str
    processed: bool = False


@dataclass(eq=False, slots=True)
class Gate:
    """The call stands still until the test opens the gate; then it is answered as usual.

    With `processed` the work is done before the wait, so only the answer is late.
    """

    processed: bool = False
    _reached: threading.Event = field(default_factory=threading.Event)
    _opened: threading.Event = field(default_factory=threading.Event)

    def open(self) -> None:
        """Let every call at the gate go on, and later ones pass."""
        self._opened.set()

    def wait_reached(self, timeout: float = 10.0) -> bool:
        """Return when a call stands at the gate; False after `timeout` seconds."""
        return self._reached.wait(timeout)

    def stand(self) -> None:
        """Wait, as the call (not on the event loop)."""
        self._reached.set()
        self._opened.wait()


Fault = RateLimited | HttpError | Dropped | Refused | Gate


class Faults:
    """What is ordered, per method, first in first out."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._ordered: dict[str, deque[Fault]] = {}
        self._gates: list[Gate] = []

    def order(self, method: str, fault: Fault, times: int = 1) -> None:
        """Let the next `times` calls of a method meet this fault."""
        with self._lock:
            self._ordered.setdefault(method, deque()).extend([fault] * times)
            if isinstance(fault, Gate):
                self._gates.append(fault)

    def gate(self, method: str, *, processed: bool = False, times: int = 1) -> Gate:
        """Order a gate for the next calls of a method, and return it."""
        gate = Gate(processed)
        self.order(method, gate, times)
        return gate

    def clear(self) -> None:
        """Take back what was ordered and not met, and open every gate."""
        with self._lock:
            self._ordered.clear()
            gates, self._gates = self._gates, []
        for gate in gates:
            gate.open()

    def take(self, method: str) -> Fault | None:
        """Return the fault that the next call of a method meets."""
        with self._lock:
            waiting = self._ordered.get(method)
            return waiting.popleft() if waiting else None
