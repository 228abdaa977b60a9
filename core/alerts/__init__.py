"""What the coach wants to hear of: thresholds as rows, and what crosses them on a day."""

from core.alerts.compare import Changes, Known, compare
from core.alerts.crossings import Crossing, crossings
from core.alerts.record import Felt, Pitched, Record, YearCap
from core.alerts.thresholds import THRESHOLDS, Key, Limits, Threshold, threshold

__all__ = [
    "THRESHOLDS",
    "Changes",
    "Crossing",
    "Felt",
    "Key",
    "Known",
    "Limits",
    "Pitched",
    "Record",
    "Threshold",
    "YearCap",
    "compare",
    "crossings",
    "threshold",
]
