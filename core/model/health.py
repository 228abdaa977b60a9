"""Arms that must not throw, and what adults recorded of a licensed clinician's clearance."""

from datetime import date, datetime
from typing import Any

from sqlmodel import JSON, Field, UniqueConstraint

from core.model.base import Stored


class Hold(Stored, table=True):
    """No throwing until an adult records a clinician's clearance.

    Nothing that happens to the line that raised it, or to its report, changes this row.
    """

    __table_args__ = (UniqueConstraint("line_id", "pitcher_id"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    line_id: int = Field(foreign_key="line.id", index=True)
    #: The day that the report is about.
    on: date
    reason: str
    raised_at: datetime


class Clearance(Stored, table=True):
    """An adult's record that a licensed clinician cleared an arm: name, date and limits.

    `said_at` is when the adult wrote it. Withdrawn with its line; then what it ended stands
    again.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    line_id: int = Field(foreign_key="line.id", index=True)
    clinician: str
    on: date
    limits: list[dict[str, Any]] = Field(default_factory=list, sa_type=JSON)
    recorded_by: int = Field(foreign_key="person.id")
    said_at: datetime
    withdrawn_at: datetime | None = None
