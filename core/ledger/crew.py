"""Who wrote a line, and what he is to each pitcher he can name in it."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Literal, TypeVar
from zoneinfo import ZoneInfo

from sqlalchemy import BindParameter, bindparam
from sqlmodel import Session, col, select, union

from core.audience import Relation
from core.ledger.who import Arm
from core.model import (
    STAFF_ROLES,
    GuardianLink,
    Line,
    Membership,
    Person,
    Pitcher,
    PitcherTeam,
    Role,
    Team,
    key,
)
from core.store.together import Together

_Any = TypeVar("_Any")


@dataclass(frozen=True, slots=True)
class Crew:
    """The pitchers in sight of an author, his relations to each, and where he writes."""

    person: Person
    arms: tuple[Arm, ...]
    relations: dict[int, frozenset[Relation]]
    teams: tuple[Team, ...]
    #: The team whose channel the line stands in; null in a direct message.
    here: Team | None
    teams_of: dict[int, tuple[int, ...]]
    #: The teams of whose staff the author is, those without pitchers too.
    coaches: frozenset[int] = frozenset()
    #: Those of them in which he has the coach's own role: he gives roles and sets the team up.
    heads: frozenset[int] = frozenset()
    #: The rows of the pitchers in sight, by id.
    pitchers: Mapping[int, Pitcher] = field(default_factory=dict)

    @property
    def time_zone(self) -> str:
        """The zone of the channel's team, else of the author's first team."""
        teams = [self.here] if self.here is not None else list(self.teams)
        return teams[0].time_zone if teams else "UTC"

    def local(self, moment: datetime) -> datetime:
        """A moment as wall-clock time of that zone."""
        return moment.astimezone(ZoneInfo(self.time_zone)).replace(tzinfo=None)

    def roster(self) -> list[str]:
        """Every name under which a line may name a pitcher in sight."""
        return [name for arm in self.arms for name in (arm.name, *arm.also_called)]

    def related(self, relation: Relation) -> list[Arm]:
        """The pitchers to whom the author stands in this relation."""
        return [arm for arm in self.arms if relation in self.relations[arm.pitcher_id]]

    @property
    def is_staff(self) -> bool:
        """Whether the author coaches any pitcher in sight."""
        return bool(self.related(Relation.STAFF))

    @property
    def voice(self) -> Literal["pitcher", "coach", "guardian"]:
        """As whom the author speaks: what a line without a name is about depends on it."""
        if self.related(Relation.SELF) and not self.is_staff:
            return "pitcher"
        return "guardian" if self.related(Relation.GUARDIAN) and not self.is_staff else "coach"

    def speaks_for(self, pitcher_id: int) -> bool:
        """Whether it is the author himself, or a child of the author."""
        return bool(self.relations[pitcher_id] & {Relation.SELF, Relation.GUARDIAN})

    def takes_orders(self, line: Line) -> bool:
        """Whether a line stands where the bot is spoken to: a direct message, the staff channel."""
        return line.direct or (self.here is not None and self.here.staff_channel == line.channel)

    def local_arms(self) -> list[Arm]:
        """The pitchers of the team whose channel this is; everybody in sight elsewhere."""
        if self.here is None:
            return list(self.arms)
        team_id = key(self.here)
        return [arm for arm in self.arms if team_id in self.teams_of[arm.pitcher_id]]

    def team_for(self, pitcher_id: int) -> int | None:
        """The team an outing of this pitcher belongs to, where that is not open."""
        teams = self.teams_of[pitcher_id]
        if self.here is not None and key(self.here) in teams:
            return key(self.here)
        return teams[0] if len(teams) == 1 else None


def _in_sight() -> tuple[Together, Any]:
    """The questions of `load_crew` about the person `me`: his parts, and the pitchers in sight."""
    me: BindParameter[Any] = bindparam("me")
    family: Any = union(
        select(GuardianLink.pitcher_id).where(col(GuardianLink.person_id) == me),
        select(Pitcher.id).where(col(Pitcher.person_id) == me),
    )
    team_ids: Any = union(
        select(Membership.team_id).where(col(Membership.person_id) == me),
        select(PitcherTeam.team_id).where(col(PitcherTeam.pitcher_id).in_(family)),
    )
    parts = Together(
        (Membership, col(Membership.person_id) == me),
        (GuardianLink, col(GuardianLink.person_id) == me),
        (Team, col(Team.id).in_(team_ids)),
    )
    # A roster is many rows: one object each, and of its accounts the name alone.
    pitchers = (
        select(Pitcher, PitcherTeam.team_id, Person.slack_id)
        .join(PitcherTeam, col(PitcherTeam.pitcher_id) == col(Pitcher.id))
        .outerjoin(Person, col(Person.id) == col(Pitcher.person_id))
        .where(col(PitcherTeam.team_id).in_(team_ids))
        .order_by(col(Pitcher.id))
    )
    return parts, pitchers


_PARTS, _PITCHERS = _in_sight()
_PERSON = select(Person).where(
    col(Person.workspace_id) == bindparam("workspace"), col(Person.slack_id) == bindparam("account")
)


def find_person(session: Session, workspace_id: str, slack_id: str) -> Person | None:
    """The person behind a Slack user id, if any team knows him."""
    found = session.exec(_PERSON, params={"workspace": workspace_id, "account": slack_id})
    return found.first()


def crew_of(session: Session, line: Line) -> Crew | None:
    """The crew of a line's author, where the line stands; none for a line of a stranger."""
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    if author is None:
        return None
    here = session.get(Team, line.team_id) if line.team_id is not None else None
    return load_crew(session, author, here)


def load_crew(session: Session, person: Person, here: Team | None) -> Crew:
    """What `person` is to whom, over every team that he has a part in: two questions."""
    me = key(person)
    memberships, children, teams = _PARTS.rows(session, me=me)
    rows = session.execute(_PITCHERS, {"me": me}).all() if teams else []
    roles = _grouped((one.team_id, one.role) for one in memberships)
    teams_of = _grouped((key(pitcher), team_id) for pitcher, team_id, _ in rows)
    pitchers = {key(pitcher): (pitcher, slack_id) for pitcher, _, slack_id in rows}
    own_children = {one.pitcher_id for one in children}
    arms, relations = [], {}
    for pitcher, slack_id in pitchers.values():
        arm = _arm(pitcher, slack_id)
        arms.append(arm)
        relations[arm.pitcher_id] = frozenset(
            _relations(roles, teams_of[arm.pitcher_id])
            | ({Relation.GUARDIAN} if arm.pitcher_id in own_children else set())
            | ({Relation.SELF} if pitcher.person_id == me else set())
        )
    return Crew(
        person,
        tuple(arms),
        relations,
        tuple(sorted(teams, key=key)),
        here,
        {pitcher_id: tuple(sorted(of)) for pitcher_id, of in teams_of.items()},
        frozenset(team for team, held in roles.items() if held & STAFF_ROLES),
        frozenset(team for team, held in roles.items() if Role.COACH in held),
        {pitcher_id: pitcher for pitcher_id, (pitcher, _) in pitchers.items()},
    )


def _grouped(pairs: Iterable[tuple[int, _Any]]) -> dict[int, set[_Any]]:
    found: dict[int, set[_Any]] = defaultdict(set)
    for one, other in pairs:
        found[one].add(other)
    return found


def _arm(pitcher: Pitcher, slack_id: str | None) -> Arm:
    return Arm(
        pitcher_id=key(pitcher),
        name=pitcher.name,
        also_called=tuple(pitcher.also_called),
        slack_id=slack_id,
        consented=pitcher.consent_on is not None,
    )


def _relations(roles: dict[int, set[str]], teams: Iterable[int]) -> set[Relation]:
    held = {role for team in teams for role in roles.get(team, ())}
    relations: set[Relation] = set()
    if held & STAFF_ROLES:
        relations.add(Relation.STAFF)
    if Role.SCOREKEEPER in held:
        relations.add(Relation.SCOREKEEPER)
    return relations
