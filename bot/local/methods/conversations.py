"""conversations.*: channels, who is in them, and what was said there."""

from collections.abc import Iterable
from typing import Final

from bot.local.arguments import Arguments
from bot.local.errors import ApiError
from bot.local.methods.access import (
    direct_message,
    joined_channel,
    need_kind_scope,
    visible_channel,
)
from bot.local.paging import next_cursor, page
from bot.local.records import Channel, Json, Kind, Message
from bot.local.shapes import channel_json, message_json
from bot.local.stamps import moment_of
from bot.local.workspace import Workspace

TYPES: Final[dict[str, Kind]] = {
    "public_channel": "public",
    "private_channel": "private",
    "im": "im",
    "mpim": "mpim",
}
MOST_IN_GROUP_DM: Final = 8


def open_(ws: Workspace, args: Arguments) -> Json:
    """conversations.open: the DM with one user, or the group DM with two to eight."""
    if channel_id := args.text("channel"):
        return {"channel": {"id": visible_channel(ws, channel_id).id}}
    users = _users(args)
    for user in users:
        person = ws.state.people.get(user)
        if person is None:
            raise ApiError("user_not_found")
        if person.deleted:
            raise ApiError("user_disabled")
    need_kind_scope(ws, "im" if len(users) == 1 else "mpim", "write")
    if len(users) == 1:
        return {"channel": {"id": direct_message(ws, users[0]).id}}
    return {"channel": {"id": ws.state.direct("mpim", (*users, ws.bot.id)).id}}


def list_(ws: Workspace, args: Arguments) -> Json:
    """conversations.list: the conversations that the app may know of."""
    wanted = (args.text("types") or "public_channel").split(",")
    if strangers := [t for t in wanted if t not in TYPES]:
        raise ApiError("invalid_types", f"[ERROR] unknown: {', '.join(strangers)}")
    kinds = {TYPES[t] for t in wanted}
    for kind in kinds:
        need_kind_scope(ws, kind, "read")
    known = [c for c in ws.state.channels.values() if c.kind in kinds and _known(ws, c)]
    if args.flag("exclude_archived"):
        known = [c for c in known if not c.archived]
    some, cursor = page(known, args)
    shown = [channel_json(c, ws.team_id, ws.bot.id) for c in some]
    return {"channels": shown} | next_cursor(cursor)


def info(ws: Workspace, args: Arguments) -> Json:
    """conversations.info: one conversation."""
    channel = _readable(ws, args)
    shown = channel_json(channel, ws.team_id, ws.bot.id)
    if not args.flag("include_num_members"):
        shown.pop("num_members", None)
    return {"channel": shown}


def members(ws: Workspace, args: Arguments) -> Json:
    """conversations.members: the user ids in a conversation."""
    channel = _readable(ws, args)
    some, cursor = page(channel.members, args)
    return {"members": some} | next_cursor(cursor)


def history(ws: Workspace, args: Arguments) -> Json:
    """conversations.history: messages outside threads, newest first."""
    channel = _with_history(ws, args)
    top = [m for m in ws.state.in_channel(channel.id) if not _only_in_thread(m)]
    some, cursor = page(list(reversed(_within(top, args))), args)
    return _messages(ws, args, some, cursor)


def replies(ws: Workspace, args: Arguments) -> Json:
    """conversations.replies: a message and its thread, oldest first."""
    channel = _with_history(ws, args)
    parent = ws.state.find_message(channel.id, args.required("ts"))
    if parent is None:
        raise ApiError("thread_not_found")
    if parent.is_reply:
        return _messages(ws, args, [parent], "")
    below = _within(ws.state.replies_to(parent), args)
    some, cursor = page([parent, *below], args, default=1000)
    return _messages(ws, args, some, cursor)


def _users(args: Arguments) -> list[str]:
    given = (
        args.structure("users", "invalid_arguments")
        if "[" in str(args.given.get("users"))
        else args.given.get("users")
    )
    names = given if isinstance(given, list) else str(given or "").split(",")
    users = list(dict.fromkeys(str(n).strip() for n in names if str(n).strip()))
    if not users:
        raise ApiError("users_list_not_supplied")
    if len(users) > MOST_IN_GROUP_DM:
        raise ApiError("too_many_users")
    return users


def _readable(ws: Workspace, args: Arguments) -> Channel:
    channel = visible_channel(ws, args.required("channel"))
    need_kind_scope(ws, channel.kind, "read")
    return channel


def _with_history(ws: Workspace, args: Arguments) -> Channel:
    channel = joined_channel(ws, args.required("channel"))
    need_kind_scope(ws, channel.kind, "history")
    return channel


def _known(ws: Workspace, channel: Channel) -> bool:
    return channel.kind == "public" or ws.bot.id in channel.members


def _only_in_thread(message: Message) -> bool:
    return message.is_reply and message.subtype != "thread_broadcast"


def _within(messages: Iterable[Message], args: Arguments) -> list[Message]:
    oldest, latest = (_moment(args, name) for name in ("oldest", "latest"))
    inclusive = args.flag("inclusive")

    def inside(message: Message) -> bool:
        at = moment_of(message.ts)
        after = oldest is None or at > oldest or (inclusive and at == oldest)
        return after and (latest is None or at < latest or (inclusive and at == latest))

    return [m for m in messages if inside(m)]


def _moment(args: Arguments, name: str) -> int | None:
    stamp = args.text(name)
    if not stamp:
        return None
    seconds, _, fraction = stamp.partition(".")
    if not seconds.isdigit() or not (fraction or "0").isdigit():
        raise ApiError(f"invalid_ts_{name}")
    return moment_of(f"{seconds}.{fraction[:6]:0<6}")


def _messages(ws: Workspace, args: Arguments, some: list[Message], cursor: str) -> Json:
    metadata = args.flag("include_all_metadata")
    shown = [message_json(ws.state, m, ws.team_id, with_metadata=metadata) for m in some]
    answer: Json = {"messages": shown, "has_more": bool(cursor)}
    return answer | (next_cursor(cursor) if cursor else {})
