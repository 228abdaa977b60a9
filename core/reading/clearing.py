"""An adult's record of a clinician's clearance: "cleared Mateo by Dr. Reyes 5/20, no games"."""

import re
from dataclasses import dataclass
from datetime import date, datetime

from core.pain.status import ClinicianLimit, LimitKind
from core.reading.asking.upcoming import past_day, upcoming_days

_ORDER = re.compile(
    r"^\s*cleared\b(?! up\b)(?: (?P<who>(?!by\b)[^\d,;:]+?))?(?: by\b(?P<by>.*))?$"
    r"|^\s*(?P<whose>[^\d,;:]+?)(?: (?:is|was|has been|got))? cleared(?: by\b(?P<bywhom>.*))?$",
    re.IGNORECASE | re.DOTALL,
)
_SEPARATOR = re.compile(r"\s*[,;\n]\s*|\s+with\s+|:\s+")
_WORD = re.compile(r"[^\W\d_]{2,}")
#: Words that stand for a clinician without naming one, or that name somebody else.
_NO_NAME = frozenset(
    {
        "dr", "doctor", "doc", "the", "his", "her", "my", "our", "clinician", "physician", "pt",
        "therapist", "trainer", "orthopedist", "surgeon", "coach", "mom", "dad", "mother",
        "father", "parent", "me", "us", "himself", "herself", "myself", "on", "at",
    }
)  # fmt: skip
_UNTIL = re.compile(r"\s*\b(?:until|till|til|thru|through)\b\s*(?P<day>.*)$", re.IGNORECASE)
_AMOUNT = r"(?:(?:max(?:imum)?|at most|up to|only|limit(?:ed)? to) )?"
_LIMITS: tuple[tuple[LimitKind, re.Pattern[str]], ...] = tuple(
    (kind, re.compile(f"^{words}$", re.IGNORECASE))
    for kind, words in (
        (LimitKind.NO_THROWING, r"no throwing(?: at all)?"),
        (LimitKind.NO_PITCHING, r"no (?:games?|pitching|mound|game pitching)"),
        (LimitKind.ONLY_CATCH, r"(?:only )?(?:light )?(?:catch play|catch|toss)(?: only)?"),
        (
            LimitKind.NO_BREAKING,
            r"no (?:breaking ?balls?|breaking stuff|curves?|curveballs?|sliders?|spin)",
        ),
        (
            LimitKind.MOST_THROWS,
            _AMOUNT + r"(?P<n>\d{1,3}) (?:throws|pitches)(?: (?:a|per) day)?"
            r"(?: (?:at|from) (?P<feet>\d{1,3}) ?(?:ft|feet|'))?",
        ),
        (LimitKind.MOST_FEET, _AMOUNT + r"(?P<n>\d{1,3}) ?(?:ft|feet|')"),
    )
)
_NONE = re.compile(r"^(?:no (?:limits?|restrictions?)|full|fully|to throw|to pitch)$", re.I)


@dataclass(frozen=True, slots=True)
class ClearanceOrder:
    """A clearance as typed. `problem` names the part that is missing or cannot be read.

    `who` is empty where the line names no pitcher; `is_sure` tells that the words can mean
    nothing else ("cleared … by …").
    """

    who: str
    clinician: str = ""
    on: date | None = None
    limits: tuple[ClinicianLimit, ...] = ()
    problem: str = ""
    about: str = ""
    is_sure: bool = True


def clearance_order(text: str, posted: datetime) -> ClearanceOrder | None:
    """The clearance in a line, or none where it is none; `posted` is local wall-clock time."""
    found = _ORDER.match(text.strip())
    if found is None:
        return None
    who = (found["who"] or found["whose"] or "").strip()
    by = found["by"] if found["by"] is not None else found["bywhom"]
    if by is None:
        return ClearanceOrder(who, problem="name", is_sure=False) if who else None
    parts = [part for part in _SEPARATOR.split(by.strip().rstrip(".!")) if part]
    name, on, rest = _name_and_day(parts, posted.date())
    if not _is_a_name(name):
        return ClearanceOrder(who, problem="name", about=name)
    if on is None or on > posted.date():
        return ClearanceOrder(who, name, problem="day", about=by.strip())
    limits: list[ClinicianLimit] = []
    for part in rest:
        read = _limits(part, posted.date())
        if read is None:
            return ClearanceOrder(who, name, on, problem="limit", about=part)
        limits += read
    return ClearanceOrder(who, name, on, tuple(limits))


def _name_and_day(parts: list[str], today: date) -> tuple[str, date | None, list[str]]:
    """The clinician, the day, and the parts that are left; the day stands last or alone."""
    if not parts:
        return "", None, []
    words = parts[0].split()
    for place in range(len(words)):
        on = past_day(" ".join(words[place:]), today)
        if on is not None:
            name = " ".join(words[:place])
            return re.sub(r" on$", "", name, flags=re.IGNORECASE), on, parts[1:]
    if len(parts) > 1 and (on := past_day(parts[1], today)) is not None:
        return parts[0], on, parts[2:]
    return parts[0], None, parts[1:]


def _is_a_name(name: str) -> bool:
    """Whether a clinician is named: a word that is no title and nobody else's."""
    words = [word.casefold() for word in _WORD.findall(name)]
    return any(word not in _NO_NAME for word in words) and len(name) <= 80


def _limits(part: str, today: date) -> list[ClinicianLimit] | None:
    until = _UNTIL.search(part)
    last: date | None = None
    if until is not None:
        days = upcoming_days(until["day"], today)
        if not days:
            return None
        part, last = part[: until.start()], days[-1]
    words = part.strip()
    if _NONE.match(words):
        return []
    for kind, pattern in _LIMITS:
        found = pattern.match(words)
        if found is None:
            continue
        amounts = found.groupdict()
        n = int(amounts["n"]) if amounts.get("n") else None
        limits = [ClinicianLimit(kind, n, last)]
        if amounts.get("feet"):
            limits.append(ClinicianLimit(LimitKind.MOST_FEET, int(amounts["feet"]), last))
        return limits
    return None
