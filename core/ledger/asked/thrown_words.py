"""Throwing told of without a number, typed to the bot: "pitched today", "played catch"."""

import re

from core.ledger.command_words import Word, word_alone

_WHO = r"(?:(?:i|he|she|we|just|today|yesterday)\s+)*"
_DONE = r"(?:threw|pitched|played|did|had|got|finished|been)"
_KIND = r"(?P<kind>bullpen|pen|side session|side|catch play|catch|game|long toss)"
_FILL = r"(?:(?:a|an|the|my|in|some|our|good|great|little)\s+)*"
_WHEN = r"(?:\s+(?:today|yesterday|tonight|just now|this morning|after practice|at practice))*"
_THROWN = re.compile(rf"{_WHO}{_DONE}(?:\s+{_FILL}{_KIND})?{_WHEN}[\s.!]*", re.IGNORECASE)
_WORDS = {
    "bullpen": "bullpen", "pen": "bullpen", "side": "bullpen", "side session": "bullpen",
    "catch": "catch", "catch play": "catch", "long toss": "catch",
}  # fmt: skip
#: These verbs say nothing without what was thrown: "had", "played today".
_OPEN = re.compile(r"\b(?:threw|pitched)\b", re.IGNORECASE)


def thrown_without_count(text: str) -> Word | None:
    """The word of the table whose form takes what was thrown; none where a text tells of none."""
    found = _THROWN.fullmatch(" ".join(text.split()))
    if found is None or not (found["kind"] or _OPEN.search(text)):
        return None
    return word_alone(_WORDS.get((found["kind"] or "").casefold(), "log"))
