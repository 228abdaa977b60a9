"""Rule book and outings in; days of rest, next eligible date, pitches allowed and why out."""

from core.rest.answering import answer, required
from core.rest.values import (
    NO_PITCH_LIMIT,
    Phase,
    Reason,
    RestAnswer,
    RestError,
    RestOwed,
    Thrower,
    Thrown,
)

__all__ = [
    "NO_PITCH_LIMIT",
    "Phase",
    "Reason",
    "RestAnswer",
    "RestError",
    "RestOwed",
    "Thrower",
    "Thrown",
    "answer",
    "required",
]
