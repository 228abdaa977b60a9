"""The directory of a workspace as Slack's Web API gives it, page by page."""

from collections.abc import Iterator
from datetime import UTC, datetime

import pytest
from slack_sdk import WebClient

from bot.local.server import StandIn
from bot.local.workspace import Workspace
from bot.team_file import (
    DirectoryError,
    ListedDirectory,
    SlackPerson,
    read_directory,
    signed_in_workspace,
)


@pytest.fixture
def ws() -> Iterator[Workspace]:
    """A stand-in workspace of this test alone."""
    with StandIn() as server:
        yield server.new_workspace(lambda: datetime(2026, 5, 4, 12, 0, tzinfo=UTC))


def client_of(ws: Workspace) -> WebClient:
    """The app's client, without the SDK's own retries."""
    return WebClient(ws.bot_token, base_url=ws.api_url, retry_handlers=[])


def test_people_beyond_the_first_page_are_found(ws: Workspace) -> None:
    people = [ws.add_person(f"Player {n}") for n in range(205)]

    directory = read_directory(client_of(ws))

    found = directory.person("Player 204")
    assert found is not None
    assert (found.id, found.name) == (people[204].id, "Player 204")
    assert directory.person(f"@{people[3].name}") == directory.person(people[3].id)


def test_bots_are_no_people(ws: Workspace) -> None:
    directory = read_directory(client_of(ws))

    assert directory.person(ws.bot.id) is None
    assert directory.person("Slackbot") is None


def test_channels_say_whether_they_are_private_and_joined(ws: Workspace) -> None:
    rae = ws.add_person("Rae Coach")
    ws.add_channel("open-log", [rae], bot=False)
    staff = ws.add_channel("staff", [rae], private=True)

    directory = read_directory(client_of(ws))

    log = directory.channel("#open-log")
    found = directory.channel("staff")
    assert log is not None
    assert found is not None
    assert (log.private, log.joined) == (False, False)
    assert (found.id, found.private, found.joined) == (staff.id, True, True)


def test_a_missing_scope_is_named(ws: Workspace) -> None:
    ws.grant(["chat:write"])

    with pytest.raises(DirectoryError, match=r"missing_scope.*users:read"):
        read_directory(client_of(ws))


def test_the_workspace_is_the_tokens(ws: Workspace) -> None:
    found = signed_in_workspace(client_of(ws))

    assert (found.id, found.bot_user_id) == (ws.team_id, ws.bot.id)


def test_people_answer_to_a_mention_and_to_an_address_that_slack_gives() -> None:
    june = SlackPerson("UJUNE", "June Vale", "june", email="june@club.example")
    directory = ListedDirectory([june, SlackPerson("UBO", "Bo Hart", "bo")], [])

    for reference in ("<@UJUNE>", "<@UJUNE|june>", "June@Club.example", "@june"):
        assert directory.person(reference) == june
    assert directory.person("other@club.example") is None
