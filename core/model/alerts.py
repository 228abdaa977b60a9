"""What the coach wants to hear of; what was raised, when, on which figures, seen by whom."""

from datetime import date, datetime
from enum import StrEnum
from typing import Any

from sqlmodel import JSON, Field, UniqueConstraint

from core.model.base import Stored


class ThresholdSetting(Stored, table=True):
    """One threshold as the staff set it by a line: for a team, or for one pitcher on it.

    The newest row that is not withdrawn holds, so the rows are the history too. `value` none
    is off; with `is_default` the row gives the threshold back to the team, or to its default.
    """

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    pitcher_id: int | None = Field(default=None, foreign_key="pitcher.id", index=True)
    key: str
    value: int | None = None
    is_default: bool = False
    line_id: int = Field(foreign_key="line.id", index=True)
    set_by: int = Field(foreign_key="person.id")
    set_at: datetime
    withdrawn_at: datetime | None = None


class AlertState(StrEnum):
    """What became of an alert."""

    STANDING = "standing"
    RETURNED = "returned"  # it held when it was raised, and came back since
    TAKEN_BACK = "taken back"  # by the record as it is now it never held


class Alert(Stored, table=True):
    """One crossing of one threshold by one pitcher, in one team; never deleted."""

    __table_args__ = (UniqueConstraint("team_id", "pitcher_id", "key", "episode"),)

    id: int | None = Field(default=None, primary_key=True)
    workspace_id: str = Field(foreign_key="workspace.id", index=True)
    team_id: int = Field(foreign_key="team.id", index=True)
    pitcher_id: int = Field(foreign_key="pitcher.id", index=True)
    key: str
    #: The outing, or the day since which the threshold has been crossed.
    episode: str
    state: str = AlertState.STANDING
    figures: dict[str, Any] = Field(default_factory=dict, sa_type=JSON)
    outings: list[int] = Field(default_factory=list, sa_type=JSON)
    #: The team's local day on which it was raised.
    raised_on: date
    raised_at: datetime
    changed_at: datetime


class AlertSeen(Stored, table=True):
    """Who of the staff has seen an alert, and when first."""

    alert_id: int = Field(foreign_key="alert.id", primary_key=True)
    person_id: int = Field(foreign_key="person.id", primary_key=True)
    at: datetime
