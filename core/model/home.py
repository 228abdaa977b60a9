"""Who has opened the Home tab, and which page of it stands there."""

from datetime import datetime

from sqlmodel import Field

from core.model.base import Stored


class HomeTab(Stored, table=True):
    """Somebody's Home tab; whoever has opened it once is shown what changes since.

    Anybody in the workspace may open it, so it belongs to a Slack account, not to a person that
    a team knows.
    """

    workspace_id: str = Field(foreign_key="workspace.id", primary_key=True)
    slack_id: str = Field(primary_key=True)
    page: int = 1
    #: When it was opened, or turned to another page, last.
    opened_at: datetime
