"""What must hold for the reading of any text at all, whatever it says.

From the line format: the keys and their ranges, sums that must fit, days that are past, numbers
that are all accounted for. Used by the property tests and by tests/bench/fuzz_reading.
"""

import re
from collections.abc import Iterator, Sequence
from datetime import datetime

from core.reading import Entry, Reading
from core.reading.account import LEFT_OVER, Accounted
from core.reading.invisible import places_seen
from core.reading.vocabulary import language

KEYS = frozenset(
    {"who", "except", "kind", "on", "pitches", "breaking", "curve", "slider", "changeup",
     "fastball", "strikes", "breaking_strikes", "outs", "caught_outs", "effort", "pain", "about",
     "tired"}
)  # fmt: skip
KINDS = frozenset({"game", "bullpen", "catch", "live", "off"})
COUNTS = (
    "pitches", "breaking", "curve", "slider", "changeup", "fastball", "strikes",
    "breaking_strikes", "outs", "caught_outs", "effort",
)  # fmt: skip
SITES = frozenset(
    name for lang in ("en", "es") for _, symbol, name in language(lang).phrases if symbol == "site"
)
SIDES = frozenset({None, "left", "right"})
WHEN = frozenset({None, "during", "after", "next day", "at rest"})
MOST_OUTS = 36  # twelve innings
MOST_PITCHES = 200
SORTS_OF_FASTBALL = 3  # "12 four-seam, 11 two-seam, 9 sinkers" are told as one sum
# (part, whole): a part is never more than its whole.
_PARTS = (
    ("breaking", "pitches"), ("changeup", "pitches"), ("fastball", "pitches"),
    ("strikes", "pitches"), ("curve", "breaking"), ("slider", "breaking"),
    ("breaking_strikes", "breaking"), ("breaking_strikes", "strikes"),
)  # fmt: skip
# What may be left over in a log: halves and "one", and all but plain numbers ("5th", "12-6 curve").
_PLAIN_NUMBER = re.compile(r"[\d.,/\s]+%?")
_HALF = frozenset({"1/2", "1/ 2", "1 /2", "1 / 2"})
_WORKED_OUT = re.compile(
    r"%|[/+x×*½⅓⅔¼¾]|percent|pct|porc|ciento|half|third|quarter|fifth|sets|series|tandas|rondas|rounds"
    r"|every one|all|mitad|tercio|medi|puras?|puros?|tod[ao]s",
    re.IGNORECASE,
)
_REST = re.compile(r"\b(rest|resto|dem[aá]s)\b", re.IGNORECASE)  # "35. 7 cb. 5 ch. rest fb"
_SPELLED = re.compile(
    r"[a-z]*(ty|teen|ta|nte|ce|te)\b|one|two|three|four|five|six|seven|eight|nine|ten\b|eleven"
    r"|twelve|do[cz]en|dos|tres|cuatro|cinco|seis|siete|ocho|nueve|diez|once|veinti|dieci|inning"
    r"|cien\b|entrada|\ban?\b|\bun[ao]?\b|same|ditto|mismo",
    re.IGNORECASE,
)


def faults(
    text: str, posted: datetime, reading: Reading, numbers: Sequence[Accounted]
) -> Iterator[str]:
    """Each thing that does not hold, in words; nothing for a sound reading."""
    text = seen(text)
    for entry in reading.entries:
        yield from entry_faults(entry, posted)
        yield from _made_up(entry, text)
    yield from _names_from_nowhere(text, reading)
    yield from _unasked(reading, numbers)


def seen(text: str) -> str:
    """The text as people see it."""
    places = places_seen(text)
    return text if places is None else "".join(text[place] for place in places)


def entry_faults(entry: Entry, posted: datetime) -> Iterator[str]:
    """What does not hold of one entry."""
    keys = set(entry.as_json())
    if not keys and not entry.day_named:
        yield "an entry without a key"
    if not keys <= KEYS:
        yield f"unknown key {keys - KEYS}"
    if entry.kind is not None and entry.kind not in KINDS:
        yield f"unknown kind {entry.kind}"
    if entry.except_ and entry.who != "everyone":
        yield "except without everyone"
    if entry.on is not None and entry.on >= posted.date():
        yield "a day that is not past"
    if entry.about and not any(getattr(entry, name) is not None for name in COUNTS):
        yield "about without a count"
    yield from _count_faults(entry)
    yield from _pain_faults(entry)


def _count_faults(entry: Entry) -> Iterator[str]:
    values = {name: getattr(entry, name) for name in COUNTS}
    stated = {name: value for name, value in values.items() if value is not None}
    yield from (f"{name} below zero" for name, value in stated.items() if value < 0)
    most = {"effort": 100, "outs": MOST_OUTS, "caught_outs": MOST_OUTS}
    for name, value in stated.items():
        if value > most.get(name, MOST_PITCHES):
            yield f"{name} too large"
    for part, whole in _PARTS:
        if part in stated and whole in stated and stated[part] > stated[whole]:
            yield f"more {part} than {whole}"
    by_type = [stated.get(name, 0) for name in ("breaking", "changeup", "fastball")]
    if "pitches" in stated and sum(by_type) > stated["pitches"]:
        yield "more pitches by type than pitches"
    if {"curve", "slider"} & set(stated):
        short = stated.get("breaking", -1) < stated.get("curve", 0) + stated.get("slider", 0)
        yield from ["breaking below the sum of curve and slider"] if short else []
    if entry.kind == "off" and stated:
        yield "counts on a day off"


def _pain_faults(entry: Entry) -> Iterator[str]:
    for pain in entry.pain or ():
        if pain.site not in SITES:
            yield f"unknown site {pain.site}"
        if pain.severity is not None and not 0 < pain.severity <= 10:
            yield "severity out of range"
        if pain.side not in SIDES or pain.when not in WHEN:
            yield "unknown side or when"
    sites = [(pain.site, pain.side) for pain in entry.pain or ()]
    if len(set(sites)) < len(sites):
        yield "a site twice"


def _made_up(entry: Entry, text: str) -> Iterator[str]:
    for name in ("pitches", "changeup", "fastball", "curve", "slider"):
        value = getattr(entry, name)
        terms = SORTS_OF_FASTBALL if name == "fastball" else 2
        if value is not None and not derivable(value, text, terms):
            yield f"{name} that the text does not hold"


def derivable(value: int, text: str, terms: int = 2) -> bool:
    """Typed as digits, or by words, or worked out of a share, a sum of so many, sets or "no"."""
    typed = {int(digits) for digits in re.findall(r"\d+", text)}
    sums = typed
    for _ in range(terms - 1):
        sums = sums | {
            total + one for total in sums for one in typed if total + one <= MOST_PITCHES
        }
    if value == 0 or value in sums:
        return True
    if _REST.search(text) and any(whole - part == value for whole in typed for part in sums | {0}):
        return True
    return _WORKED_OUT.search(text) is not None or _SPELLED.search(text) is not None


def _names_from_nowhere(text: str, reading: Reading) -> Iterator[str]:
    folded = " ".join(text.casefold().split())
    for entry in reading.entries:
        for name in (entry.who, *entry.except_):
            typed = " ".join(seen(name or "").casefold().split())
            if typed not in folded and not typed.startswith("everyone"):
                yield "a name that the text does not hold"
    for unread in reading.unread:
        if not unread.text.strip():
            yield "an empty question"
        elif "".join(seen(unread.text).split()) not in "".join(text.split()):
            yield "a question about what was not typed"


def _unasked(reading: Reading, numbers: Sequence[Accounted]) -> Iterator[str]:
    if not reading.entries:
        return
    asked = " ".join(seen(unread.text) for unread in reading.unread)
    for number in numbers:
        plain = _PLAIN_NUMBER.fullmatch(number.text) and number.text not in _HALF
        if number.use == LEFT_OVER and plain and number.text not in asked:
            yield "a number left over and not asked about"
