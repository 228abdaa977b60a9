"""The settings of a team: their names, what they are now, and what was changed."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from bot.wording.words import counted, day, listed, safe

CHANGE = "Change"
THRESHOLDS = "Thresholds"
SCHEDULES = "Schedules"
ROSTER = "Roster"
ROLES = "Roles"
RULE_BOOKS = "Rule books"
TEAM = "Team"
QUIET = "Quiet hours"
QUIET_NOW = (
    "20:00 to 08:00. Fixed, and the same for every team: no unasked-for message reaches a pitcher "
    "or a family then, except pain, which goes to the adults at any hour."
)
CHANGES = "*Changes, newest first*"
NO_CHANGES = "Nothing has been changed yet."


def setting(title: str, now: str) -> str:
    """One setting with its present value."""
    return f"*{title}*: {now}"


def change_of(title: str) -> str:
    """The label of the button that changes a setting."""
    return f"{CHANGE}: {title.lower()}"


def roster(arms: int, with_consent: int) -> str:
    """How many pitchers a team has."""
    return f"{counted(arms, 'pitcher')}, {with_consent} with consent on file."


def roles(names: list[str]) -> str:
    """Who has a role on the team's staff."""
    return f"{listed([safe(one) for one in names]) or 'nobody yet'}."


def thresholds(changed: int) -> str:
    """How many thresholds differ from their defaults."""
    what = "all at their defaults" if not changed else f"{changed} not at the default"
    return f"{what}. “thresholds” lists them; “set mix 18%” sets one."


def rule_books(names: list[str]) -> str:
    """The books that bind the team."""
    named = listed([safe(one) for one in names])
    return f"{named or 'none: no rest can be worked out'}. Where two apply, the stricter one wins."


def team(time_zone: str, account_age: int) -> str:
    """The team's zone and account age."""
    return (
        f"time zone {safe(time_zone)}; accounts of one's own from {account_age}. Slack allows none "
        "below 16: younger pitchers are logged for."
    )


_SUBJECTS = {
    "coachlimit": "pitch limit",
    "outingbook": "book of an outing",
}


def change(
    on: date, by: str, what: str, whom: str, before: Mapping[str, Any], after: Mapping[str, Any]
) -> str:
    """One change: "Sat 2 May, Dana Mercer: mix 20 → 18 for Leo Ortiz"."""
    name = _SUBJECTS.get(what, what)
    was, now = _value(before), _value(after)
    for_whom = f" for {safe(whom)}" if whom else ""
    return f"• {day(on)}, {safe(by)}: {name} {was} → {now}{for_whom}"


def _value(values: Mapping[str, Any]) -> str:
    known = [_said(value) for value in values.values() if value is not None]
    return safe(listed(known)) or "none"


def _said(value: Any) -> str:
    return listed(list(map(str, value))) if isinstance(value, list) else str(value)
