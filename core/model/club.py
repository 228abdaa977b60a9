"""How a club runs itself: consent as a list of events, open matters, and work put off.

Events of consent are only ever added, so that it can be shown who agreed to what, and when.
"""

from datetime import date, datetime
from enum import StrEnum
from typing import Any

from sqlmodel import JSON, Field

from core.model.base import Stored


class ConsentAct(StrEnum):
    """What somebody said to the keeping of a pitcher's record."""

    AGREED = "agreed"
    DECLINED = "declined"
    WITHDRAWN = "withdrawn"


class ConsentWay(StrEnum):
    """How it was said."""

    SLACK = "slack"  # by the person's own button or word
    PAPER = "paper"  # on paper, recorded by the staff
    FILE = "file"  # a date in the team file


class ConsentEvent(Stored, table=True):
    """Somebody agreed to a pitcher's record, did not agree, or withdrew; never changed."""

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    act: str
    way: str
    #: The local day on which it was said.
    on: date
    at: datetime
    #: Who said so; null on paper and in a file, where `said_by` has the name.
    person_id: int | None = Field(default=None, foreign_key="person.id")
    said_by: str = ""
    #: Who of the staff recorded it, on paper.
    recorded_by: int | None = Field(default=None, foreign_key="person.id")
    line_id: int | None = Field(default=None, foreign_key="line.id", index=True)


class MatterState(StrEnum):
    """Where a matter stands."""

    OPEN = "open"
    DONE = "done"
    CANCELLED = "cancelled"


class Matter(Stored, table=True):
    """Something that waits for somebody's word: a roster to apply, a role to confirm.

    `data` is what it is about, as the kind says; `person_id` is who began it.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    kind: str = Field(index=True)
    person_id: int = Field(foreign_key="person.id", index=True)
    team_id: int | None = Field(default=None, foreign_key="team.id", index=True)
    pitcher_id: int | None = Field(default=None, foreign_key="pitcher.id", index=True)
    data: dict[str, Any] = Field(default_factory=dict, sa_type=JSON)
    state: str = MatterState.OPEN
    opened_at: datetime
    settled_at: datetime | None = None
    settled_by: int | None = Field(default=None, foreign_key="person.id")


class Errand(Stored, table=True):
    """Work that a listener must not wait for: a call to Slack, or many lines to read again.

    Written in the transaction that calls for it, claimed by a conditional update; its effects
    and `done_at` are one commit, so that it may be begun twice and is done once.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    kind: str
    data: dict[str, Any] = Field(default_factory=dict, sa_type=JSON)
    not_before: datetime
    attempts: int = 0
    done_at: datetime | None = Field(default=None, index=True)
    error: str | None = None
