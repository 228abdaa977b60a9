"""From a Slack message event to what it means for the log: said, edited, deleted, or nothing."""

from collections.abc import Mapping
from typing import Any

from core.ledger import Deleted, Edited, Said

#: Subtypes under which a person's typed line arrives; every other subtype is no typed line.
TYPED = frozenset({None, "file_share", "thread_broadcast", "me_message"})
Heard = Said | Edited | Deleted


def understand(event: Mapping[str, Any], workspace_id: str) -> Heard | None:
    """What a `message` event says, or none when it is no line that a person typed."""
    subtype = event.get("subtype")
    if subtype == "message_changed":
        return _changed(event, workspace_id)
    if subtype == "message_deleted":
        return _deleted(event, workspace_id)
    if subtype not in TYPED or _is_a_bot(event):
        return None
    return _said(event, event, workspace_id)


def _changed(event: Mapping[str, Any], workspace_id: str) -> Heard | None:
    message = event.get("message") or {}
    if message.get("subtype") == "tombstone":
        # A deleted message that has replies: the reply thread keeps a stone in its place.
        before = event.get("previous_message") or {}
        return None if _is_a_bot(before) else _gone(event, before, message["ts"], workspace_id)
    stamp = (message.get("edited") or {}).get("ts")
    if stamp is None or message.get("subtype") not in TYPED or _is_a_bot(message):
        return None  # a link preview, a new reply count, or another program's message
    return Edited(_said(event, message, workspace_id), f"{stamp}/{event.get('ts', stamp)}")


def _deleted(event: Mapping[str, Any], workspace_id: str) -> Heard | None:
    before = event.get("previous_message") or {}
    if _is_a_bot(before):
        return None
    return _gone(event, before, event["deleted_ts"], workspace_id)


def _gone(
    event: Mapping[str, Any], before: Mapping[str, Any], ts: str, workspace_id: str
) -> Deleted:
    return Deleted(_said(event, {**before, "ts": ts}, workspace_id))


def _is_a_bot(message: Mapping[str, Any]) -> bool:
    is_slackbot = message.get("user") == "USLACKBOT"
    return bool(message.get("bot_id")) or is_slackbot or message.get("subtype") == "bot_message"


def _said(event: Mapping[str, Any], message: Mapping[str, Any], workspace_id: str) -> Said:
    ts, thread_ts = str(message["ts"]), message.get("thread_ts")
    return Said(
        workspace_id=workspace_id,
        channel=str(event["channel"]),
        ts=ts,
        author=str(message.get("user") or ""),
        text=unescape(storable(message.get("text") or "")),
        direct=event.get("channel_type") == "im",
        thread_ts=str(thread_ts) if thread_ts and thread_ts != ts else None,
    )


def storable(text: str) -> str:
    """A text that every database takes: PostgreSQL refuses NUL, both refuse half a character."""
    return (
        text.replace("\0", "\ufffd").encode("utf-16", "surrogatepass").decode("utf-16", "replace")
    )


def unescape(text: str) -> str:
    """A text as it was typed: Slack escapes exactly these three characters."""
    return text.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
