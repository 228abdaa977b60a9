"""When a team hears of what, unasked, and which reminders were owed to whom."""

from datetime import date, datetime, time
from enum import StrEnum

from sqlmodel import JSON, Field, UniqueConstraint

from core.model.base import Stored


class ScheduleKind(StrEnum):
    """What is sent by the clock: once a week, or each day (`DAILY`) that has a reason."""

    MONDAY_SUMMARY = "monday summary"
    SPIN = "spin reminder"
    POST_GAME = "post-game question"


#: These fall due each day at their time; whether there is a reason is seen then.
DAILY = frozenset({ScheduleKind.POST_GAME})


class TeamSchedule(Stored, table=True):
    """When one team hears of one thing: a weekday and a local time, in the team's own zone."""

    __table_args__ = (UniqueConstraint("team_id", "kind"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    kind: str
    #: 0 is Monday, 6 is Sunday; without meaning for what falls due each day.
    weekday: int
    at: time
    is_on: bool = True
    #: Nothing that was due before this moment is made up for.
    since: datetime
    #: What the message says of its own accord: the coach's list of cues, in the coach's words.
    cues: list[str] = Field(default_factory=list, sa_type=JSON)


class DailyLook(Stored, table=True):
    """A local day on which the record of a team was looked at, for what the calendar alone moves.

    The key makes it one look a day, whichever process comes first.
    """

    team_id: int = Field(foreign_key="team.id", primary_key=True)
    on: date = Field(primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    at: datetime


class Reminder(Stored, table=True):
    """One thing that one person is reminded of; the message in `slot` may hold several.

    The key makes it one, whichever process comes first. `period` is the outing or the week
    that it is about.
    """

    __table_args__ = (UniqueConstraint("kind", "person_id", "pitcher_id", "period"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    kind: str
    person_id: int = Field(foreign_key="person.id")
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    period: str
    slot: str = Field(index=True)
