"""One payload on its way to the app, and what became of it."""

import json
import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal
from urllib.parse import urlencode

from bot.local.errors import ScriptError
from bot.local.records import Json

# The names that Socket Mode gives to the three sorts of payload.
Sort = Literal["events_api", "interactive", "slash_commands"]
Status = Literal["held", "queued", "sent", "acknowledged", "failed"]


@dataclass(frozen=True, slots=True)
class Outcome:
    """How the app answered; `reason` is Slack's name of a failure, None for an ack."""

    reason: str | None = None
    status: int | None = None
    body: str = ""
    headers: dict[str, str] = field(default_factory=dict)

    @property
    def acknowledged(self) -> bool:
        """Whether Slack takes it for delivered."""
        return self.reason is None

    @property
    def no_retry(self) -> bool:
        """Whether the app asked not to be sent this event again."""
        return self.headers.get("x-slack-no-retry") == "1"

    def json(self) -> Json:
        """Return the answer's body; an empty or non-JSON body is an empty object."""
        try:
            found = json.loads(self.body)
        except ValueError:
            return {}
        return found if isinstance(found, dict) else {}


@dataclass(eq=False, slots=True)
class Delivery:
    """A payload sent, or waiting to be sent, once; a redelivery is another Delivery."""

    sort: Sort
    payload: Json
    changed: threading.Condition
    attempt: int = 0
    retry_reason: str | None = None
    status: Status = "queued"
    outcome: Outcome | None = None
    late: Outcome | None = None
    complaint: ScriptError | None = None
    on_ack: Callable[[Outcome], None] | None = None
    url: str | None = None

    @property
    def event_id(self) -> str:
        """The event's id, the same on every redelivery."""
        return str(self.payload["event_id"])

    @property
    def event(self) -> Json:
        """The inner event."""
        inner: Json = self.payload["event"]
        return inner

    @property
    def done(self) -> bool:
        """Whether it was acknowledged or has failed."""
        return self.outcome is not None

    def wait(self, timeout: float = 10.0) -> Outcome:
        """Return the outcome when there is one.

        Raises ScriptError after `timeout` seconds, and when the app's answer is wrong.
        """
        with self.changed:
            if not self.changed.wait_for(lambda: self.done, timeout) or self.outcome is None:
                raise ScriptError(f"No answer to {self} within {timeout} s; is it held back?")
            if self.complaint is not None:
                raise self.complaint
            return self.outcome

    def http_body(self) -> tuple[bytes, str]:
        """Return the request body and its content type."""
        if self.sort == "events_api":
            return json.dumps(self.payload).encode(), "application/json"
        form = self.payload if self.sort == "slash_commands" else {"payload": self._compact()}
        return urlencode(form).encode(), "application/x-www-form-urlencoded"

    def retry_headers(self) -> dict[str, str]:
        """Return the retry headers; over HTTP the first try has none."""
        if self.attempt == 0:
            return {}
        return {
            "X-Slack-Retry-Num": str(self.attempt),
            "X-Slack-Retry-Reason": self.retry_reason or "http_timeout",
        }

    def envelope(self, envelope_id: str) -> Json:
        """Return the Socket Mode frame that carries it."""
        frame: Json = {
            "envelope_id": envelope_id,
            "payload": self.payload,
            "type": self.sort,
            "accepts_response_payload": self.sort != "events_api",
        }
        if self.sort == "events_api":
            # Unlike over HTTP, Slack says "attempt 0" the first time too.
            frame |= {"retry_attempt": self.attempt, "retry_reason": self.retry_reason or ""}
        return frame

    def _compact(self) -> str:
        return json.dumps(self.payload)

    def __str__(self) -> str:
        what = self.payload.get("event", self.payload).get("type", self.sort)
        return f"{what} (attempt {self.attempt}, {self.status})"
