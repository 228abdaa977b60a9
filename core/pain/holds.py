"""When a report of pain puts an arm on hold, and what ends a hold.

A hold follows a report at or over the team's pain threshold, a second report within 14
days, or a stop-and-be-seen word. These are the project's own rules; they defer to clinicians
and are the staff's to tighten. Only an adult's record of a licensed clinician's clearance
ends one.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum

from core.pain import PAIN_THRESHOLD

AGAIN_WITHIN = timedelta(days=14)


class HoldReason(StrEnum):
    """What put an arm on hold."""

    BE_SEEN = "stop and be seen"
    SEVERITY = "severity"
    AGAIN = "again within 14 days"


def hold_reason(
    severity: int | None,
    on: date,
    *,
    stops: bool,
    be_seen: bool,
    earlier: Iterable[date] = (),
    threshold: int = PAIN_THRESHOLD,
) -> HoldReason | None:
    """Why this report puts the arm on hold, or none.

    `severity` is 0-10 or not stated; `stops` says that throwing stops for it; `earlier` are
    the days of other reports that stopped this arm or called it sore. Two lines about one day are
    one report.
    """
    if be_seen:
        return HoldReason.BE_SEEN
    if not stops:
        return None
    if severity is not None and severity >= threshold:
        return HoldReason.SEVERITY
    if any(timedelta(0) < abs(on - day) <= AGAIN_WITHIN for day in earlier):
        return HoldReason.AGAIN
    return None


@dataclass(frozen=True, slots=True)
class Held:
    """A hold: the day of its report, and when it was raised."""

    on: date
    raised_at: datetime


@dataclass(frozen=True, slots=True)
class ClearedBy:
    """A clinician's clearance: the clinician's day, and when an adult wrote it down."""

    on: date
    said_at: datetime


def end_of(held: Held, clearances: Iterable[ClearedBy]) -> ClearedBy | None:
    """The first clearance that ends a hold: written after it, and not dated before it."""
    ends = [one for one in clearances if one.said_at >= held.raised_at and one.on >= held.on]
    return min(ends, key=lambda one: (one.on, one.said_at), default=None)


def covers(held: Held, clearances: Iterable[ClearedBy], day: date) -> bool:
    """Whether no throwing was meant to happen on `day`: after the report, before its end."""
    end = end_of(held, clearances)
    return held.on < day and (end is None or day < end.on)
