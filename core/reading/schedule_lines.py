"""What the staff set about messages by the clock: "monday summary at 6:30", "spin reminders off".

Cues ("add cue: half effort, spin first"), the spin plan ("spin plan 3 x 12 for Leo"), and the
lists of all that. Several lines of one message are several orders.
"""

import re
from dataclasses import dataclass, replace
from datetime import time

from core.model import ScheduleKind
from core.reading.asking.asked import Activity
from core.reading.asking.items import clock_time

_NAMES: tuple[tuple[ScheduleKind, str], ...] = (
    (ScheduleKind.MONDAY_SUMMARY, r"(?:monday|weekly) summary|summary"),
    (ScheduleKind.SPIN, r"spin (?:reminders?|messages?)"),
    (ScheduleKind.POST_GAME, r"post[- ]?game (?:questions?|reminders?)|game[- ]day questions?"),
    (
        ScheduleKind.REST_EVENING,
        r"(?:evening rest(?:[- ]days?)? (?:messages?|reminders?)"
        r"|rest(?:[- ]days?)? (?:messages?|reminders?) (?:the evening )?before (?:a |the )?games?)",
    ),
    (ScheduleKind.REST_DAYS, r"rest(?:[- ]days?)? (?:messages?|reminders?|nudges?)"),
)
_DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_WEEKDAY = re.compile(
    r"\b(?P<day>mon|tue|wed|thu|fri|sat|sun)(?:s|day|sday|nesday|rsday|rs|r|urday)?s?\b",
    re.IGNORECASE,
)
_TIME = re.compile(r"\b(\d{1,2}(?:[:.]\d{2})? ?(?:am|pm|a|p)?|noon)(?= |$|,)", re.IGNORECASE)
_BEFORE = re.compile(
    r"^(?:(?P<n>\d{1,3}) ?(?:minutes?|mins?|m) )?before (?:the )?practices?$", re.IGNORECASE
)
_NOT_BEFORE = re.compile(
    r"^(?:not|never) before (?:the )?practices?$|^at (?:its|the) own time$", re.IGNORECASE
)
_FOR = re.compile(r" for (?:the )?(?P<team>[\w.'’-]+(?: [\w.'’-]+){0,3})$", re.IGNORECASE)
_GLUE = re.compile(r"\b(?:at|on|to|every|each|is|now|for)\b|[,=]", re.IGNORECASE)
_TURN = re.compile(r"^(?:turn |switch )?(?P<how>off|on|stop|start) (?:the )?(?P<rest>.+)$", re.I)
_SWITCH = {"off": False, "stop": False, "no": False, "on": True, "start": True}
_DEFAULT = frozenset({"default", "standard", "reset", "back to default"})
_OF = r"(?: for (?P<team>[^:]{2,60}))?"
_ADD_CUE = re.compile(
    rf"^(?:add (?:a )?)?(?:new )?cue{_OF}: *(?P<cue>.+)$|^add (?:a )?cue +(?P<two>.+)$",
    re.IGNORECASE,
)
_DROP_CUE = re.compile(
    rf"^(?:remove|drop|delete) (?:the )?cue(?:{_OF}: *| +)(?P<cue>.+)$", re.IGNORECASE
)
_ACTIVITIES: tuple[tuple[Activity, str], ...] = (
    (Activity.CATCHER, r"catching|catcher|behind the plate"),
    (Activity.CATCH, r"catch play|catch|long toss"),
    (Activity.THROW, r"throwing|throw|bullpens?"),
    (Activity.POSITION, r"(?:other )?positions?|fielding|the field"),
    (Activity.HIT, r"hitting|hit|batting"),
)
_REST_DAY = re.compile(
    r"^(?:set )?(?:on a )?rest[- ]days?,? "
    rf"(?P<activity>{'|'.join(names for _, names in _ACTIVITIES)}){_OF}: *(?P<words>.+)$",
    re.IGNORECASE,
)
_PLAN = re.compile(
    r"^(?:set )?spin plan(?: for (?P<who>[^\d,:]+?))?:? *"
    r"(?:(?P<sessions>\d{1,2}) ?(?:x|×|times|sessions of) ?(?P<reps>\d{1,3})(?: reps)?"
    r"|(?P<default>default|standard|reset))(?: a week)?(?: for (?P<whom>[^\d,:]+?))?$",
    re.IGNORECASE,
)
_PLAN_BARE = re.compile(r"^(?:set )?spin plan\b(?P<rest>.*\d.*)$", re.IGNORECASE)
_LIST = re.compile(r"^(?:show |list )?(?:the |our |all )?(?:schedules?|reminders|cues)$", re.I)
_FORECAST = re.compile(
    r"^what(?: will| do| are| is|'ll|'s)? ?(?:you |spinkeeper )?(?:going to |gonna )?"
    r"(?:send|sending|post|coming up|coming)(?: out)?(?: (?:this|next) week)?"
    r"(?:,? ?(?:and )?to wh(?:om|o))?(?: this week)?$",
    re.IGNORECASE,
)
LONGEST_CUE = 120
LONGEST_WORDS = 200  # as a team file takes them
MOST_SESSIONS, MOST_REPS = 7, 60
LONGEST_BEFORE = 180
LONGEST_TIME = 40  # characters of "thursdays at 5:30 pm", with some words around it
MOST_ORDERS = 20


@dataclass(frozen=True, slots=True)
class ScheduleOrder:
    """One change of one schedule; what is none stays as it is.

    `unclear` quotes what could not be read: then nothing is set.
    """

    kind: ScheduleKind
    weekday: int | None = None
    at: time | None = None
    is_on: bool | None = None
    before_practice: int | None = None
    cue: str = ""
    drops_cue: bool = False
    is_default: bool = False
    #: The team as typed, where one is named.
    team: str = ""
    unclear: str = ""


@dataclass(frozen=True, slots=True)
class PlanOrder:
    """A week's spin reps for a team, or for one pitcher; without numbers, the default again."""

    sessions: int | None = None
    reps: int | None = None
    who: str = ""
    unclear: str = ""


@dataclass(frozen=True, slots=True)
class ScheduleList:
    """Somebody wants to read the schedules, or what they will send this week."""

    forecast: bool


@dataclass(frozen=True, slots=True)
class RestDayOrder:
    """What the coach allows on a rest day for one activity, in the coach's own words.

    Without words it is what the team's file says again.
    """

    activity: Activity
    words: str = ""
    team: str = ""
    unclear: str = ""


Order = ScheduleOrder | PlanOrder | RestDayOrder


def schedule_list(text: str) -> ScheduleList | None:
    """The list that a line asks for, or none."""
    said = " ".join(text.split()).rstrip("?.! ")
    if _FORECAST.match(said):
        return ScheduleList(forecast=True)
    return ScheduleList(forecast=False) if _LIST.match(said) else None


def schedule_orders(text: str) -> tuple[Order, ...]:
    """The orders of a message, one for each of its lines; none where any line is no order."""
    lines = [" ".join(line.split()) for line in text.splitlines() if line.strip()]
    if len(lines) > MOST_ORDERS:
        return ()
    found = [_order(line) for line in lines]
    known = tuple(one for one in found if one is not None)
    return known if len(known) == len(found) else ()


def _order(said: str) -> Order | None:
    if len(said) > LONGEST_WORDS + 60:
        return None
    cue = _ADD_CUE.match(said) or _DROP_CUE.match(said)
    if cue is not None:
        return _cue(cue, said)
    rest_day = _REST_DAY.match(said)
    if rest_day is not None:
        return _rest_day(rest_day)
    said = said.rstrip(".! ")
    plan = _PLAN.match(said)
    if plan is not None:
        return _plan(plan)
    bare = _PLAN_BARE.match(said)
    if bare is not None:
        return PlanOrder(unclear=bare["rest"].strip())
    team = _FOR.search(said)
    order = _schedule(said[: team.start()] if team is not None else said)
    return replace(order, team=team["team"]) if order is not None and team is not None else order


def _schedule(said: str) -> ScheduleOrder | None:
    turn = _TURN.match(said)
    if turn is not None:
        kind, rest = _named(turn["rest"])
        alone = kind is not None and not rest
        return ScheduleOrder(kind, is_on=_SWITCH[turn["how"].lower()]) if alone and kind else None
    kind, rest = _named(said)
    return _changed(kind, rest) if kind is not None and rest else None


def _named(said: str) -> tuple[ScheduleKind | None, str]:
    for kind, name in _NAMES:
        found = re.match(rf"(?:the |our )?(?:{name})\b:? *(?P<rest>.*)$", said, re.IGNORECASE)
        if found is not None:
            return kind, found["rest"].strip()
    return None, said


def _changed(kind: ScheduleKind, rest: str) -> ScheduleOrder | None:
    word = rest.casefold()
    if word in _SWITCH:
        return ScheduleOrder(kind, is_on=_SWITCH[word])
    if word in _DEFAULT:
        return ScheduleOrder(kind, is_default=True)
    if kind is ScheduleKind.SPIN:
        before = _BEFORE.match(rest)
        if before is not None:
            minutes = int(before["n"] or 30)
            unclear = "" if 5 <= minutes <= LONGEST_BEFORE else rest
            return ScheduleOrder(kind, before_practice=minutes, unclear=unclear)
        if _NOT_BEFORE.match(rest):
            return ScheduleOrder(kind, before_practice=0)
    return _at(kind, rest)


def _at(kind: ScheduleKind, rest: str) -> ScheduleOrder | None:
    """A weekday and a time, either may be missing; any other word makes it no order."""
    day = _WEEKDAY.search(rest)
    left = _WEEKDAY.sub(" ", rest)
    typed = _TIME.findall(left)
    left = _GLUE.sub(" ", _TIME.sub(" ", left)).strip()
    if (left and not (day or typed)) or len(rest) > LONGEST_TIME:
        return None
    at = clock_time(typed[0].lower().replace(".", ":")) if len(typed) == 1 else None
    wrong = bool(left) or len(typed) > 1 or (bool(typed) and at is None)
    if wrong or len(_WEEKDAY.findall(rest)) > 1:
        return ScheduleOrder(kind, unclear=rest)
    weekday = _DAYS.index(day["day"].lower()) if day is not None else None
    return ScheduleOrder(kind, weekday=weekday, at=_meant(kind, typed, at))


def _meant(kind: ScheduleKind, typed: list[str], at: time | None) -> time | None:
    """An hour without am or pm: a summary is read in the morning, all else as games are timed."""
    if at is None or kind is not ScheduleKind.MONDAY_SUMMARY or re.search("[apn]", typed[0], re.I):
        return at
    hour = int(re.findall(r"\d+", typed[0])[0])
    return time(hour, at.minute) if hour < 24 else at


def _cue(found: re.Match[str], said: str) -> ScheduleOrder | None:
    groups = found.groupdict()
    cue = (groups.get("cue") or groups.get("two") or "").strip().strip('“”"')
    drops = _ADD_CUE.match(said) is None
    unclear = cue if not cue or len(cue) > LONGEST_CUE else ""
    team = (groups.get("team") or "").strip()
    return ScheduleOrder(ScheduleKind.SPIN, cue=cue, drops_cue=drops, team=team, unclear=unclear)


def _rest_day(found: re.Match[str]) -> RestDayOrder:
    activity = next(
        one for one, names in _ACTIVITIES if re.fullmatch(names, found["activity"], re.IGNORECASE)
    )
    words, team = found["words"].strip().strip('“”"'), (found["team"] or "").strip()
    if words.casefold() in _DEFAULT:
        return RestDayOrder(activity, team=team)
    unclear = words if len(words) > LONGEST_WORDS else ""
    return RestDayOrder(activity, words, team, unclear)


def _plan(found: re.Match[str]) -> PlanOrder:
    who = (found["who"] or found["whom"] or "").strip()
    if found["default"]:
        return PlanOrder(who=who)
    sessions, reps = int(found["sessions"]), int(found["reps"])
    fits = 1 <= sessions <= MOST_SESSIONS and 1 <= reps <= MOST_REPS
    return PlanOrder(sessions, reps, who, unclear="" if fits else f"{sessions} x {reps}")
