"""Slack's request signature, version v0 (docs.slack.dev, "Verifying requests from Slack")."""

import hashlib
import hmac


def signature(secret: str, timestamp: str, body: bytes) -> str:
    """Return `v0=` and the HMAC-SHA256 of `v0:{timestamp}:{body}` in hexadecimal."""
    signed = b"v0:" + timestamp.encode() + b":" + body
    return "v0=" + hmac.new(secret.encode(), signed, hashlib.sha256).hexdigest()


def signed_headers(secret: str, timestamp: str, body: bytes) -> dict[str, str]:
    """Return the two headers by which an app knows that a request comes from Slack."""
    return {
        "X-Slack-Request-Timestamp": timestamp,
        "X-Slack-Signature": signature(secret, timestamp, body),
    }
