"""Thresholds over several games or days; each gives what stands on one day, or none."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

from dateutil.relativedelta import relativedelta

from core.alerts.found import Found
from core.alerts.record import Pitched, Record, inside
from core.alerts.thresholds import (
    GAMES_IN_WINDOW,
    TYPED_IN_WINDOW,
    WITHIN_DAYS,
    Key,
    Limits,
)
from core.load import week_load

#: A share over games that lie farther back says nothing about now (days).
NEWEST_GAME = 28
COUNTED_KINDS = frozenset({"game", "bullpen", "live", None})


def mix(record: Record, limits: Limits, on: date) -> Found | None:
    """The breaking-ball share of the last games, over the coach's line."""
    limit, shared = limits.get(Key.MIX), _share(record, on, lambda one: one.breaking)
    if limit is None or shared is None:
        return None
    over = 100 * shared.figures["of"] > limit * shared.figures["typed"]
    return replace(shared, limit=limit) if over else None


def low_mix(record: Record, limits: Limits, on: date) -> Found | None:
    """The breaking-ball share of the last games, under the coach's line."""
    return _under(limits.get(Key.LOW_MIX), _share(record, on, lambda one: one.breaking))


def changeup(record: Record, limits: Limits, on: date) -> Found | None:
    """The changeup share of the last games in which changeups were counted."""
    return _under(limits.get(Key.CHANGEUP), _share(record, on, lambda one: one.changeup))


def _under(limit: int | None, shared: Found | None) -> Found | None:
    if limit is None or shared is None:
        return None
    under = 100 * shared.figures["of"] < limit * shared.figures["typed"]
    return replace(shared, limit=limit) if under else None


def _share(record: Record, on: date, of: Callable[[Pitched], int | None]) -> Found | None:
    """The share over the last games with both counts, once they hold enough typed pitches."""
    typed = [one for one in record.games(on) if one.pitches is not None and of(one) is not None]
    chosen = typed[-GAMES_IN_WINDOW:]
    pitches, counted = sum(one.pitches or 0 for one in chosen), sum(of(one) or 0 for one in chosen)
    if pitches < TYPED_IN_WINDOW or (on - chosen[-1].on).days >= NEWEST_GAME:
        return None
    figures = {"of": counted, "typed": pitches, "games": len(chosen)}
    return Found(100 * counted / pitches, 0, tuple(one.id for one in chosen), figures)


def pain_reports(record: Record, limits: Limits, on: date) -> Found | None:
    """Days with a report of pain or soreness."""
    return _days_felt(record, limits.get(Key.PAIN_REPORTS), on, hurts=True)


def tired_reports(record: Record, limits: Limits, on: date) -> Found | None:
    """Days with a tired arm."""
    return _days_felt(record, limits.get(Key.TIRED_REPORTS), on, hurts=False)


def _days_felt(record: Record, limit: int | None, on: date, *, hurts: bool) -> Found | None:
    first = on - timedelta(days=WITHIN_DAYS - 1)
    days = {one.on for one in record.felt if one.hurts is hurts and first <= one.on <= on}
    return Found(len(days), limit) if limit is not None and len(days) >= limit else None


def week_pitches(record: Record, limits: Limits, on: date) -> Found | None:
    """Pitches of the last seven days, catch play left out."""
    limit = limits.get(Key.WEEK_PITCHES)
    pitched = [one for one in record.within(on, 7) if one.kind in COUNTED_KINDS]
    total = sum(one.pitches or 0 for one in pitched)
    if limit is None or total <= limit:
        return None
    return Found(total, limit, tuple(one.id for one in pitched))


def more_throws(record: Record, limits: Limits, on: date) -> Found | None:
    """Throws of this week against the three before; not in build-up, when more is the plan."""
    limit, load = limits.get(Key.MORE_THROWS), week_load(record.days(), on)
    if limit is None or load is None or inside(on, record.build_ups):
        return None
    if not load.comparable or not load.is_more(limit):
        return None
    outings = tuple(one.id for one in record.within(on, 7))
    figures = {"before": round(load.before_average), "unknown": load.unknown}
    return Found(load.week, limit, outings, figures)


def silent_days(record: Record, limits: Limits, on: date) -> Found | None:
    """Days in season since the last line.

    Before the first line: since the season began, or the team's record where that is later.
    """
    limit, season = limits.get(Key.SILENT_DAYS), inside(on, record.seasons)
    if limit is None or season is None or record.begins is None:
        return None
    days = [one.on for one in record.outings if one.on <= on]
    days += [one.on for one in record.felt if one.on <= on]
    last = max([max(season[0], record.begins) - timedelta(days=1), *days])
    silent = (on - last).days
    return Found(silent, limit) if silent >= limit else None


def months(record: Record, limits: Limits, on: date) -> Found | None:
    """Calendar months with a game among the last twelve."""
    limit = limits.get(Key.MONTHS)
    first = 12 * on.year + on.month - 11
    numbers = {12 * one.on.year + one.on.month for one in record.games(on)}
    played = sum(number >= first for number in numbers)
    return Found(played, limit) if limit is not None and played > limit else None


def innings(record: Record, limits: Limits, on: date) -> Found | None:
    """The share of the twelve-month innings cap, from the coach's line on."""
    return _innings(record, limits.get(Key.INNINGS), on)


def all_innings(record: Record, limits: Limits, on: date) -> Found | None:
    """The same, where the cap is used up."""
    return _innings(record, limits.get(Key.ALL_INNINGS), on)


def _innings(record: Record, limit: int | None, on: date) -> Found | None:
    """Outs of games against the cap; games whose innings nobody counted are told apart."""
    cap = record.year_cap
    if cap is None or limit is None or cap.outs <= 0:
        return None
    first = on - relativedelta(months=12) + timedelta(days=1)
    games = [one for one in record.games(on) if one.on >= first]
    outs = sum(one.outs or 0 for one in games)
    if 100 * outs < limit * cap.outs:
        return None
    figures = {"outs": outs, "cap": cap.outs, "uncounted": sum(one.outs is None for one in games)}
    return Found(100 * outs / cap.outs, limit, figures=figures, source=cap.source)


def spin_week(record: Record, limits: Limits, on: date) -> Found | None:
    """Spin reps of the last full week; a week without any catch play is unknown, not under."""
    limit = limits.get(Key.SPIN_WEEK)
    monday = on - timedelta(days=on.weekday() + 7)
    caught = [
        one
        for one in record.outings
        if one.kind == "catch" and monday <= one.on < monday + timedelta(days=7)
    ]
    reps = sum(one.breaking or 0 for one in caught)
    if limit is None or not caught or reps >= limit:
        return None
    return Found(reps, limit, tuple(one.id for one in caught), {"sessions": len(caught)})
