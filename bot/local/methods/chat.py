"""chat.*: the app posts, changes and deletes messages."""

from dataclasses import replace
from typing import Final

from bot.local.arguments import Arguments
from bot.local.blockkit import check_message_blocks, with_block_ids
from bot.local.errors import ApiError
from bot.local.methods.access import (
    named_message,
    postable_channel,
    visible_channel,
)
from bot.local.records import Channel, Edited, Ephemeral, Json, Message
from bot.local.shapes import message_json
from bot.local.workspace import Workspace

# chat.postMessage truncates past this; chat.update refuses past the second (docs.slack.dev).
LONGEST_POST: Final = 40_000
LONGEST_UPDATE: Final = 4_000
MOST_ATTACHMENTS: Final = 100


def post_message(ws: Workspace, args: Arguments) -> Json:
    """chat.postMessage: post to a channel, or to a user id as the app's DM."""
    channel = postable_channel(ws, args.required("channel"))
    text, blocks = _content(ws, args)
    draft = Message(
        ts="",
        channel=channel.id,
        user=ws.bot.id,
        text=text[:LONGEST_POST],
        blocks=blocks,
        attachments=_attachments(args),
        thread_ts=_thread(ws, args, channel),
        metadata=_metadata(args),
        bot_id=ws.bot.bot_id,
        app_id=ws.bot.app_id,
    )
    if draft.thread_ts is not None and args.flag("reply_broadcast"):
        draft = replace(draft, subtype="thread_broadcast")
    said = ws.post(draft)
    shown = message_json(ws.state, ws.message(said), ws.team_id, with_metadata=True)
    return {"channel": channel.id, "ts": said.ts, "message": shown}


def update(ws: Workspace, args: Arguments) -> Json:
    """chat.update: change a message of the app's own."""
    channel = visible_channel(ws, args.required("channel"))
    message = named_message(ws, args, "ts", channel)
    if message.user != ws.bot.id:
        raise ApiError("cant_update_message")
    if channel.archived:
        raise ApiError("is_inactive")
    text, blocks = _content(ws, args)
    if len(text) > LONGEST_UPDATE:
        raise ApiError("msg_too_long")
    edited = message.edited
    if not blocks:
        # With blocks Slack does not flag the message as edited.
        edited = Edited(ws.bot.id, ws.state.stamps.edit())
    metadata = _metadata(args) if "metadata" in args else message.metadata
    ws.change(message, text=text, blocks=blocks, metadata=metadata, edited=edited)
    shown = message_json(ws.state, ws.message(message), ws.team_id, with_metadata=True)
    return {"channel": channel.id, "ts": message.ts, "text": text, "message": shown}


def delete(ws: Workspace, args: Arguments) -> Json:
    """chat.delete: delete a message of the app's own."""
    channel = visible_channel(ws, args.required("channel"))
    message = named_message(ws, args, "ts", channel)
    if message.user != ws.bot.id:
        raise ApiError("cant_delete_message")
    ws.delete(message)
    return {"channel": channel.id, "ts": message.ts}


def post_ephemeral(ws: Workspace, args: Arguments) -> Json:
    """chat.postEphemeral: a message for one member of a channel, kept nowhere else."""
    channel = postable_channel(ws, args.required("channel"))
    user = args.required("user")
    if user not in channel.members:
        raise ApiError("user_not_in_channel")
    text, blocks = _content(ws, args)
    stamp = ws.state.stamps.next()
    thread = args.text("thread_ts")
    ws.keep_ephemeral(Ephemeral(stamp, channel.id, user, text[:LONGEST_POST], blocks, thread))
    return {"message_ts": stamp}


def get_permalink(ws: Workspace, args: Arguments) -> Json:
    """chat.getPermalink: the address of a message."""
    channel = visible_channel(ws, args.required("channel"))
    message = named_message(ws, args, "message_ts", channel)
    link = f"{ws.base_url}/archives/{channel.id}/p{message.ts.replace('.', '')}"
    if message.is_reply:
        link += f"?thread_ts={message.thread_ts}&cid={channel.id}"
    return {"channel": channel.id, "permalink": link}


def _content(ws: Workspace, args: Arguments) -> tuple[str, tuple[Json, ...]]:
    text = args.text("text") or args.text("markdown_text") or ""
    blocks = args.structure("blocks", "invalid_blocks_format")
    if blocks is not None:
        check_message_blocks(blocks)
    if not text and not blocks and not _attachments(args):
        raise ApiError("no_text")
    return text, tuple(with_block_ids(blocks or [], ws.new_block_id))


def _attachments(args: Arguments) -> tuple[Json, ...]:
    given = args.structure("attachments", "invalid_attachments") or []
    if not isinstance(given, list) or len(given) > MOST_ATTACHMENTS:
        raise ApiError("invalid_attachments")
    return tuple(given)


def _thread(ws: Workspace, args: Arguments, channel: Channel) -> str | None:
    ts = args.text("thread_ts")
    if not ts:
        return None
    parent = ws.state.find_message(channel.id, ts)
    if parent is None:
        # As reported of Slack: a reply to what was deleted meanwhile surfaces in the channel.
        return None
    if parent.is_reply or parent.is_notice:
        # Slack refuses threads on its own lines; what it does with the ts of a reply it does
        # not say ("avoid using a reply's ts"), so that is refused too.
        raise ApiError("cannot_reply_to_message")
    return ts


def _metadata(args: Arguments) -> Json | None:
    metadata = args.structure("metadata", "invalid_metadata_format")
    if not metadata:
        return None
    well_formed = isinstance(metadata, dict) and isinstance(metadata.get("event_type"), str)
    if not well_formed or not isinstance(metadata.get("event_payload"), dict):
        raise ApiError("invalid_metadata_schema")
    return {"event_type": metadata["event_type"], "event_payload": metadata["event_payload"]}
