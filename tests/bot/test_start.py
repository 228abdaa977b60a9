"""Starting with tokens that do not work: one clear sentence and status 2."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from bot.local.server import StandIn
from bot.local.workspace import Workspace

ROOT = Path(__file__).parent.parent.parent


@pytest.fixture
def surroundings(tmp_path: Path) -> dict[str, str]:
    """The environment of a process that has no Slack variables of ours."""
    kept = {k: v for k, v in os.environ.items() if not k.startswith(("SLACK_", "SPINKEEPER_"))}  # noqa: TID251 - handed on to a child process
    return kept | {"SPINKEEPER_DATABASE_URL": f"sqlite:///{tmp_path}/bot.sqlite3"}


def start(environment: dict[str, str], *arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "bot.cli", *arguments] if arguments else
        [sys.executable, "-m", "bot"],
        cwd=ROOT, env=environment, capture_output=True, text=True, timeout=60,
        stdin=subprocess.DEVNULL, check=False,
    )  # fmt: skip


def test_a_missing_token_is_one_sentence_and_status_2(surroundings: dict[str, str]) -> None:
    ended = start(surroundings | {"SLACK_APP_TOKEN": "xapp-1"})

    assert ended.returncode == 2
    assert ended.stderr.startswith("SLACK_BOT_TOKEN is missing:")
    assert len(ended.stderr.strip().splitlines()) == 1


def test_a_wrong_bot_token_is_one_sentence_and_status_2(
    surroundings: dict[str, str], stand_in: StandIn
) -> None:
    tokens = {"SLACK_BOT_TOKEN": "xoxb-wrong", "SLACK_APP_TOKEN": "xapp-wrong"}

    ended = start(surroundings | tokens | {"SLACK_API_URL": stand_in.api_url})

    assert ended.returncode == 2
    assert "Slack does not accept SLACK_BOT_TOKEN (invalid_auth)" in ended.stderr
    assert len(ended.stderr.strip().splitlines()) == 1


def test_a_wrong_app_token_is_one_sentence_and_status_2(
    surroundings: dict[str, str], ws: Workspace
) -> None:
    tokens = {"SLACK_BOT_TOKEN": ws.bot_token, "SLACK_APP_TOKEN": "xapp-wrong"}

    ended = start(surroundings | tokens | {"SLACK_API_URL": ws.api_url})

    assert ended.returncode == 2
    assert "Slack does not accept SLACK_APP_TOKEN (invalid_auth)" in ended.stderr
    assert len(ended.stderr.strip().splitlines()) == 1


def test_slack_out_of_reach_is_one_sentence_and_status_2(surroundings: dict[str, str]) -> None:
    tokens = {"SLACK_BOT_TOKEN": "xoxb-1", "SLACK_APP_TOKEN": "xapp-1"}

    ended = start(surroundings | tokens | {"SLACK_API_URL": "http://127.0.0.1:9/api/"})

    assert ended.returncode == 2
    assert ended.stderr.startswith("Slack cannot be reached")


def test_a_database_address_that_is_none_is_named(
    surroundings: dict[str, str], ws: Workspace
) -> None:
    tokens = {"SLACK_BOT_TOKEN": ws.bot_token, "SLACK_APP_TOKEN": ws.app_token}
    wrong = {"SPINKEEPER_DATABASE_URL": "nonsense", "SLACK_API_URL": ws.api_url}

    ended = start(surroundings | tokens | wrong)

    assert ended.returncode == 2
    assert "SPINKEEPER_DATABASE_URL is no address of a database" in ended.stderr
