"""A team's calendar: games and practices, where they come from, and what was called off."""

from datetime import date, datetime, time
from enum import StrEnum

from sqlmodel import Field, UniqueConstraint

from core.model.base import Stored


class EntryKind(StrEnum):
    """What is on the calendar."""

    GAME = "game"
    PRACTICE = "practice"


class CalendarSource(Stored, table=True):
    """A calendar that a team's entries are read from: an https address, or a file by its name.

    An address is read again once a day until a line of the staff's, or its undoing, ends it.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    #: An https address, or `file:NAME`. A private address is a key to a calendar: never logged.
    address: str
    line_id: int | None = Field(default=None, foreign_key="line.id", index=True)
    #: Not before when it is read (again); none for a file.
    next_at: datetime | None = None
    #: Whoever reads it now has it until then.
    lease_until: datetime | None = None
    read_at: datetime | None = None
    #: Why the last try failed, as a word of `core.calendar`'s; none when it did not.
    problem: str | None = None
    games: int = 0
    practices: int = 0
    left_out: int = 0
    withdrawn_at: datetime | None = None


class CalendarEntry(Stored, table=True):
    """One game or practice on one local day.

    `at` and `until` are wall-clock times of the team's zone; an entry without `at` is for the
    whole day, or its time is not known. The key is that of RFC 5545: UID with RECURRENCE-ID
    (empty for an event that does not recur).
    """

    __table_args__ = (UniqueConstraint("team_id", "uid", "recurrence"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    kind: str
    on: date = Field(index=True)
    at: time | None = None
    until: time | None = None
    #: The opponent as typed, or what an imported calendar calls it.
    title: str = ""
    uid: str
    recurrence: str = ""
    source_id: int | None = Field(default=None, foreign_key="calendarsource.id", index=True)
    #: The line of the staff's that it stands in.
    line_id: int | None = Field(default=None, foreign_key="line.id", index=True)
    #: How often it was changed (RFC 5545, 3.8.7.4), and when it was last.
    sequence: int = 0
    changed_at: datetime
    withdrawn_at: datetime | None = None


class CalledOff(Stored, table=True):
    """An entry called off by a line of the staff's; one that moves to another day stands again."""

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    entry_id: int = Field(foreign_key="calendarentry.id", index=True)
    on: date
    line_id: int = Field(foreign_key="line.id", index=True)
    withdrawn_at: datetime | None = None


class GameAnswer(Stored, table=True):
    """Somebody's word that nobody else pitched on a team's game day; the first one stands."""

    __table_args__ = (UniqueConstraint("team_id", "on"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    on: date
    said_by: int = Field(foreign_key="person.id")
    said_at: datetime
