"""The thresholds of a team or of one pitcher, for somebody of its staff who wants to set them."""

from collections.abc import Mapping
from dataclasses import dataclass

from core.alerts.thresholds import DEFAULTS, Key
from core.audience import Relation
from core.ledger.by_hand import Hand
from core.ledger.crew import Crew, load_crew
from core.ledger.settings import coached_teams, limits_of
from core.ledger.who import Arm
from core.model import Team, key


@dataclass(frozen=True, slots=True)
class Whose:
    """A team that somebody coaches, and its pitchers by name."""

    team: Team
    arms: tuple[Arm, ...]


@dataclass(frozen=True, slots=True)
class ThresholdSheet:
    """What holds for one pitcher (or the team, `arm` none), and what would hold by default."""

    crew: Crew
    team: Team
    arm: Arm | None
    limits: Mapping[Key, int | None]
    by_default: Mapping[Key, int | None]


def whose_thresholds(hand: Hand) -> list[Whose]:
    """The teams whose thresholds this person may set; empty for anybody but the staff."""
    crew = load_crew(hand.session, hand.person, None)
    return [
        Whose(hand.session.get_one(Team, team_id), tuple(_arms(crew, team_id)))
        for team_id in sorted(coached_teams(hand.session, crew))
    ]


def threshold_sheet(hand: Hand, team_id: int, pitcher_id: int | None) -> ThresholdSheet | None:
    """The sheet of a team or of one of its pitchers; none for anybody but its staff."""
    team = hand.session.get(Team, team_id)
    crew = load_crew(hand.session, hand.person, team)
    if team is None or team_id not in coached_teams(hand.session, crew):
        return None
    arms = [one for one in _arms(crew, team_id) if one.pitcher_id == pitcher_id]
    if pitcher_id is not None and not arms:
        return None
    of_team = limits_of(hand.session, key(team), None)
    return ThresholdSheet(
        crew,
        team,
        arms[0] if arms else None,
        limits_of(hand.session, key(team), pitcher_id),
        of_team if arms else DEFAULTS,
    )


def _arms(crew: Crew, team_id: int) -> list[Arm]:
    staff = crew.related(Relation.STAFF)
    mine = [arm for arm in staff if team_id in crew.teams_of[arm.pitcher_id]]
    return sorted(mine, key=lambda arm: arm.name)
