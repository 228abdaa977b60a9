"""Spin reps: breaking balls thrown in catch play, against the week's plan."""

from collections.abc import Iterable
from dataclasses import dataclass

from core.ledger.logged import Logged
from core.model import BreakingPitch, Pitcher

#: The week's plan until a coach sets another: sessions of catch play with so many spin reps
#: each (10 to 15 at about half effort is common practice, no source).
SESSIONS, REPS = 3, 12


@dataclass(frozen=True, slots=True)
class SpinWeek:
    """Spin reps logged in one week, and those of the plan."""

    reps: int
    sessions: int
    planned: int = SESSIONS * REPS

    @property
    def is_done(self) -> bool:
        """Whether the week's reps are logged."""
        return self.reps >= self.planned


def spin_week(pitcher: Pitcher, outings: Iterable[Logged]) -> SpinWeek | None:
    """The spin reps among these outings; none for a pitcher who throws no breaking ball yet."""
    if pitcher.breaking_pitch == BreakingPitch.NONE_YET:
        return None
    spun = [outing for outing in outings if outing.kind == "catch" and outing.breaking]
    return SpinWeek(sum(outing.breaking or 0 for outing in spun), len({one.on for one in spun}))
