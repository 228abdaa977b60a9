"""What happens when the app answers at a response URL."""

from typing import Any

from bot.local.blockkit import check_message_blocks, with_block_ids
from bot.local.errors import ApiError
from bot.local.records import Ephemeral, Json, Message
from bot.local.tickets import ResponseUrl
from bot.local.workspace import Workspace


def respond(ws: Workspace, ticket: str, body: Json) -> None:
    """Post, replace or delete as `body` says; raises ApiError for a used or wrong one."""
    response = ws.tickets.answer(ticket)
    source = ws.state.find_message(response.channel, response.message_ts or "")
    if body.get("delete_original"):
        _delete(ws, response, source)
        return
    text, blocks = str(body.get("text") or ""), body.get("blocks")
    if not text and not blocks:
        raise ApiError("no_text")
    if blocks:
        check_message_blocks(blocks)
    kept = tuple(with_block_ids(blocks or [], ws.new_block_id))
    if body.get("replace_original") and source is not None:
        ws.change(source, text=text, blocks=kept)
    elif body.get("response_type") == "in_channel":
        ws.post(_draft(ws, response, text, kept, body))
    else:
        _drop_ephemeral(ws, response if body.get("replace_original") else None)
        stamp = ws.state.stamps.next()
        thread = body.get("thread_ts")
        shown = Ephemeral(stamp, response.channel, response.user, text, kept, thread)
        ws.keep_ephemeral(shown)


def _delete(ws: Workspace, response: ResponseUrl, source: Message | None) -> None:
    if source is not None:
        ws.delete(source)
    else:
        _drop_ephemeral(ws, response)


def _drop_ephemeral(ws: Workspace, response: ResponseUrl | None) -> None:
    if response is not None:
        seen = ws.state.ephemerals
        seen[:] = [e for e in seen if e.ts != response.message_ts or e.user != response.user]


def _draft(
    ws: Workspace, response: ResponseUrl, text: str, blocks: tuple[Any, ...], body: Json
) -> Message:
    return Message(
        ts="",
        channel=response.channel,
        user=ws.bot.id,
        text=text,
        blocks=blocks,
        thread_ts=body.get("thread_ts"),
        bot_id=ws.bot.bot_id,
        app_id=ws.bot.app_id,
    )
