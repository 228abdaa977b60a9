"""What the staff set by a line: a limit of their own, or a rule book, for one pitcher.

"limit Mateo 45", "limit Mateo 45 sat", "limit Leo to 30 until 5/20", "no limit for Mateo";
"book little-league for Leo on sat".
"""

import re
from dataclasses import dataclass
from datetime import date, datetime

from core.reading.asking.upcoming import upcoming_days

_SET = re.compile(
    r"^\s*(?:set (?:a )?)?limit (?:for )?(?P<who>[^\d]+?)[,:]? (?:to |at |is |= ?)?"
    r"(?P<n>\d{1,3})(?: ?p| pitches)?(?P<when>(?: .+)?)$",
    re.IGNORECASE,
)
_LIFT = re.compile(
    r"^\s*(?:no|lift|remove|drop)(?: the)? limit (?:for |on |of )?(?P<who>[^\d]+?)\s*$"
    r"|^\s*(?:lift|remove|drop) (?P<whose>[^\d]+?)'?s limit\s*$",
    re.IGNORECASE,
)
_UNTIL = re.compile(r"\b(until|till|through|thru|til)\b", re.IGNORECASE)
MOST = 200


_BOOK = re.compile(
    r"^\s*(?:rule ?)?book (?P<book>[a-z][a-z0-9-]+) for (?P<who>.+?) on (?P<when>.+?)\s*$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class BookOrder:
    """A rule book that binds one pitcher's outing on a day, beside the others.

    `unclear` quotes what could not be read: then nothing is set.
    """

    who: str
    book: str
    on: date
    unclear: str = ""


def book_order(text: str, posted: datetime) -> BookOrder | None:
    """The book named for an outing in a line, or none; `posted` is local wall-clock time."""
    found = _BOOK.match(text)
    if found is None:
        return None
    today = posted.date()
    days = upcoming_days(found["when"], today)
    book, who = found["book"].lower(), found["who"].strip()
    if days is None or len(days) != 1:
        return BookOrder(who, book, today, unclear=found["when"])
    return BookOrder(who, book, days[0])


@dataclass(frozen=True, slots=True)
class LimitOrder:
    """A limit for one pitcher: `pitches` a day, or none to lift it.

    Without a day it holds from today on; `last` none means until it is lifted. `unclear`
    quotes what could not be read: then nothing is set.
    """

    who: str
    pitches: int | None
    first: date
    last: date | None
    unclear: str = ""


def limit_order(text: str, posted: datetime) -> LimitOrder | None:
    """The order in a line, or none where it is no order; `posted` is local wall-clock time."""
    today = posted.date()
    lifted = _LIFT.match(text)
    if lifted is not None:
        return LimitOrder((lifted["who"] or lifted["whose"]).strip(), None, today, None)
    found = _SET.match(text)
    if found is None:
        return None
    who, pitches, when = found["who"].strip(), int(found["n"]), found["when"].strip()
    if not 1 <= pitches <= MOST:
        return LimitOrder(who, pitches, today, None, unclear=found["n"])
    until = _UNTIL.search(when)
    days = upcoming_days(_UNTIL.sub(" ", when), today) if when else ()
    if days is None or (when and not days):
        return LimitOrder(who, pitches, today, None, unclear=when)
    if not days:
        return LimitOrder(who, pitches, today, None)
    return LimitOrder(who, pitches, today if until else days[0], days[-1])
