"""What the database holds of a workspace's teams, in the shape that the plan compares."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from sqlmodel import Session, select

from bot.team_file.wanted import TABLE_ROLES, PersonRef
from bot.team_file.year import PartOfYear, StoredPart
from core.model import (
    ConsentEvent,
    ConsentWay,
    GuardianLink,
    Membership,
    Person,
    Pitcher,
    PitcherTeam,
    Role,
    Season,
    Team,
    TeamEvent,
    key,
)

TEAM_COLUMNS = (
    "name",
    "age_group",
    "time_zone",
    "log_channel",
    "staff_channel",
    "rule_books",
    "account_age",
    "quiet_from",
    "quiet_to",
    "season_start",
    "rest_day",
)
PITCHER_COLUMNS = (
    "name",
    "also_called",
    "birth_date",
    "throws",
    "breaking_pitch",
    "consent_on",
    "pitch_caller",
    "grade",
    "level",
    "rule_books",
)


@dataclass(frozen=True, slots=True)
class StoredPerson:
    """A person's row, and how a file refers to it."""

    id: int
    ref: PersonRef


@dataclass(frozen=True, slots=True)
class StoredTeam:
    """A team's row, its staff and its year."""

    id: int
    values: Mapping[str, Any]
    staff: Mapping[Role, frozenset[PersonRef]]
    seasons: tuple[StoredPart, ...]
    events: tuple[StoredPart, ...]


@dataclass(frozen=True, slots=True)
class StoredPitcher:
    """A pitcher's row and links; `teams` are ids."""

    id: int
    values: Mapping[str, Any]
    account: PersonRef | None
    guardians: frozenset[PersonRef]
    teams: frozenset[int]
    #: Whether consent was said otherwise than by a file, which then cannot change it.
    consent_was_said: bool = False


@dataclass(frozen=True, slots=True)
class StoredState:
    """Every team, pitcher and person of one workspace."""

    people: tuple[StoredPerson, ...] = ()
    teams: tuple[StoredTeam, ...] = ()
    pitchers: tuple[StoredPitcher, ...] = ()


def read_stored(session: Session, workspace_id: str) -> StoredState:
    """Read a workspace's teams as they stand."""
    people = session.exec(select(Person).where(Person.workspace_id == workspace_id)).all()
    refs = {key(person): PersonRef.of(person.slack_id, person.name) for person in people}
    return StoredState(
        people=tuple(StoredPerson(person_id, ref) for person_id, ref in refs.items()),
        teams=_teams(session, workspace_id, refs),
        pitchers=_pitchers(session, workspace_id, refs),
    )


def _teams(
    session: Session, workspace_id: str, refs: Mapping[int, PersonRef]
) -> tuple[StoredTeam, ...]:
    staff: dict[tuple[int, str], set[PersonRef]] = defaultdict(set)
    for row in session.exec(select(Membership).where(Membership.workspace_id == workspace_id)):
        staff[row.team_id, row.role].add(refs[row.person_id])
    of_season = session.exec(select(Season).where(Season.workspace_id == workspace_id))
    of_event = session.exec(select(TeamEvent).where(TeamEvent.workspace_id == workspace_id))
    seasons = _by_team((row.kind, row) for row in of_season)
    events = _by_team((row.name, row) for row in of_event)
    teams = session.exec(select(Team).where(Team.workspace_id == workspace_id)).all()
    return tuple(
        StoredTeam(
            id=key(team),
            values={column: getattr(team, column) for column in TEAM_COLUMNS},
            staff={role: frozenset(staff[key(team), role]) for role in TABLE_ROLES},
            seasons=tuple(seasons.get(key(team), ())),
            events=tuple(events.get(key(team), ())),
        )
        for team in teams
    )


def _by_team(
    named: Iterable[tuple[str, Season | TeamEvent]],
) -> Mapping[int, list[StoredPart]]:
    """Seasons or events with their names, by team."""
    parts: dict[int, list[StoredPart]] = defaultdict(list)
    for name, row in named:
        books = None if row.rule_books is None else tuple(row.rule_books)
        part = PartOfYear(name, row.starts_on, row.ends_on, books)
        parts[row.team_id].append(StoredPart(key(row), part))
    return parts


def _pitchers(
    session: Session, workspace_id: str, refs: Mapping[int, PersonRef]
) -> tuple[StoredPitcher, ...]:
    guardians: dict[int, set[PersonRef]] = defaultdict(set)
    for link in session.exec(select(GuardianLink).where(GuardianLink.workspace_id == workspace_id)):
        guardians[link.pitcher_id].add(refs[link.person_id])
    teams: dict[int, set[int]] = defaultdict(set)
    for place in session.exec(select(PitcherTeam).where(PitcherTeam.workspace_id == workspace_id)):
        teams[place.pitcher_id].add(place.team_id)
    said = select(ConsentEvent.pitcher_id).where(
        ConsentEvent.workspace_id == workspace_id, ConsentEvent.way != ConsentWay.FILE
    )
    consent_was_said = set(session.exec(said))
    pitchers = session.exec(select(Pitcher).where(Pitcher.workspace_id == workspace_id)).all()
    return tuple(
        StoredPitcher(
            id=key(pitcher),
            values={column: getattr(pitcher, column) for column in PITCHER_COLUMNS},
            account=refs[pitcher.person_id] if pitcher.person_id else None,
            guardians=frozenset(guardians[key(pitcher)]),
            teams=frozenset(teams[key(pitcher)]),
            consent_was_said=key(pitcher) in consent_was_said,
        )
        for pitcher in pitchers
    )
