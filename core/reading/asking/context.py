"""What is known of a message beside its items."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from core.reading.asking.items import Item


@dataclass(frozen=True, slots=True)
class Context:
    """The message as typed, the local day it was posted on, and its language."""

    text: str
    today: date
    lang: str
    rostered: bool  # whether the caller gave a roster

    def quote(self, items: Sequence[Item]) -> str:
        """The run of items as typed."""
        return self.text[items[0].start : items[-1].end].strip(" ,")
