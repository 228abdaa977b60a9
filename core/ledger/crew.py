"""Who wrote a line, and what he is to each pitcher he can name in it."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Literal
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

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


def find_person(session: Session, workspace_id: str, slack_id: str) -> Person | None:
    """The person behind a Slack user id, if any team knows him."""
    return session.exec(
        select(Person).where(Person.workspace_id == workspace_id, Person.slack_id == slack_id)
    ).first()


def load_crew(session: Session, person: Person, here: Team | None) -> Crew:
    """What `person` is to whom, over every team that he has a part in."""
    roles = _roles(session, key(person))
    children = _children(session, key(person))
    own = set(session.exec(select(Pitcher.id).where(Pitcher.person_id == key(person))).all())
    links = _links(session, person.workspace_id)
    team_ids = _team_ids(roles, links, children | {i for i in own if i is not None})
    teams_of = {
        pitcher_id: tuple(sorted(teams & team_ids))
        for pitcher_id, teams in links.items()
        if teams & team_ids
    }
    arms = _arms(session, teams_of)
    relations = {
        arm.pitcher_id: frozenset(
            _relations(roles, teams_of[arm.pitcher_id])
            | ({Relation.GUARDIAN} if arm.pitcher_id in children else set())
            | ({Relation.SELF} if arm.pitcher_id in own else set())
        )
        for arm in arms
    }
    teams = session.exec(select(Team).where(col(Team.id).in_(team_ids)).order_by(col(Team.id)))
    coaches = frozenset(team for team, held in roles.items() if held & STAFF_ROLES)
    return Crew(person, tuple(arms), relations, tuple(teams), here, teams_of, coaches)


def _roles(session: Session, person_id: int) -> dict[int, set[str]]:
    roles: dict[int, set[str]] = defaultdict(set)
    for row in session.exec(select(Membership).where(Membership.person_id == person_id)):
        roles[row.team_id].add(row.role)
    return roles


def _children(session: Session, person_id: int) -> set[int]:
    links = select(GuardianLink.pitcher_id).where(GuardianLink.person_id == person_id)
    return set(session.exec(links))


def _links(session: Session, workspace_id: str) -> dict[int, set[int]]:
    links: dict[int, set[int]] = defaultdict(set)
    for row in session.exec(select(PitcherTeam).where(PitcherTeam.workspace_id == workspace_id)):
        links[row.pitcher_id].add(row.team_id)
    return links


def _team_ids(roles: dict[int, set[str]], links: dict[int, set[int]], family: set[int]) -> set[int]:
    return set(roles) | {team for pitcher in family for team in links.get(pitcher, ())}


def _arms(session: Session, pitcher_ids: Iterable[int]) -> list[Arm]:
    rows = session.exec(
        select(Pitcher, Person)
        .outerjoin(Person, col(Pitcher.person_id) == col(Person.id))
        .where(col(Pitcher.id).in_(list(pitcher_ids)))
        .order_by(col(Pitcher.id))
    )
    return [
        Arm(
            pitcher_id=key(pitcher),
            name=pitcher.name,
            also_called=tuple(pitcher.also_called),
            slack_id=person.slack_id if person else None,
            consented=pitcher.consent_on is not None,
        )
        for pitcher, person in rows.all()
    ]


def _relations(roles: dict[int, set[str]], teams: Iterable[int]) -> set[Relation]:
    held = {role for team in teams for role in roles.get(team, ())}
    relations: set[Relation] = set()
    if held & STAFF_ROLES:
        relations.add(Relation.STAFF)
    if Role.SCOREKEEPER in held:
        relations.add(Relation.SCOREKEEPER)
    return relations
