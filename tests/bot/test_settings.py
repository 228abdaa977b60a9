from pathlib import Path

import pytest
from pydantic import SecretStr

from bot.settings import Settings, SettingsError, database_url

PAIR = {"client_id": "1.2", "client_secret": "c"}


def settings(**given: str) -> Settings:
    secrets = {
        name: value if name == "client_id" else SecretStr(value) for name, value in given.items()
    }
    names = ("bot_token", "app_token", "signing_secret", "client_id", "client_secret")
    empty = dict.fromkeys(names)
    return Settings.model_validate(empty | secrets)


@pytest.mark.parametrize(
    ("given", "transport"),
    [
        ({}, "local"),
        ({"bot_token": "xoxb-1", "app_token": "xapp-1"}, "socket"),
        ({"bot_token": "xoxb-1", "signing_secret": "s"}, "http"),
        ({"bot_token": "xoxb-1", "app_token": "xapp-1", "signing_secret": "s"}, "socket"),
        ({"signing_secret": "s", **PAIR}, "http"),
        ({"bot_token": "xoxb-1", "signing_secret": "s", **PAIR}, "http"),
        ({"bot_token": "xoxb-1", "app_token": "xapp-1", **PAIR}, "socket"),
    ],
)
def test_the_tokens_decide_how_slack_is_reached(given: dict[str, str], transport: str) -> None:
    assert settings(**given).transport == transport


@pytest.mark.parametrize(
    ("given", "named"),
    [
        ({"app_token": "xapp-1"}, "SLACK_BOT_TOKEN is missing"),
        ({"signing_secret": "s"}, "SLACK_BOT_TOKEN is missing"),
        ({"bot_token": "xoxb-1"}, "SLACK_APP_TOKEN"),
        (PAIR, "SLACK_SIGNING_SECRET is missing"),
        ({"app_token": "xapp-1", **PAIR}, "SLACK_SIGNING_SECRET is missing"),
        ({"signing_secret": "s", "client_id": "1.2"}, "SLACK_CLIENT_SECRET is missing"),
        ({"bot_token": "xoxb-1", "client_secret": "c"}, "SLACK_CLIENT_ID is missing"),
    ],
)
def test_tokens_that_do_not_fit_are_named(given: dict[str, str], named: str) -> None:
    with pytest.raises(SettingsError, match=named):
        _ = settings(**given).transport


def test_secrets_never_show_in_the_settings_text() -> None:
    assert "xoxb-secret" not in repr(settings(bot_token="xoxb-secret", app_token="xapp-secret"))


def test_the_folder_of_the_database_is_for_this_account_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))

    url = database_url(Settings())

    assert url == f"sqlite:///{tmp_path}/spinkeeper/spinkeeper.sqlite3"
    assert (tmp_path / "spinkeeper").stat().st_mode & 0o777 == 0o700


def test_the_database_is_the_one_named() -> None:
    named = Settings.model_validate({"SPINKEEPER_DATABASE_URL": "sqlite:////tmp/x.sqlite3"})

    assert database_url(named) == "sqlite:////tmp/x.sqlite3"
