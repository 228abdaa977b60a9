"""How people, channels and messages look as JSON, in answers and in events."""

from zoneinfo import ZoneInfo

from bot.local.records import Channel, Json, Message, Person
from bot.local.state import State


def person_json(state: State, person: Person, team_id: str) -> Json:
    """Return the `user` object of users.info and of user_change events."""
    offset = state.now().astimezone(ZoneInfo(person.tz)).utcoffset()
    return {
        "id": person.id,
        "team_id": team_id,
        "name": person.name,
        "deleted": person.deleted,
        "real_name": person.real_name,
        "tz": person.tz,
        "tz_label": person.tz,
        "tz_offset": int(offset.total_seconds()) if offset is not None else 0,
        "profile": _profile(person),
        "is_admin": person.is_admin,
        "is_owner": person.is_owner,
        "is_primary_owner": False,
        "is_restricted": False,
        "is_ultra_restricted": False,
        "is_bot": person.is_bot,
        "is_app_user": False,
        "updated": state.stamps.seconds(),
    }


def _profile(person: Person) -> Json:
    profile: Json = {
        "real_name": person.real_name,
        "real_name_normalized": person.real_name,
        "display_name": person.name,
        "display_name_normalized": person.name,
        "first_name": person.real_name.partition(" ")[0],
        "last_name": person.real_name.partition(" ")[2],
        "status_text": "",
        "status_emoji": "",
    }
    if person.is_bot:
        profile |= {"bot_id": person.bot_id, "api_app_id": person.app_id}
    return profile


def channel_json(channel: Channel, team_id: str, bot_user: str) -> Json:
    """Return the `channel` object of the conversations.* methods."""
    common: Json = {
        "id": channel.id,
        "created": channel.created,
        "is_archived": channel.archived,
        "is_im": channel.kind == "im",
        "is_mpim": channel.kind == "mpim",
        "is_private": channel.kind != "public",
        "context_team_id": team_id,
    }
    if channel.kind == "im":
        other = next((m for m in channel.members if m != bot_user), bot_user)
        return common | {"user": other, "is_user_deleted": False, "is_open": True, "priority": 0}
    return common | {
        "name": channel.name,
        "name_normalized": channel.name,
        "is_channel": channel.kind == "public",
        "is_group": channel.kind == "private",
        "is_general": False,
        "is_shared": False,
        "is_member": bot_user in channel.members,
        "num_members": len(channel.members),
        "topic": {"value": "", "creator": "", "last_set": 0},
        "purpose": {"value": "", "creator": "", "last_set": 0},
    }


def message_json(
    state: State, message: Message, team_id: str, *, with_metadata: bool = False
) -> Json:
    """Return a message as history, replies and the nested part of edit events show it."""
    shown: Json = {"type": "message"}
    if message.subtype is not None:
        shown["subtype"] = message.subtype
    if message.user is not None:
        shown["user"] = message.user
    shown |= {"text": message.text, "ts": message.ts}
    if message.is_tombstone:
        return shown | {"hidden": True} | _thread(state, message, team_id)
    if message.inviter is not None:
        shown["inviter"] = message.inviter
    if message.user is not None:
        shown["team"] = team_id
    shown |= _author(state, message, team_id)
    shown |= _contents(message)
    if with_metadata and message.metadata is not None:
        shown["metadata"] = message.metadata
    return shown | _thread(state, message, team_id)


def _author(state: State, message: Message, team_id: str) -> Json:
    if message.bot_id is None:
        return {"client_msg_id": message.client_msg_id} if message.client_msg_id else {}
    author: Json = {"bot_id": message.bot_id}
    if message.username is not None:
        author["username"] = message.username
    if message.app_id is not None and message.user is not None:
        name = state.person(message.user).real_name
        author["app_id"] = message.app_id
        author["bot_profile"] = {
            "id": message.bot_id,
            "app_id": message.app_id,
            "name": name,
            "deleted": False,
            "updated": 0,
            "icons": {},
            "team_id": team_id,
        }
    return author


def _contents(message: Message) -> Json:
    shown: Json = {}
    for name in ("blocks", "attachments", "files"):
        if items := getattr(message, name):
            shown[name] = list(items)
    if message.subtype == "file_share":
        shown |= {"upload": False, "display_as_bot": False}
    if message.edited is not None:
        shown["edited"] = {"user": message.edited.user, "ts": message.edited.ts}
    if message.reactions:
        shown["reactions"] = [
            {"name": r.name, "users": list(r.users), "count": len(r.users)}
            for r in message.reactions
        ]
    return shown


def _thread(state: State, message: Message, team_id: str) -> Json:
    if message.is_reply:
        parent = state.find_message(message.channel, message.thread_ts or "")
        thread: Json = {"thread_ts": message.thread_ts}
        if parent is not None and parent.user is not None:
            thread["parent_user_id"] = parent.user
        if parent is not None and message.subtype == "thread_broadcast":
            thread["root"] = message_json(state, parent, team_id)
        return thread
    replies = state.replies_to(message)
    if not replies:
        return {}
    authors = list(dict.fromkeys(r.user for r in replies if r.user is not None))
    return {
        "thread_ts": message.ts,
        "reply_count": len(replies),
        "reply_users_count": len(authors),
        "latest_reply": replies[-1].ts,
        "reply_users": authors,
        "is_locked": False,
        "subscribed": False,
    }
