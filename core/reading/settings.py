"""What the staff set by words: "set mix 18% for Mateo", "mix off for Leo", "thresholds"."""

import re
from dataclasses import dataclass
from functools import cache

from core.alerts.thresholds import THRESHOLDS, Key, Threshold

OFF = frozenset({"off", "no", "none"})
ON = frozenset({"on", "yes"})
BACK = frozenset({"default", "standard", "reset", "the default", "team", "like the team"})
#: What may be set without the word "set", and how.
_BARE = frozenset({"off", "on", "default"})
_BARE_KEYS = frozenset({Key.MIX, Key.LOW_MIX, Key.CHANGEUP, Key.GAME_BREAKING})
_FOR = re.compile(r"\s*\bfor (?P<who>[^\d%]+?)\s*$", re.IGNORECASE)
_NUMBER = re.compile(
    r"^(?:to |at |over |= ?)?(?P<n>-?\d{1,6})"
    r" ?(?:%|percent|breaking balls|in a game|throws|pitches|reports|reps|days|months|games"
    r"|(?:% )?of the cap|outs(?: caught)?|of 10)?$"
)
_LIST = re.compile(
    r"^\s*(?:(?:show|list) )?(?:the )?(?P<all>all )?(?:the )?(?P<what>thresholds|alerts)"
    r"(?: (?:for|of) (?P<who>[^\d%]+?))?\s*$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class SettingOrder:
    """One threshold set to a number, off, or back to its default; `who` empty means the team.

    `unclear` quotes a value that the threshold does not take: then nothing is set.
    """

    key: Key
    who: str = ""
    value: int | None = None
    is_default: bool = False
    unclear: str = ""


@dataclass(frozen=True, slots=True)
class ListOrder:
    """The staff want to read the thresholds, or the alerts, of a team or of one pitcher."""

    alerts: bool
    who: str = ""
    #: Each with its meaning, not only what differs from the defaults.
    in_full: bool = False


def list_order(text: str) -> ListOrder | None:
    """The list that a line asks for, or none."""
    found = _LIST.match(text)
    if found is None:
        return None
    return ListOrder(
        found["what"].casefold() == "alerts", found["who"] or "", found["all"] is not None
    )


def setting_orders(text: str) -> tuple[SettingOrder, ...]:
    """The settings in a text, one in each of its lines; none where one of them is no setting."""
    orders = [setting_order(one) for one in text.strip().splitlines() if one.strip()]
    found = tuple(one for one in orders if one is not None)
    return found if len(found) == len(orders) else ()


def setting_order(text: str) -> SettingOrder | None:
    """The setting in one line, or none where it is none."""
    found = _pattern().match(text.strip())
    if found is None:
        return None
    row = _named()[found["name"].casefold()]
    rest = found["rest"].strip(" .!")
    who, value = _whom_and_value(row, rest)
    if not found["set"] and (value not in _BARE or row.key not in _BARE_KEYS):
        return None  # "mix for Leo" is a question, "pain no" a report
    return valued(row, who, value)


def _whom_and_value(row: Threshold, rest: str) -> tuple[str, str]:
    """For whom and what: "18% for Mateo", "for Mateo 18%"; a name may have digits in it."""
    head, between, tail = rest.partition(" for ")
    if between and not valued(row, "", head).unclear:
        return tail.strip(), head.strip().casefold()
    whom = _FOR.search(rest)
    who = whom["who"].strip() if whom else ""
    value = (rest[: whom.start()] if whom else rest).strip().casefold()
    first = re.match(r"for (?P<who>[^\d%]+?) (?P<value>(?:to |at )?[\d-].*)$", rest, re.IGNORECASE)
    if not whom and first:
        return first["who"].strip(), first["value"].casefold()
    return who, value


def valued(row: Threshold, who: str, typed: str) -> SettingOrder:
    """The setting that a typed value makes; `unclear` where the threshold does not take it."""
    value = typed.strip().casefold()
    if value in BACK:
        return SettingOrder(row.key, who, is_default=True)
    if value in OFF:
        unclear = "" if row.may_be_off else value
        return SettingOrder(row.key, who, unclear=unclear)
    if value in ON and row.default is not None:
        return SettingOrder(row.key, who, row.default)
    number = _NUMBER.match(value)
    if number is None or not row.low <= int(number["n"]) <= row.high:
        return SettingOrder(row.key, who, unclear=value or "nothing")
    return SettingOrder(row.key, who, int(number["n"]))


@cache
def _named() -> dict[str, Threshold]:
    return {name.casefold(): row for row in THRESHOLDS for name in (row.key, *row.also_called)}


@cache
def _pattern() -> re.Pattern[str]:
    names = "|".join(re.escape(name) for name in sorted(_named(), key=len, reverse=True))
    return re.compile(
        rf"^(?P<set>set (?:the )?)?(?P<name>{names})(?: (?:alert|threshold|limit|line))?\b"
        r"(?P<rest>.*)$",
        re.IGNORECASE,
    )
