"""Two things that a line may say besides counts: "keep it quiet", and that somebody is in danger.

Neither is a reading of the log. Words like these are rare and must not be missed, so each
table holds whole phrases, not single words: "the ball hit me" is baseball.
"""

import re

_SECRET = re.compile(
    r"\b(do ?n[o']?t|dont|please no|no need to) (tell|say|let|show)\b"
    r"|\b(keep|between) (this|it|us)\b.*\b(quiet|secret|private|us|you and me)\b|\bbetween us\b"
    r"|\bkeep (it|this) (quiet|secret|private)\b"
    r"|\bno (le )?(digas?|diga|cuentes?|avises?)\b|\bentre nosotros\b|\bque no se entere\b",
    re.IGNORECASE,
)
_DANGER = re.compile(
    r"\b(kill|hurt|cut|harm)(ing)? (myself|himself|herself)\b|\bwant(s)? to die\b"
    r"|\bsuicid\w+\b|\bend it all\b|\bdon'?t want to (live|be here)\b"
    r"|\b(coach|dad|mom|he|she|they) (hits|beats|touches|touched|grabbed|choked) me\b"
    r"|\b(touch(es|ed)|grab(s|bed)) me (there|wrong|in a way)\b|\bmade me (undress|strip)\b"
    r"|\b(scared|afraid) (of|to be alone with) (coach|my (dad|mom|coach)|him|her)\b"
    r"|\bme (pega|golpea|toca|maltrata)\b|\bquiero morir\w*\b|\bhacerme da[nñ]o\b|\bmatarme\b",
    re.IGNORECASE,
)


def asks_for_secrecy(text: str) -> bool:
    """Whether a line asks to keep something from others."""
    return _SECRET.search(text) is not None


def sounds_dangerous(text: str) -> bool:
    """Whether a line suggests abuse, self-harm or danger: for a human to look at, never judged."""
    return _DANGER.search(text) is not None


_NAMES_STAFF = re.compile(r"\b(coach\w*|assistant|trainer|entrenador\w*|profe)\b", re.IGNORECASE)


def names_the_staff(text: str) -> bool:
    """Whether a line names a coach: then it is not the staff who should be asked to look."""
    return _NAMES_STAFF.search(text) is not None
