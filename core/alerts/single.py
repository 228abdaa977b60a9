"""Thresholds of a single outing."""

from core.alerts.found import Found
from core.alerts.record import Pitched
from core.alerts.thresholds import ALWAYS_BREAKING, ALWAYS_SHARE, TYPED_IN_GAME, Key, Limits


def game_breaking(outing: Pitched, limits: Limits) -> Found | None:
    """Breaking balls of one game: over the coach's number, urgent, or too many at any number.

    The coach's number counts only where the share is over the coach's mix too.
    """
    breaking, pitches = outing.breaking, outing.pitches
    if outing.kind != "game" or breaking is None:
        return None
    limit = _limit(breaking, pitches, limits)
    if limit is None:
        return None
    figures = {"breaking": breaking, "always": int(limit < 0)}
    if pitches is not None:
        figures["pitches"] = pitches
    return Found(breaking, abs(limit), (outing.id,), figures)


def _limit(breaking: int, pitches: int | None, limits: Limits) -> int | None:
    """The number that was crossed; below zero for one that alerts whatever is set."""
    if breaking >= ALWAYS_BREAKING:
        return -ALWAYS_BREAKING
    if pitches is not None and pitches >= TYPED_IN_GAME and breaking >= ALWAYS_SHARE * pitches:
        return -round(ALWAYS_SHARE * pitches)
    urgent, high = limits.get(Key.URGENT_BREAKING), limits.get(Key.GAME_BREAKING)
    if urgent is not None and breaking >= urgent:
        return urgent
    if high is None or breaking <= high:
        return None
    # In whole hundredths: 0.2 * 85 is a little more than 17.
    share = limits.get(Key.MIX) or 20
    return None if pitches is not None and 100 * breaking <= share * pitches else high


def spin_reps(outing: Pitched, limits: Limits) -> Found | None:
    """Breaking balls in one session of catch play."""
    limit = limits.get(Key.SPIN_REPS)
    if outing.kind != "catch" or outing.breaking is None or limit is None:
        return None
    return Found(outing.breaking, limit, (outing.id,)) if outing.breaking > limit else None


def spin_effort(outing: Pitched, limits: Limits) -> Found | None:
    """The effort of a session of catch play with spin reps, percent."""
    limit, effort = limits.get(Key.SPIN_EFFORT), outing.effort
    if outing.kind != "catch" or not outing.breaking or effort is None or limit is None:
        return None
    return Found(effort, limit, (outing.id,)) if effort > limit else None
