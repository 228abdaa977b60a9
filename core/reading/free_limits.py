"""A pitch limit in the staff's own words: "max 45 for Leo today", "keep Mateo under 50 saturday".

Only a line that says nothing else is taken; all others are left to the reader, which takes no
limit for a count.
"""

import re
from datetime import datetime

from core.reading.asking.upcoming import upcoming_days
from core.reading.orders import MOST, LimitOrder

MOST_WORDS = 3  # of a name
FEWEST = 10  # "max 3 for Leo" may be innings
_WHO = r"(?P<who><@[A-Z0-9|]+>|[^\W\d][^\d,:;.?!\n]{0,60}?)"
_N = r"(?P<n>\d{2,3})"
_NOUN = r"(?: ?(?:p|pc|pitch(?:es)?|throws|lanzamientos|lanz|tiros|pi[ct]c?heos|pitcheos))?"
_MOST = (
    r"(?:max(?:imum)?(?: of)?|at most|no more than|not more than|up to|limit(?: of)?|cap(?: of)?)"
)
_MOST_ES = (
    r"(?:m[aá]x(?:imo)?(?: de)?|no m[aá]s de|hasta|l[ií]mite(?: de)?|tope(?: de)?|a lo m[aá]s)"
)
_KEEP = r"(?:keep|hold|cap|limit)"
_OVER = r"(?:go|goes|throw|throws|pitch|run)?(?: (?:over|past|above|more than|beyond))"
_CANNOT = r"(?:can'?t|cannot|should ?n[o']?t|must not|not to|is not to|don'?t)"
_PASS = r"(?:pase|pasa|se pase|tire m[aá]s|lance m[aá]s) de"
# Each form, and how far below its number the limit lies ("under 50" is 49 at most).
_FORMS: tuple[tuple[str, int], ...] = (
    (
        rf"{_WHO}(?: is|'s|’s)? (?:on|at|under|has|gets) an? {_N}[ -]?(?:pitch|throw)?"
        r" ?(?:limit|max|cap)",
        0,
    ),
    (rf"{_WHO}(?: is|'s|’s)? (?:limited to|capped at|on a limit of) {_N}{_NOUN}", 0),
    (rf"{_WHO}(?:'s|’s)? limit (?:is |stays |today is )?(?:at )?{_N}{_NOUN}", 0),
    (rf"{_WHO}(?: is| at| gets| to| with)? {_MOST} {_N}{_NOUN}", 0),
    (rf"{_MOST} {_N}{_NOUN} (?:for|on) {_WHO}", 0),
    (rf"{_N}[ -]?{_NOUN}(?: is the)? (?:max|limit|cap|tops|at most) (?:for|on) {_WHO}", 0),
    (rf"{_KEEP} {_WHO} (?:at|to) {_N}{_NOUN}(?: max| or (?:less|fewer|under))?", 0),
    (rf"{_KEEP} {_WHO} (?:under|below) {_N}{_NOUN}", 1),
    (rf"(?:don'?t|do not) let {_WHO} {_OVER} {_N}{_NOUN}", 0),
    (rf"{_WHO} {_CANNOT} {_OVER} {_N}{_NOUN}", 0),
    (rf"(?:que )?{_WHO} (?:con |est[aá] en |tiene )?(?:un )?{_MOST_ES} {_N}{_NOUN}", 0),
    (rf"{_MOST_ES} {_N}{_NOUN} (?:para|a|con) {_WHO}", 0),
    (rf"(?:que |no dejen que |no dejes que )?{_WHO} no {_PASS} {_N}{_NOUN}", 0),
    (rf"no (?:dejen|dejes) que {_WHO} {_PASS} {_N}{_NOUN}", 0),
)
_GREETING = r"(?:(?:ok|hey|team|coaches|staff|fyi|note|reminder|ojo|oigan)[,:]? )?"
_OPENING = (
    r"(?:(?:ok|hey|team|coaches|staff|fyi|note|reminder|ojo|oigan)[,:]? )?(?:please |pls |let'?s )?"
)
_PATTERNS = tuple(
    (re.compile(rf"^\s*{_OPENING}{form}(?P<when>(?:[, ]+.+)?)$", re.IGNORECASE), less)
    for form, less in _FORMS
)
_LEADING = re.compile(
    r"^\s*(?P<day>today|tomorrow|tonight|(?:on |this |el )?(?:mon|tue|wed|thu|fri|sat|sun|lun|mar"
    r"|mi[eé]|jue|vie|s[aá]b|dom)\w*|hoy|ma[nñ]ana)[,:]? (?P<rest>.+)$",
    re.IGNORECASE,
)
_UNTIL = re.compile(r"\b(?:until|till|til|through|thru|hasta(?: el| la)?)\b", re.IGNORECASE)
_TAIL = re.compile(r"^(?:this|for|on|in the|starting|el|este|esta|para) ", re.IGNORECASE)
#: Words that name nobody, or that begin another kind of sentence.
_NOBODY = frozenset(
    {"the", "our", "league", "season", "daily", "what", "what's", "whats", "is", "if", "who", "we",
     "i", "he", "she", "they", "everyone", "all", "pitch", "pitches", "el", "la", "los", "todos",
     "que", "nadie", "quien", "threw", "lanzó", "tiró", "count", "max", "limit", "anyone",
     "nobody", "no", "and", "y", "but", "pero", "did", "does", "was", "has", "had", "can"}
)  # fmt: skip


def free_limit_order(text: str, posted: datetime) -> LimitOrder | None:
    """The limit in a line that says nothing else, or none; `posted` is local wall-clock time.

    `unclear` quotes an "until" whose day cannot be read: then nothing is set.
    """
    said = " ".join(text.split()).rstrip(" .!")
    led = _LEADING.match(said)
    for pattern, less in _PATTERNS:
        for line, day in ((said, ""), (led["rest"], led["day"])) if led else ((said, ""),):
            found = pattern.match(line)
            order = _order(found, day, less, posted) if found is not None else None
            if order is not None:
                return order
    return None


def _order(found: re.Match[str], day: str, less: int, posted: datetime) -> LimitOrder | None:
    who, pitches = found["who"].strip(), int(found["n"]) - less
    if not FEWEST <= pitches <= MOST:
        return None
    when = found["when"].strip(" ,").split()
    # "for Leo Ortiz on sat": the name may go on into what was taken for the day.
    longest = min(2, len(when)) if found.end("who") == found.start("when") else 0
    for size in range(longest + 1):
        name = " ".join([who, *when[:size]])
        order = _dated(name, pitches, " ".join([day, *when[size:]]).strip(), posted)
        if order is not None:
            return order
    return None


def _dated(who: str, pitches: int, when: str, posted: datetime) -> LimitOrder | None:
    words, today = who.casefold().split(), posted.date()
    if len(words) > MOST_WORDS or _NOBODY & set(words):
        return None
    until = _UNTIL.match(when)
    days = upcoming_days(_TAIL.sub("", _UNTIL.sub(" ", when).strip()), today) if when else ()
    if days is None or (when and not days):
        return LimitOrder(who, pitches, today, None, unclear=when) if until else None
    if not days:
        return LimitOrder(who, pitches, today, None)
    return LimitOrder(who, pitches, today if until else days[0], days[-1])


__all__ = ["free_limit_order"]
