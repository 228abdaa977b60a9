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
    #: Rest days on the morning after, and on the evening before a game: each for an outing.
    REST_DAYS = "rest days"
    REST_EVENING = "rest days before a game"


#: These fall due each day at their time; whether there is a reason is seen then.
DAILY = frozenset({ScheduleKind.POST_GAME})
#: These fall due for an outing, not by themselves; the rows say at what time, and whether.
FOR_AN_OUTING = frozenset({ScheduleKind.REST_DAYS, ScheduleKind.REST_EVENING})


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
    #: A spin reminder comes so many minutes before the week's first practice on the calendar, if
    #: there is one; none: always at its own time.
    before_practice: int | None = None
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


class ScheduleSetting(Stored, table=True):
    """What one line of the staff's changed of a schedule; null columns leave things as they are.

    The row of the schedule is its default with the standing settings applied, oldest first.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    kind: str
    weekday: int | None = None
    at: time | None = None
    is_on: bool | None = None
    #: Minutes; 0 means never before a practice.
    before_practice: int | None = None
    #: A cue that was added, or taken off the list.
    cue: str | None = None
    drops_cue: bool = False
    #: Everything back to the default, the cues excepted.
    is_default: bool = False
    line_id: int = Field(foreign_key="line.id", index=True)
    set_by: int = Field(foreign_key="person.id")
    set_at: datetime
    withdrawn_at: datetime | None = None


class SpinPlan(Stored, table=True):
    """A week's spin reps, as a coach set them for a team or for one pitcher in it."""

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    pitcher_id: int | None = Field(default=None, foreign_key="pitcher.id", index=True)
    #: Sessions of catch play in a week, spin reps in each; null with `is_default`.
    sessions: int | None = None
    reps: int | None = None
    is_default: bool = False
    line_id: int = Field(foreign_key="line.id", index=True)
    set_by: int = Field(foreign_key="person.id")
    set_at: datetime
    withdrawn_at: datetime | None = None


class RestDayWord(Stored, table=True):
    """What the coach allows on a rest day for one activity; the newest word stands.

    It takes the place of what the team's file says; without words the file's stand again.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    activity: str
    words: str | None = None
    line_id: int = Field(foreign_key="line.id", index=True)
    set_by: int = Field(foreign_key="person.id")
    set_at: datetime
    withdrawn_at: datetime | None = None


class LastDayWish(Stored, table=True):
    """Whether somebody wants a second message on the last rest day; his newest word stands."""

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    person_id: int = Field(foreign_key="person.id", index=True)
    wants: bool
    line_id: int = Field(foreign_key="line.id", index=True)
    set_at: datetime
    withdrawn_at: datetime | None = None


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
