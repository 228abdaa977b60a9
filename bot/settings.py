"""The one place that reads the environment."""

from pathlib import Path
from typing import Literal

from platformdirs import user_data_path
from pydantic import Field, SecretStr, ValidationError
from pydantic_settings import BaseSettings, SettingsConfigDict

Transport = Literal["socket", "http", "local"]


class SettingsError(Exception):
    """The environment does not say what to do; the message is one sentence for a person."""


class Settings(BaseSettings):
    """The environment, typed. Secrets never appear in its text form."""

    model_config = SettingsConfigDict(env_ignore_empty=True, populate_by_name=True)

    bot_token: SecretStr | None = Field(default=None, validation_alias="SLACK_BOT_TOKEN")
    app_token: SecretStr | None = Field(default=None, validation_alias="SLACK_APP_TOKEN")
    signing_secret: SecretStr | None = Field(default=None, validation_alias="SLACK_SIGNING_SECRET")
    client_id: str | None = Field(default=None, validation_alias="SLACK_CLIENT_ID")
    client_secret: SecretStr | None = Field(default=None, validation_alias="SLACK_CLIENT_SECRET")
    api_url: str = Field(default="https://slack.com/api/", validation_alias="SLACK_API_URL")
    database_url: str = Field(default="", validation_alias="SPINKEEPER_DATABASE_URL")
    rulebooks: Path | None = Field(default=None, validation_alias="SPINKEEPER_RULEBOOKS")
    port: int = Field(default=3000, ge=0, le=65535, validation_alias="SPINKEEPER_PORT")

    @property
    def transport(self) -> Transport:
        """How to reach Slack; `SettingsError` when the tokens do not fit together."""
        if (self.client_id is None) != (self.client_secret is None):
            lacks = "SLACK_CLIENT_ID" if self.client_id is None else "SLACK_CLIENT_SECRET"
            raise SettingsError(
                f"{lacks} is missing: copy the app's client id and client secret, both of them, "
                "from your app's pages, or unset the other."
            )
        if self.bot_token is None:
            if self.client_id is not None:
                return self._without_a_token()
            if self.app_token is None and self.signing_secret is None:
                return "local"
            raise SettingsError(
                "SLACK_BOT_TOKEN is missing: copy the bot token (it begins with xoxb-) from your "
                "app's OAuth page, or unset the other Slack variables to run without Slack."
            )
        if self.app_token is not None:
            return "socket"
        if self.signing_secret is not None:
            return "http"
        raise SettingsError(
            "SLACK_BOT_TOKEN alone is not enough: set SLACK_APP_TOKEN (xapp-...) for Socket "
            "Mode, or SLACK_SIGNING_SECRET to serve HTTP."
        )

    def _without_a_token(self) -> Transport:
        """The token comes when somebody installs the app, which is done over HTTP."""
        if self.signing_secret is None:
            raise SettingsError(
                "SLACK_SIGNING_SECRET is missing: the app is installed over HTTP, which needs it. "
                "Copy it from your app's pages."
            )
        return "http"


def load_settings() -> Settings:
    """The settings of this process; `SettingsError` names the variable that is wrong."""
    try:
        return Settings()
    except ValidationError as wrong:
        named = ", ".join(str(error["loc"][0]) for error in wrong.errors())
        raise SettingsError(f"{named} has a value that cannot be used; see README.") from wrong


def database_url(settings: Settings) -> str:
    """The database to use: the one named, else a SQLite file in the user's data folder."""
    if settings.database_url:
        return settings.database_url
    folder = user_data_path("spinkeeper", ensure_exists=True)
    folder.chmod(0o700)  # what minors typed, and the bot's token, are for this account alone
    return f"sqlite:///{folder / 'spinkeeper.sqlite3'}"
