"""What a press is: one button, and what it does for whoever may press it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from core.ledger import Notice
from core.ledger.by_hand import Hand

Carried = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Press:
    """One button by its name.

    `work` does its part in the listener's transaction, on what the button carries, which can
    be changed on its way; it raises `ByHandError` for whoever may not.
    """

    name: str
    work: Callable[[Hand, Carried], list[Notice]]
    #: Whether somebody may press it of whom no row is kept yet; one is begun for him then.
    for_strangers: bool = False


def presses(name: str) -> str:
    """The action of a button that does the press of this name."""
    return f"press.{name}"
