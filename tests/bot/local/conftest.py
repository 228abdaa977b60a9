import pytest
from slack_sdk import WebClient

from bot.local.records import Channel, Person
from bot.local.workspace import Workspace
from tests.support.workspace import client_of


@pytest.fixture
def client(ws: Workspace) -> WebClient:
    """The app's own client, the one from slack_sdk."""
    return client_of(ws)


@pytest.fixture
def rosa(ws: Workspace) -> Person:
    return ws.add_person("Rosa Delgado")


@pytest.fixture
def log(ws: Workspace, rosa: Person) -> Channel:
    return ws.add_channel("pitching-log", [rosa])
