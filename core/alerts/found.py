"""What a crossed threshold was measured at."""

from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True)
class Found:
    """The value, the threshold it was held against, other figures, and the outings behind it.

    Shares are percent, not rounded. `source` names the rule book whose number it is.
    """

    value: float
    limit: float
    outings: tuple[int, ...] = ()
    figures: dict[str, int] = field(default_factory=dict)
    source: str = ""

    def as_json(self) -> dict[str, Any]:
        """The figures as stored with the alert."""
        source = {"source": self.source} if self.source else {}
        return {"value": self.value, "limit": self.limit, **self.figures, **source}
