"""One schedule of one team that is due."""

from dataclasses import dataclass
from datetime import date, datetime
from zoneinfo import ZoneInfo

from core.model import Team, TeamSchedule, key


@dataclass(frozen=True, slots=True)
class Due:
    """What is due: `at` is the instant (UTC), `week` the period of its key.

    That is the Monday of its week, or for what falls due each day the day itself.
    """

    team: Team
    schedule: TeamSchedule
    at: datetime
    week: date

    @property
    def slot(self) -> str:
        """The natural key: what, for whom, for which week."""
        return f"{self.schedule.kind}/team/{key(self.team)}/{self.week}"

    @property
    def on(self) -> date:
        """The local day."""
        return self.at.astimezone(ZoneInfo(self.team.time_zone)).date()
