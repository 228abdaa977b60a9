"""Where an arm stands on a day: pain that nobody cleared, a hold, a clinician's limits."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import Any


class LimitKind(StrEnum):
    """What a clinician may limit, as far as it can be kept as data."""

    NO_THROWING = "no throwing"
    NO_PITCHING = "no pitching"
    ONLY_CATCH = "only catch"
    NO_BREAKING = "no breaking"
    MOST_THROWS = "most throws"
    MOST_FEET = "most feet"


#: With one of these in force no answer says that the arm may pitch.
BARS_PITCHING = frozenset({LimitKind.NO_THROWING, LimitKind.NO_PITCHING, LimitKind.ONLY_CATCH})


@dataclass(frozen=True, slots=True)
class ClinicianLimit:
    """One limit; `amount` in throws a day or feet, `until` the last day (none: until changed)."""

    kind: LimitKind
    amount: int | None = None
    until: date | None = None

    def as_json(self) -> dict[str, Any]:
        """The limit as stored with its clearance."""
        until = self.until.isoformat() if self.until else None
        return {"kind": str(self.kind), "amount": self.amount, "until": until}

    @staticmethod
    def from_json(stored: dict[str, Any]) -> "ClinicianLimit":
        """The limit back from its stored form."""
        until = date.fromisoformat(stored["until"]) if stored["until"] else None
        return ClinicianLimit(LimitKind(stored["kind"]), stored["amount"], until)


@dataclass(frozen=True, slots=True)
class ArmStatus:
    """What stands against throwing on a day.

    `since` is the day of a report that stands; `held` tells that only a clinician's clearance
    ends it, `sore` that it is soreness and nothing worse. `limits` are those in force on the
    day, as `clinician` set them on `cleared_on`.
    """

    since: date | None = None
    held: bool = False
    limits: tuple[ClinicianLimit, ...] = ()
    clinician: str = ""
    cleared_on: date | None = None
    sore: bool = False

    @property
    def bars_pitching(self) -> bool:
        """Whether no answer may say that this arm pitches on the day."""
        return self.since is not None or any(one.kind in BARS_PITCHING for one in self.limits)


NOTHING_STANDS = ArmStatus()
