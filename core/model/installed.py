"""What installing the app leaves: the bot's token in a workspace, and installs under way."""

from datetime import datetime

from sqlmodel import Field

from core.model.base import Stored


class BotToken(Stored, table=True):
    """The token that Slack gave for the bot in a workspace; the newest, and never shown."""

    workspace_id: str = Field(foreign_key="workspace.id", primary_key=True)
    token: str = Field(repr=False)
    bot_id: str
    bot_user_id: str
    app_id: str
    #: What the token may do, as Slack granted it: names of scopes between commas.
    scopes: str
    #: The account of whoever installed the app.
    installed_by: str
    installed_at: datetime


class InstallState(Stored, table=True):
    """An install that somebody began; whoever comes back from Slack with its state uses it up.

    The state itself is known to that browser alone: here stands its SHA-256.
    """

    digest: str = Field(primary_key=True)
    expires_at: datetime = Field(index=True)
