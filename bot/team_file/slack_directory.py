"""The directory of a real workspace: users.list and conversations.list, page by page."""

from collections.abc import Callable, Iterator
from typing import Any

from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError
from slack_sdk.web import SlackResponse

from bot.team_file.directory import ListedDirectory, SlackChannel, SlackPerson
from bot.team_file.problems import DirectoryError
from core.model import Workspace

#: Slack recommends at most 200 entries a page.
PAGE = 200


def read_directory(client: WebClient) -> ListedDirectory:
    """Everybody with an account and every channel that the bot can see.

    Private channels are listed only where the bot is a member. Raises `DirectoryError`
    when Slack refuses.
    """
    people = _pages(lambda: client.users_list(limit=PAGE), "members")
    channels = _pages(
        lambda: client.conversations_list(
            limit=PAGE, types="public_channel,private_channel", exclude_archived=True
        ),
        "channels",
    )
    return ListedDirectory(
        [_person(member) for member in people if not _is_left_out(member)],
        [_channel(channel) for channel in channels],
    )


def signed_in_workspace(client: WebClient) -> Workspace:
    """The workspace that the bot's token belongs to (auth.test), not yet stored.

    Raises `DirectoryError` when Slack refuses the token.
    """
    try:
        answer = client.auth_test()
    except SlackApiError as refused:
        raise _refusal(refused) from refused
    return Workspace(id=answer["team_id"], name=answer["team"], bot_user_id=answer["user_id"])


def _pages(call: Callable[[], SlackResponse], items: str) -> Iterator[dict[str, Any]]:
    try:
        for page in call():
            yield from page[items]
    except SlackApiError as refused:
        raise _refusal(refused) from refused


def _refusal(refused: SlackApiError) -> DirectoryError:
    code = refused.response.get("error", "unknown error")
    needed = refused.response.get("needed")
    hint = f" Give the app the scope {needed} and install it again." if needed else ""
    return DirectoryError(f"Slack refused the request: {code}.{hint} Nothing was written.")


def _is_left_out(member: dict[str, Any]) -> bool:
    return bool(member.get("deleted") or member.get("is_bot") or member["id"] == "USLACKBOT")


def _person(member: dict[str, Any]) -> SlackPerson:
    profile = member.get("profile", {})
    name = profile.get("real_name") or member.get("real_name") or member.get("name", "")
    return SlackPerson(
        id=member["id"],
        name=name,
        handle=member.get("name", ""),
        display_name=profile.get("display_name", ""),
        email=profile.get("email") or "",
    )


def _channel(channel: dict[str, Any]) -> SlackChannel:
    return SlackChannel(
        id=channel["id"],
        name=channel["name"],
        private=channel.get("is_private"),
        joined=channel.get("is_member"),
    )
