"""The pitching record: the lines people typed and what was read from them."""

from datetime import date, datetime
from enum import StrEnum
from typing import Any

from sqlmodel import JSON, Field, Index, UniqueConstraint

from core.model.base import Stored


class LineState(StrEnum):
    """What became of a typed line."""

    READ = "read"
    ASKED = "asked"  # part of it waits for an answer
    TALK = "talk"  # no log
    QUESTION = "question"  # no log, but something the log can answer
    NOT_READ = "not read"  # kept as typed, nothing stored
    NOT_ALLOWED = "not allowed"  # the author may not log for that pitcher
    STRANGER = "stranger"  # the author is on no team
    ORDER = "order"  # the staff set or lifted a limit
    UNDONE = "undone"  # taken out of the record by hand


class Feeling(StrEnum):
    """What a line says of the arm or the body."""

    PAIN = "pain"
    SORE = "sore"
    TIRED = "tired"
    NOT_TIRED = "not tired"
    NO_PAIN = "no pain"


class JoinedAs(StrEnum):
    """What an outing is to an earlier one of the same pitcher and day that it joins."""

    PART = "part"  # it adds to the earlier one, or carries its count on
    SAME = "same"  # another person's log of the same outing: not counted twice
    OPEN = "open"  # asked about: until answered it is not added up, but the larger owes rest


class AuditAction(StrEnum):
    """What a change did."""

    RECORDED = "recorded"
    CORRECTED = "corrected"
    WITHDRAWN = "withdrawn"
    DELETED = "deleted"


#: How the `ts` of a line begins that was filled in, not typed: no message stands in Slack.
FORM_TS = "form/"


class Line(Stored, table=True):
    """One message as typed, kept whether it was read or not.

    The key (workspace, channel, ts) makes recording idempotent in the database itself;
    `entries` is the newest reading, so that an edit can be compared with it.
    """

    __table_args__ = (
        UniqueConstraint("workspace_id", "channel", "ts"),
        # What waits for an answer is looked for among all lines of a team.
        Index("ix_line_team_id_state", "team_id", "state"),
    )

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    channel: str
    ts: str
    thread_ts: str | None = None
    direct: bool = False
    author_slack_id: str
    author_id: int | None = Field(default=None, foreign_key="person.id", index=True)
    team_id: int | None = Field(default=None, foreign_key="team.id")
    text: str
    posted_at: datetime
    received_at: datetime
    edited_ts: str | None = None
    deleted_at: datetime | None = None
    state: str = LineState.TALK
    entries: list[dict[str, Any]] = Field(default_factory=list, sa_type=JSON)
    #: What waits for an answer or was refused: what it is, and the words it stands on.
    questions: list[dict[str, Any]] = Field(default_factory=list, sa_type=JSON)
    #: What people answered; it is taken into account whenever the line is read again.
    answers: list[dict[str, Any]] = Field(default_factory=list, sa_type=JSON)


class Outing(Stored, table=True):
    """What one pitcher threw on one local day, from one entry of one line.

    Counts are whole numbers or null where the line did not say. `waiting` names the fields
    that wait for an answer; an outing with any is left out of the mix, and rest treats a
    missing count as uncounted. `withdrawn_at` keeps the row and takes it out of every sum.
    """

    __table_args__ = (UniqueConstraint("line_id", "slot"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    line_id: int = Field(foreign_key="line.id", index=True)
    #: `pitcher id/n`: the n-th entry about that pitcher in the line.
    slot: str
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    team_id: int | None = Field(default=None, foreign_key="team.id")
    on: date = Field(index=True)
    kind: str | None = None
    pitches: int | None = None
    breaking: int | None = None
    curve: int | None = None
    slider: int | None = None
    changeup: int | None = None
    fastball: int | None = None
    strikes: int | None = None
    breaking_strikes: int | None = None
    outs: int | None = None
    caught_outs: int | None = None
    effort: int | None = None
    last_batter_from: int | None = None
    game: int | None = None
    about: bool = False
    waiting: list[str] = Field(default_factory=list, sa_type=JSON)
    #: The earlier outing that this one is a part of, or the same as.
    joins: int | None = Field(default=None, foreign_key="outing.id", index=True)
    joined_as: str | None = None
    withdrawn_at: datetime | None = None
    #: Withdrawn for want of consent: it comes back with consent, if its line still says it.
    kept_back: bool = False


class PainReport(Stored, table=True):
    """What a line says of how the arm or body feels, "no pain" included.

    `severity` is the number typed (0-10), never an estimate.
    """

    __table_args__ = (UniqueConstraint("line_id", "slot"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    line_id: int = Field(foreign_key="line.id", index=True)
    slot: str
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    on: date
    feeling: str
    site: str | None = None
    severity: int | None = None
    side: str | None = None
    when: str | None = None
    withdrawn_at: datetime | None = None
    #: The day on which the family last said that it is not gone yet.
    not_gone_on: date | None = None


class AuditEntry(Stored, table=True):
    """Who changed what, when, from what to what."""

    __table_args__ = (
        # The history of a team's settings looks for a few subjects among all lines' outings.
        Index("ix_auditentry_workspace_id_subject", "workspace_id", "subject"),
    )

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    at: datetime
    by_slack_id: str
    line_id: int | None = Field(default=None, foreign_key="line.id", index=True)
    subject: str
    subject_id: int
    action: str
    before: dict[str, Any] = Field(default_factory=dict, sa_type=JSON)
    after: dict[str, Any] = Field(default_factory=dict, sa_type=JSON)
