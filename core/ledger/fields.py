"""The columns that one kept entry fills, and the feelings that it reports."""

from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from datetime import date
from typing import Any

from core.audience import Subject
from core.ledger.decide import THROWING, Kept
from core.model import Feeling
from core.reading import Entry

COUNTS = (
    "pitches", "breaking", "curve", "slider", "changeup", "fastball", "strikes",
    "breaking_strikes", "outs", "caught_outs", "effort",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Felt:
    """One feeling of one entry, as a row of the record holds it."""

    feeling: Feeling
    site: str | None = None
    severity: int | None = None
    side: str | None = None
    when: str | None = None

    @property
    def name(self) -> str:
        """What tells this report from the others of its entry."""
        return f"{self.feeling}/{self.site or ''}/{self.side or ''}"


def throws(kept: Kept) -> bool:
    """Whether the entry makes an outing; one that only says how the arm feels does not."""
    stated = kept.kind is not None or any(getattr(kept.entry, name) is not None for name in COUNTS)
    return bool(kept.subjects & THROWING) and stated


def outing_fields(kept: Kept) -> dict[str, Any]:
    """The columns of the outing, with dates as ISO text so that they compare and store as JSON."""
    counts = {name: getattr(kept.entry, name) for name in COUNTS}
    return {
        "on": kept.on.isoformat(),
        "kind": kept.kind,
        **counts,
        "about": kept.entry.about,
        "waiting": list(kept.waiting),
        "game": kept.game,
        "joins": kept.joins,
        "joined_as": kept.joined_as,
    }


def feelings(kept: Kept) -> list[Felt]:
    """What the entry says of the arm and the body; empty where the author may not say it."""
    if Subject.ARM not in kept.subjects:
        return []
    return [*_pains(kept.entry), *_tiredness(kept.entry)]


def _pains(entry: Entry) -> list[Felt]:
    if entry.pain is None:
        return []
    if not entry.pain:
        return [Felt(Feeling.NO_PAIN)]
    return [
        Felt(
            Feeling.SORE if pain.sore else Feeling.PAIN,
            pain.site,
            pain.severity,
            pain.side,
            pain.when,
        )
        for pain in entry.pain
    ]


def _tiredness(entry: Entry) -> list[Felt]:
    if entry.tired is None:
        return []
    return [Felt(Feeling.TIRED if entry.tired else Feeling.NOT_TIRED)]


def snapshot(kept: Kept) -> dict[str, Any]:
    """What was read for one slot, as stored with the line and compared with the next edit."""
    return {
        "slot": kept.slot,
        "pitcher_id": kept.arm.pitcher_id,
        "on": kept.on.isoformat(),
        "outing": outing_fields(kept) if throws(kept) else None,
        "felt": _named(feelings(kept)),
    }


def _named(feelings: Iterable[Felt]) -> dict[str, dict[str, Any]]:
    """The feelings by name; two of one name ("elbow 4/10, 6/10 after") are told apart."""
    named: dict[str, dict[str, Any]] = {}
    for felt in feelings:
        same = sum(name.partition("#")[0] == felt.name for name in named)
        named[f"{felt.name}#{same + 1}" if same else felt.name] = _felt_json(felt)
    return named


def _felt_json(felt: Felt) -> dict[str, Any]:
    return asdict(felt) | {"feeling": str(felt.feeling)}


def as_columns(fields: Mapping[str, Any]) -> dict[str, Any]:
    """Stored fields as column values: the day back from its ISO text."""
    return {
        name: date.fromisoformat(value) if name == "on" else value for name, value in fields.items()
    }
