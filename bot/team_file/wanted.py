"""What the file asks for, with every name resolved: the one input of the plan."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from bot.team_file.year import PartOfYear
from core.model import Role

#: The roles that a team's table fills; pitchers and guardians come from the roster.
TABLE_ROLES = (Role.COACH, Role.ASSISTANT, Role.SCOREKEEPER)
#: Written after a guardian's name who is on file without an account in Slack.
NO_ACCOUNT = "(no account)"


@dataclass(frozen=True, slots=True)
class PersonRef:
    """A person by Slack id, or by name where there is no account."""

    slack_id: str | None
    name: str = field(compare=False)
    _without_account: str | None = None

    @classmethod
    def of(cls, slack_id: str | None, name: str) -> "PersonRef":
        """A person with an account is known by its id, others by name whatever its case."""
        return cls(slack_id, name, None if slack_id else name.casefold())


@dataclass(frozen=True, slots=True)
class WantedTeam:
    """A team as the file has it; `values` are columns of the table `team`."""

    values: Mapping[str, Any]
    staff: Mapping[Role, frozenset[PersonRef]]
    seasons: tuple[PartOfYear, ...] = ()
    events: tuple[PartOfYear, ...] = ()

    @property
    def name(self) -> str:
        """The team's name."""
        return str(self.values["name"])

    @property
    def log_channel(self) -> str:
        """The id of the channel in which the team logs."""
        return str(self.values["log_channel"])


@dataclass(frozen=True, slots=True)
class WantedPitcher:
    """A pitcher as the file has it; `values` are columns of the table `pitcher`."""

    values: Mapping[str, Any]
    account: PersonRef | None
    guardians: frozenset[PersonRef]
    #: Names of teams.
    teams: frozenset[str]

    @property
    def name(self) -> str:
        """The pitcher's name."""
        return str(self.values["name"])


@dataclass(frozen=True, slots=True)
class Wanted:
    """Everything that the file asks for."""

    teams: tuple[WantedTeam, ...]
    pitchers: tuple[WantedPitcher, ...]

    def people(self) -> tuple[PersonRef, ...]:
        """Everybody named in the file, once, in its order."""
        found: dict[PersonRef, None] = {}
        for team in self.teams:
            for role in TABLE_ROLES:
                found |= dict.fromkeys(sorted(team.staff[role], key=lambda p: p.name))
        for pitcher in self.pitchers:
            found |= dict.fromkeys([pitcher.account] if pitcher.account else [])
            found |= dict.fromkeys(sorted(pitcher.guardians, key=lambda p: p.name))
        return tuple(found)
