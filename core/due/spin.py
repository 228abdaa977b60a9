"""Spin reps: breaking balls thrown in catch play, against the week's plan."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from sqlmodel import Session, col, select

from core.ledger.logged import Logged
from core.model import BreakingPitch, Pitcher, SpinPlan, key


@dataclass(frozen=True, slots=True)
class WeekPlan:
    """A week's plan: sessions of catch play with so many spin reps each.

    The default stands until a coach sets another (10 to 15 reps at about half effort is common
    practice, no source).
    """

    sessions: int = 3
    reps: int = 12

    @property
    def total(self) -> int:
        """The spin reps of the week."""
        return self.sessions * self.reps


@dataclass(frozen=True, slots=True)
class TeamPlans:
    """The plan of a team, and those of pitchers who have one of their own."""

    team: WeekPlan = WeekPlan()
    own: Mapping[int, WeekPlan] = field(default_factory=dict)

    def of(self, pitcher: Pitcher) -> WeekPlan:
        """The plan that a pitcher goes by."""
        return self.own.get(key(pitcher), self.team)


def team_plans(session: Session, team_id: int) -> TeamPlans:
    """The plans of a team as the coach set them; the newest word stands."""
    rows = select(SpinPlan).where(SpinPlan.team_id == team_id, col(SpinPlan.withdrawn_at).is_(None))
    newest = {row.pitcher_id: row for row in session.exec(rows.order_by(col(SpinPlan.id)))}
    plans = {
        pitcher_id: WeekPlan(row.sessions, row.reps)
        for pitcher_id, row in newest.items()
        if row.sessions is not None and row.reps is not None
    }
    team = plans.pop(None, WeekPlan())
    return TeamPlans(team, {one: plan for one, plan in plans.items() if one is not None})


@dataclass(frozen=True, slots=True)
class SpinWeek:
    """Spin reps logged in one week, and those of the plan."""

    reps: int
    sessions: int
    planned: int

    @property
    def is_done(self) -> bool:
        """Whether the week's reps are logged."""
        return self.reps >= self.planned


def plan_among(
    plans: Mapping[int, TeamPlans], team_ids: Sequence[int], pitcher: Pitcher
) -> WeekPlan:
    """The plan of a pitcher of several teams: his own in any of them, else the first team's."""
    of_teams = [plans[one] for one in team_ids if one in plans]
    own = [one.of(pitcher) for one in of_teams if key(pitcher) in one.own]
    return next(iter([*own, *(one.team for one in of_teams)]), WeekPlan())


def spin_week(pitcher: Pitcher, outings: Iterable[Logged], plan: WeekPlan) -> SpinWeek | None:
    """The spin reps among these outings; none for a pitcher who throws no breaking ball yet."""
    if pitcher.breaking_pitch == BreakingPitch.NONE_YET:
        return None
    spun = [outing for outing in outings if outing.kind == "catch" and outing.breaking]
    reps = sum(outing.breaking or 0 for outing in spun)
    return SpinWeek(reps, len({one.on for one in spun}), plan.total)
