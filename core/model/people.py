"""Workspaces, teams and the people in them.

Most pitchers are minors: what is stored about one is the least that the rules of the
trade need (a birth date, because every limit depends on age) and who may act for him.
"""

from datetime import date, datetime
from enum import StrEnum

from sqlmodel import JSON, Field, UniqueConstraint

from core.model.base import Stored


class Role(StrEnum):
    """What a person does on a team; one person may hold several roles."""

    COACH = "coach"
    ASSISTANT = "assistant"
    SCOREKEEPER = "scorekeeper"
    PITCHER = "pitcher"
    GUARDIAN = "guardian"


STAFF_ROLES = frozenset({Role.COACH, Role.ASSISTANT})


class BreakingPitch(StrEnum):
    """The breaking ball a pitcher throws."""

    CURVEBALL = "curveball"
    SLIDER = "slider"
    NONE_YET = "none"


class PitchCaller(StrEnum):
    """Who chooses the pitches: a pitcher is not told off for what the dugout called."""

    PITCHER = "pitcher"
    DUGOUT = "dugout"


class Workspace(Stored, table=True):
    """One Slack workspace; its id is Slack's (`T…`)."""

    id: str = Field(primary_key=True)
    name: str = ""
    bot_user_id: str = ""
    #: Ids of the rule books in the club's own folder, as the bot found them when it started.
    own_books: list[str] | None = Field(default=None, sa_type=JSON)
    #: When the bot last started with a token that works.
    opened_at: datetime | None = None
    #: Since when nothing is sent and no schedule falls due.
    stopped_at: datetime | None = None
    #: The day on which all of its data is deleted, once the app was taken away.
    delete_on: date | None = None


class Team(Stored, table=True):
    """A team, the two channels it uses and the published books that bind it."""

    __table_args__ = (UniqueConstraint("workspace_id", "name"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    name: str
    time_zone: str
    log_channel: str
    staff_channel: str
    #: Such as 12U; it is shown, and decides nothing: ages do.
    age_group: str = ""
    rule_books: list[str] = Field(default_factory=list, sa_type=JSON)
    #: Youngest age with a Slack account of one's own (years). A club may raise it, never
    #: lower it: Slack's Developer Policy does not allow use by children under 16.
    account_age: int = 16
    #: Quiet hours of the families (local hours): a club may lengthen 20-8, never shorten it.
    quiet_from: int = 20
    quiet_to: int = 8
    season_start: date | None = None
    #: What the coach allows on a rest day, by activity, in the coach's own words.
    rest_day: dict[str, str] = Field(default_factory=dict, sa_type=JSON)
    #: The newest local day on which the Home tabs were brought to that day.
    homes_on: date | None = None


class Person(Stored, table=True):
    """Somebody with a Slack account, or a guardian on file without one (`slack_id` null)."""

    __table_args__ = (UniqueConstraint("workspace_id", "slack_id"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    slack_id: str | None = None
    #: The id of an account that was closed; nothing is written to it.
    former_slack_id: str | None = None
    name: str


class Membership(Stored, table=True):
    """One role of one person on one team."""

    __table_args__ = (UniqueConstraint("team_id", "person_id", "role"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    person_id: int = Field(foreign_key="person.id", index=True)
    role: str


class Pitcher(Stored, table=True):
    """An arm whose record is kept.

    `person_id` is null for a pitcher without an account of his own: guardians and staff
    log for him. `consent_on` is the day a guardian (or the adult pitcher) agreed to the
    record; without it nothing is counted.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    person_id: int | None = Field(default=None, foreign_key="person.id", index=True)
    name: str
    also_called: list[str] = Field(default_factory=list, sa_type=JSON)
    birth_date: date
    throws: str = "R"
    breaking_pitch: str = BreakingPitch.NONE_YET
    consent_on: date | None = None
    pitch_caller: str = PitchCaller.PITCHER
    #: For high-school books, which go by grade or by level of play.
    grade: int | None = None
    level: str | None = None
    #: Books that bind this pitcher beside his teams' (a school's, for instance).
    rule_books: list[str] = Field(default_factory=list, sa_type=JSON)


class PitcherTeam(Stored, table=True):
    """A pitcher on a team; the same arm may throw for several."""

    pitcher_id: int = Field(foreign_key="pitcher.id", primary_key=True)
    team_id: int = Field(foreign_key="team.id", primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)


class GuardianLink(Stored, table=True):
    """A guardian of a pitcher."""

    person_id: int = Field(foreign_key="person.id", primary_key=True)
    pitcher_id: int = Field(foreign_key="pitcher.id", primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
