"""“12 spins”: spin reps are breaking balls thrown in catch play, so the word says the kind."""

import re
from dataclasses import replace

from core.reading import Entry, Reading

_SPINS = re.compile(r"\bspins?\b(?!\s*rate)|\bspin\s?reps\b", re.IGNORECASE)


def with_spins(text: str, reading: Reading) -> Reading:
    """The reading with catch play as the kind of entries that hold spin reps alone."""
    if not _SPINS.search(text):
        return reading
    return replace(reading, entries=tuple(map(_caught, reading.entries)))


def _caught(entry: Entry) -> Entry:
    of_a_mound = (entry.outs, entry.strikes, entry.changeup, entry.fastball, entry.slider)
    if entry.kind is not None or entry.breaking is None or any(n is not None for n in of_a_mound):
        return entry
    return replace(entry, kind="catch")
