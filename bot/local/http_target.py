"""Delivery over HTTP: a signed POST to the app's request URL."""

import http.client
from collections.abc import Callable
from concurrent.futures import Executor
from dataclasses import dataclass
from datetime import datetime, timedelta
from urllib.parse import urlsplit

from bot.local.courier import Done
from bot.local.delivery import Delivery, Outcome
from bot.local.signing import signed_headers

USER_AGENT = "Slackbot 1.0 (+https://api.slack.com/robots)"


@dataclass(frozen=True, slots=True)
class HttpTarget:
    """Posts to `url`; no answer within `ack_limit` seconds is a failure."""

    url: str
    secret: str
    real_now: Callable[[], datetime]
    pool: Executor
    ack_limit: float = 3.0

    def send(self, delivery: Delivery, done: Done) -> None:
        """Post in the background."""
        self.pool.submit(lambda: done(self._deliver(delivery)))

    def post(self, body: bytes, headers: dict[str, str], url: str | None = None) -> Outcome:
        """Post these bytes with these headers, and wait for the answer."""
        target = urlsplit(url or self.url)
        connection = http.client.HTTPConnection(
            target.hostname or "127.0.0.1", target.port, timeout=self.ack_limit
        )
        try:
            connection.request("POST", target.path or "/", body, headers)
            return _outcome(connection.getresponse())
        except TimeoutError:
            return Outcome(reason="http_timeout")
        except (OSError, http.client.HTTPException):
            return Outcome(reason="connection_failed")
        finally:
            connection.close()

    def signed(
        self, body: bytes, *, shift: timedelta = timedelta(), secret: str | None = None
    ) -> dict[str, str]:
        """Return the headers of a genuine request with this body.

        `shift` makes it older (negative) or from the future, `secret` a forgery.
        """
        timestamp = str(int((self.real_now() + shift).timestamp()))
        signature = signed_headers(secret or self.secret, timestamp, body)
        return {"User-Agent": USER_AGENT} | signature

    def _deliver(self, delivery: Delivery) -> Outcome:
        body, content_type = delivery.http_body()
        headers = self.signed(body) | {"Content-Type": content_type} | delivery.retry_headers()
        return self.post(body, headers, delivery.url)


def _outcome(response: http.client.HTTPResponse) -> Outcome:
    body = response.read().decode("utf-8", "replace")
    headers = {name.lower(): value for name, value in response.getheaders()}
    reason = None if 200 <= response.status < 300 else "http_error"
    return Outcome(reason, response.status, body, headers)
