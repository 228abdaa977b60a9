"""What stands beside a question and could change its answer, so that it is asked about."""

from collections.abc import Sequence

from core.reading.asking.asked import Asked, Topic
from core.reading.asking.items import Item
from core.reading.asking.symbols import COUNTED, NAME, SLOTS

_FUTURE_VERBS = frozenset(["pitch", "pitches", "go", "throws", "use"])
_OF_A_DAY = frozenset([Topic.STAFF, Topic.ONE, Topic.MOST, Topic.ACTIVITY])


def before_matters(asked: Asked, before: Sequence[Item], *, apart: bool) -> bool:
    """Whether what was typed before the question supposes something, or names its day.

    "threw 40, can i throw tmrw?" tells what the log will know; "I want to throw 40 tmrw, when can
    i go again" supposes it; "mateo 40 thursday can he go sat" could be either. `apart`: a pause
    stands between.
    """
    found = {symbol for item in before for symbol in item.symbol.split()}
    past = "threw" in found
    if "if" in found:
        return True
    if found & COUNTED and (found & _FUTURE_VERBS or not apart) and not past:
        return True
    return "day" in found and not past and not asked.days and asked.topic in _OF_A_DAY


def tail_matters(tail: Sequence[Item]) -> bool:
    """Whether the rest of a sentence after a question supposes, names or counts something."""
    return any(item.symbol in SLOTS | {NAME, "if"} for item in tail)


def after_matters(sentence: Sequence[Item]) -> bool:
    """Whether a sentence after the question supposes a count: "... again? if he throws 60 sat"."""
    found = {item.symbol for item in sentence}
    return "if" in found and bool(found & COUNTED)
