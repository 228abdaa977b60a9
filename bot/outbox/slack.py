"""The calls that put a message into Slack, and what their failures mean."""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from http.client import HTTPException
from typing import Any

from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError
from slack_sdk.web import SlackResponse

from bot.cut import cut
from bot.outbox.pace import Pace
from bot.outbox.rendered import Published, Reaction, Words
from core.model import OutboxMessage

EVENT_TYPE = "spinkeeper_message"
#: Between the people of a destination who are written to in one conversation.
BETWEEN = ","
#: Slack stamps messages by its own clock: look a little further back than ours says.
CLOCKS_DIFFER = timedelta(minutes=5)

#: Slack's advice for the text of a message, and its limit when one is changed (characters).
LONGEST_TEXT = 4_000

#: Errors after which trying again changes nothing (Slack's method pages, docs.slack.dev).
PERMANENT = frozenset({
    "cant_update_message", "channel_not_found", "edit_window_closed",
    "invalid_blocks", "is_archived", "is_inactive", "message_not_found",
    "messages_tab_disabled", "missing_scope", "msg_blocks_too_long", "msg_too_long",
    "no_permission", "not_in_channel", "restricted_action",
    "restricted_action_read_only_channel", "restricted_action_thread_only_channel",
    "thread_not_found", "user_disabled", "user_not_found",
    "user_not_visible", "invalid_arguments", "no_text", "cannot_dm_bot",
})  # fmt: skip
#: Errors of a token that is dead: the app was taken away, or its token replaced (the same
#: pages).
DEAD_TOKEN = frozenset({
    "account_inactive", "invalid_auth", "not_authed", "org_login_required", "token_expired",
    "token_revoked",
})  # fmt: skip
#: Errors that pass; the work may have been done all the same (the same pages).
PASSING = frozenset({
    "fatal_error", "internal_error", "request_timeout", "service_unavailable",
    "team_added_to_org",
})  # fmt: skip
_ERROR_NAME = re.compile(r"[a-z][a-z0-9_]*")
#: Errors that say the wanted state is there already.
DONE_ALREADY = frozenset({"already_reacted", "no_reaction"})


class Failure(StrEnum):
    """What a failed call means for its message."""

    PERMANENT = "permanent"
    RATE_LIMITED = "rate limited"
    TOO_SOON = "too soon"  # not called: Slack would refuse it for being too fast
    CLOSED = "closed"  # the token is dead: no call will be answered any more
    REFUSED = "refused"  # for a reason that no list here names
    UNKNOWN = "unknown"  # it may have been done all the same: look before repeating


@dataclass(frozen=True, slots=True)
class Shown:
    """Where a message stands in Slack."""

    channel: str
    ts: str


class SendError(Exception):
    """A call failed; `after` is the wait in seconds that Slack asks for, where it does."""

    def __init__(self, failure: Failure, error: str, method: str, after: float = 0.0) -> None:
        """Name the failure, Slack's word for it and the method."""
        super().__init__(f"{method}: {error}")
        self.failure, self.error, self.method, self.after = failure, error, method, after


@dataclass(frozen=True, slots=True)
class Calls:
    """The calls for one workspace at one moment (UTC), none faster than the pace allows."""

    client: WebClient
    pace: Pace
    workspace: str
    now: datetime

    def __call__(self, method: Callable[..., SlackResponse], **arguments: Any) -> Any:
        """Call a method of the client with the arguments that are not none.

        Raises `SendError`, also where it would be too soon: then nothing was called.
        """
        given = {name: value for name, value in arguments.items() if value is not None}
        name = method.__name__.replace("_", ".", 1)
        channel = str(given.get("channel", ""))
        free_at = self.pace.free_at(self.workspace, name, channel)
        if free_at > self.now:
            wait = (free_at - self.now).total_seconds()
            raise SendError(Failure.TOO_SOON, "too soon", name, wait)
        self.pace.took(self.workspace, name, channel, self.now)
        try:
            return method(**given)
        except SlackApiError as problem:
            error = _error(problem)
            if error in DONE_ALREADY:
                return problem.response
            raise self._held(_send_error(problem, error, name)) from problem
        except (OSError, HTTPException) as problem:
            raise SendError(Failure.UNKNOWN, type(problem).__name__, name) from problem

    def _held(self, problem: SendError) -> SendError:
        if problem.failure is Failure.RATE_LIMITED:
            until = self.now + timedelta(seconds=problem.after)
            self.pace.block(self.workspace, problem.method, until)
        return problem


def post(calls: Calls, row: OutboxMessage, words: Words) -> Shown:
    """Post a message for the first time, marked with its slot so that it can be found again."""
    several = BETWEEN in row.destination
    answer = calls(
        calls.client.chat_postMessage,
        channel=_opened(calls, row) if several else row.destination,
        thread_ts=row.thread_ts,
        text=words.text,
        blocks=list(words.blocks) or None,
        metadata={"event_type": EVENT_TYPE, "event_payload": _mark(row)},
        unfurl_links=False,
        unfurl_media=False,
    )
    return Shown(str(answer["channel"]), str(answer["ts"]))


def _opened(calls: Calls, row: OutboxMessage) -> str:
    """The one conversation with the people of a destination; Slack gives the same one again."""
    people = row.destination.split(BETWEEN)
    return str(calls(calls.client.conversations_open, users=people)["channel"]["id"])


def update(calls: Calls, shown: Shown, words: Words) -> None:
    """Bring a message that people see to the newest words."""
    calls(
        calls.client.chat_update,
        channel=shown.channel,
        ts=shown.ts,
        text=cut(words.text, LONGEST_TEXT),
        blocks=list(words.blocks),
    )


def publish(calls: Calls, slack_id: str, home: Published) -> None:
    """Put somebody's Home tab in place of the one that stands there; twice is no harm."""
    calls(calls.client.views_publish, user_id=slack_id, view=home.view)


def react(calls: Calls, channel: str, reaction: Reaction, standing: Iterable[str | None]) -> None:
    """Leave exactly the wanted reaction on a line; `standing` are those that may be there."""
    client, line = calls.client, {"channel": channel, "timestamp": reaction.ts}
    for name in standing:
        if name and name != reaction.name:
            calls(client.reactions_remove, **line, name=name)
    if reaction.name:
        calls(client.reactions_add, **line, name=reaction.name)


def look_up(calls: Calls, row: OutboxMessage) -> Shown | None:
    """The message of this slot, if Slack shows it already (after a send of unknown outcome)."""
    channel = row.destination
    if channel.startswith(("U", "W")):
        channel = _opened(calls, row)
    if row.thread_ts:
        list_messages, where = calls.client.conversations_replies, {"ts": row.thread_ts}
    else:
        list_messages, where = calls.client.conversations_history, {}
    oldest = f"{(row.not_before - CLOCKS_DIFFER).timestamp():.6f}"
    cursor: str | None = ""
    while cursor is not None:
        found = calls(
            list_messages,
            channel=channel,
            oldest=oldest,
            include_all_metadata=True,
            limit=200,
            cursor=cursor or None,
            **where,
        )
        for message in found["messages"]:
            if message.get("metadata", {}).get("event_payload") == _mark(row):
                return Shown(channel, str(message["ts"]))
        cursor = (found.get("response_metadata") or {}).get("next_cursor") or None
    return None


def _mark(row: OutboxMessage) -> dict[str, str]:
    """What tells a message from all others, one that is posted anew from the older one too.

    `not_before` does not change while the outcome of a send is unknown.
    """
    return {"slot": row.slot, "since": row.not_before.isoformat()}


def _error(problem: SlackApiError) -> str:
    """Slack's name of the error; empty for a body that is no answer of the Web API.

    For such a body the client puts a sentence of its own, and the body, where the name stands.
    """
    data = problem.response.data
    error = str(data.get("error", "")) if isinstance(data, dict) else ""
    return error if _ERROR_NAME.fullmatch(error) else ""


def _send_error(problem: SlackApiError, error: str, method: str) -> SendError:
    response = problem.response
    if response.status_code == 429 or error in {"ratelimited", "rate_limited"}:
        return SendError(Failure.RATE_LIMITED, "ratelimited", method, _wait(response))
    if error in DEAD_TOKEN:
        return SendError(Failure.CLOSED, error, method)
    if error in PERMANENT:
        return SendError(Failure.PERMANENT, error, method)
    if error and error not in PASSING:
        return SendError(Failure.REFUSED, error, method)
    return SendError(Failure.UNKNOWN, error or f"http {response.status_code}", method)


def _wait(response: SlackResponse) -> float:
    """The wait that Slack asks for, in seconds; one second where it does not say."""
    headers = {name.lower(): value for name, value in response.headers.items()}
    asked = str(headers.get("retry-after", ""))
    return max(1.0, float(asked)) if asked.isdecimal() else 1.0
