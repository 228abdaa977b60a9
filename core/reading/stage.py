"""Whether a line says that its count is a count so far, or the final one."""

import re
from enum import StrEnum


class Stage(StrEnum):
    """Where in the outing the count was taken."""

    SO_FAR = "so far"
    FINAL = "final"


# English and Spanish words of the trade; a count "after 3 innings" is one on the way.
_SO_FAR = re.compile(
    r"\b(so far|thru|through \w+|at the half|after (the )?\w+ ?(inn\w*|st|nd|rd|th)?|still (in|going)"
    r"|hasta ahora|van|lleva|llevo|despu[eé]s de \w+ (entradas?|inn\w*))\b",
    re.IGNORECASE,
)
_FINAL = re.compile(
    r"\b(finish\w*|final\w*|ended|end up|total\w*|done (with|at)|termin\w+|acab\w+)\b",
    re.IGNORECASE,
)


def stage_of(text: str) -> Stage | None:
    """What a line says of its count; a final word wins over one on the way."""
    if _FINAL.search(text):
        return Stage.FINAL
    return Stage.SO_FAR if _SO_FAR.search(text) else None
