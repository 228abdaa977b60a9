"""Whether an arm that hurt has been reported pain-free since: silence is no answer.

A report that stopped an arm, or called it sore, stands, whatever becomes of its line,
until a guardian (or an adult pitcher himself) records that the arm is pain-free, or an adult
records a clinician's clearance, either for that day or a later one. Pain never expires by
itself. Soreness and nothing worse does, after the days in which a second report would be pain.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from core.pain.holds import AGAIN_WITHIN


@dataclass(frozen=True, slots=True)
class Said:
    """One statement about an arm, in the order in which they were made."""

    on: date
    stops: bool = False
    #: Soreness of the throwing arm.
    sore: bool = False
    #: "No pain", from somebody who may say so for this arm.
    pain_free: bool = False


def has_lapsed(last_word: date, on: date) -> bool:
    """Whether soreness of which nobody spoke after `last_word` no longer stands on a day."""
    return on > last_word + AGAIN_WITHIN


def not_cleared_since(said: Iterable[Said]) -> date | None:
    """The day of the report that still stands, or none."""
    return _standing((one, one.stops) for one in said)


def not_cleared_or_sore_since(said: Iterable[Said]) -> date | None:
    """The same, with soreness."""
    return _standing((one, one.stops or one.sore) for one in said)


def _standing(said: Iterable[tuple[Said, bool]]) -> date | None:
    since: date | None = None
    for one, counts in said:
        if counts:
            since = one.on
        elif one.pain_free and since is not None and one.on >= since:
            since = None
    return since
