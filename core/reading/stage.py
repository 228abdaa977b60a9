"""What a line says of its count besides the number: so far, final, put right, of which game."""

import re
from enum import StrEnum

from rapidfuzz import fuzz


class Stage(StrEnum):
    """Where in the outing the count was taken."""

    SO_FAR = "so far"
    FINAL = "final"


# English and Spanish words of the trade; a count "after 3 innings" is one on the way.
_SO_FAR = re.compile(
    r"\b(so far|thru|still (in|going)|(after|through) (the )?\w+(st|nd|rd|th)? ?inn\w*"
    r"|(after|through) (the )?\d\w*|hasta ahora|llev[ao]|despu[eé]s de \w+ (entradas?|inn\w*))\b",
    re.IGNORECASE,
)
_FINAL = re.compile(
    r"\b(finish\w*|final\w*|ended|end(ed)? up|total\w*|termin\w+|acab\w+)\b", re.IGNORECASE
)
# "It was" alone opens many a line; before a number it puts one right.
_PUT_RIGHT = re.compile(
    r"\b(?:w?oops\w*|actually|correction|my bad|i meant|make that|should (?:be|have been)"
    r"|en realidad|perd[oó]n|quise decir|me equivoqu[eé]|correcci[oó]n)\b"
    r"|\b(?:it was|fueron|eran) (?:only |just |really |solo |sólo )?\d",
    re.IGNORECASE,
)
_OPPONENT = re.compile(
    r"(?:\b(?:vs?\.?|versus|against|contra) +|@ ?)(?:the |los |las )?(?P<name>[^\W\d]{2,})",
    re.IGNORECASE,
)
#: Names less alike than this (percent) are two opponents; nearer ones may be one, mistyped.
_ALIKE = 75
_GAME = re.compile(
    r"\b(?:game|gm|juego) ?#?(?P<n>[123]|one|two|uno|dos)\b|\bg(?P<g>[123])\b"
    r"|\b(?P<first>first|1st|primer) (game|juego)\b"
    r"|\b(?P<second>second|2nd|segundo) (game|juego)\b|\b(?P<cap>nightcap)\b",
    re.IGNORECASE,
)
_NUMBERS = {"1": 1, "2": 2, "3": 3, "one": 1, "two": 2, "uno": 1, "dos": 2}


def stage_of(text: str) -> Stage | None:
    """What a line says of its count; a final word wins over one on the way."""
    if _FINAL.search(text):
        return Stage.FINAL
    return Stage.SO_FAR if _SO_FAR.search(text) else None


def puts_right(text: str) -> bool:
    """Whether a line says that it corrects what was said before ("oops", "it was 52")."""
    return _PUT_RIGHT.search(text) is not None


def another_opponent(one: str, other: str) -> bool:
    """Whether two lines each name an opponent, and not the same one."""
    names = [_OPPONENT.search(text) for text in (one, other)]
    if names[0] is None or names[1] is None:
        return False
    first, second = (found["name"].lower() for found in names if found is not None)
    return fuzz.ratio(first, second) < _ALIKE


def game_of_day(text: str) -> int | None:
    """Which game of the day a line names, 1 to 3; none where it names none or several."""
    named = {_number(found) for found in _GAME.finditer(text)}
    return named.pop() if len(named) == 1 else None


def _number(found: re.Match[str]) -> int:
    number = found["n"] or found["g"]
    if number:
        return _NUMBERS[number.lower()]
    return 1 if found["first"] else 2
