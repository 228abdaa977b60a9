"""What changes a team's limits over the year: seasons, events and the coach's own limits."""

from datetime import date, datetime
from enum import StrEnum

from sqlmodel import JSON, Field

from core.model.base import Stored


class SeasonKind(StrEnum):
    """A part of a team's year."""

    BUILD_UP = "build-up"
    IN_SEASON = "in season"
    FALL = "fall"
    OFF = "off"
    SCHOOL_ONLY = "school record only"  # the school's books decide; the team only keeps record


class Season(Stored, table=True):
    """A part of a team's year, both days included; `rule_books` replaces the team's own."""

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    kind: str
    starts_on: date
    ends_on: date
    rule_books: list[str] | None = Field(default=None, sa_type=JSON)


class TeamEvent(Stored, table=True):
    """A tournament or a single game whose own rule books apply beside the others."""

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    name: str
    starts_on: date
    ends_on: date
    rule_books: list[str] = Field(default_factory=list, sa_type=JSON)


class CoachLimit(Stored, table=True):
    """The coach's own limit for one pitcher (pitches a day), never higher than a book's.

    It holds from `starts_on` to `ends_on`, both included; without an end, until the coach
    lifts it.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    pitches: int
    starts_on: date
    ends_on: date | None = None
    line_id: int = Field(foreign_key="line.id", index=True)
    set_by: int = Field(foreign_key="person.id")
    withdrawn_at: datetime | None = None


class OutingBook(Stored, table=True):
    """A rule book that the staff named for one pitcher's outing on one day."""

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    on: date
    rule_book: str
    line_id: int = Field(foreign_key="line.id", index=True)
    set_by: int = Field(foreign_key="person.id")
    withdrawn_at: datetime | None = None
