"""Who does not want to be written to, and what the staff wrote to families."""

from datetime import datetime

from sqlmodel import Field, UniqueConstraint

from core.model.base import Stored


class OptOut(Stored, table=True):
    """A wish not to be written to; once ended it stays on file.

    With a pitcher it is his guardian's wish for him: nothing goes to him, and what would have
    gone to him goes to that guardian alone. Without one it is somebody's own wish to get no
    more reminders. Nothing that happens to its line ends it.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    person_id: int = Field(foreign_key="person.id", index=True)
    pitcher_id: int | None = Field(default=None, foreign_key="pitcher.id", index=True)
    line_id: int = Field(foreign_key="line.id", index=True)
    since: datetime
    ended_at: datetime | None = None
    #: The line that ended it.
    ended_by: int | None = Field(default=None, foreign_key="line.id")


class FamilyMessage(Stored, table=True):
    """What somebody of the staff wrote to a family about a report of pain; kept as written."""

    __table_args__ = (UniqueConstraint("workspace_id", "origin"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    #: The view in which it was written, so that one submission is one message.
    origin: str
    line_id: int = Field(foreign_key="line.id", index=True)
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    person_id: int = Field(foreign_key="person.id", index=True)
    text: str
    written_at: datetime
