"""What was changed of a team, one short line each: who, when, what."""

from collections.abc import Mapping
from datetime import date, time
from typing import Any

from bot.wording.asked import ACTIVITIES
from bot.wording.first_steps import changed_fields
from bot.wording.roles import NAMES as ROLES
from bot.wording.schedules import NAMES as SCHEDULES
from bot.wording.schedules import when
from bot.wording.spin import plan
from bot.wording.words import day, listed, safe
from core.due.spin import WeekPlan
from core.ledger.schedule_rows import Timing
from core.ledger.settings_history import Changed, Topic
from core.model import AuditAction, ConsentAct, Role, ScheduleKind
from core.reading.asking import Activity

CHANGES = "*Changes, newest first*"
NO_CHANGES = "Nothing has been changed yet."
_NOBODY = "somebody who is not on file"
#: What the roster holds of a pitcher, as the history names it; values are never told.
_FIELDS = {
    "name": "name",
    "also_called": "other names",
    "birth_date": "date of birth",
    "throws": "throwing hand",
    "breaking_pitch": "breaking ball",
    "pitch_caller": "who calls the pitches",
    "grade": "grade",
    "level": "level of play",
    "rule_books": "rule books",
    "account": "Slack account",
    "guardians": "guardians",
}
_TEAM = {
    "name": "the team's name",
    "age_group": "the age group",
    "time_zone": "the time zone",
    "log_channel": "the log channel",
    "staff_channel": "the staff channel",
    "rule_books": "the rule books",
    "account_age": "age for an own account",
    "quiet_from": "hour at which quiet hours begin",
    "quiet_to": "hour at which quiet hours end",
}


def change(on: date, one: Changed, team_id: int) -> str:
    """One change of a team: "• Sat 2 May, Dana Mercer: mix 20 → 18 for Leo Ortiz"."""
    return f"• {day(on)}, {safe(one.by) or _NOBODY}: {_what(one, team_id)}"


def _what(one: Changed, team_id: int) -> str:
    match one.topic:
        case Topic.TEAM:
            founded = one.action is AuditAction.RECORDED
            return "made the team" if founded else changed_fields(one.before, one.after, _TEAM)
        case Topic.ROLE:
            return _role(one)
        case Topic.PITCHER:
            return _pitcher(one, team_id)
        case Topic.CONSENT:
            return _consent(one)
    for_whom = f" for {safe(one.whom)}" if one.whom else ""
    if one.action is AuditAction.WITHDRAWN:
        return f"{_name(one)}{for_whom} taken back"
    return f"{_setting(one)}{for_whom}"


def _name(one: Changed) -> str:
    match one.topic:
        case Topic.LIMIT:
            return "pitch limit"
        case Topic.SCHEDULE:
            return SCHEDULES[ScheduleKind(one.name)]
        case Topic.SPIN_PLAN:
            return "spin plan"
        case Topic.REST_DAY:
            return f"on a rest day, {ACTIVITIES[Activity(one.name)]}"
    return safe(one.name)


def _setting(one: Changed) -> str:
    match one.topic:
        case Topic.LIMIT:
            return f"{_name(one)} {one.after['pitches']}"
        case Topic.SCHEDULE:
            return _schedule(one)
        case Topic.SPIN_PLAN:
            sessions, reps = one.after["sessions"], one.after["reps"]
            own = plan(WeekPlan(sessions, reps)) if sessions and reps else "back to the default"
            return f"{_name(one)}: {own}"
        case Topic.REST_DAY:
            words = one.after["words"]
            return f"{_name(one)}: " + (f"“{safe(words)}”" if words else "no words any more")
    return f"{_name(one)} {_number(one.before['value'])} → {_number(one.after['value'])}"


def _number(value: int | None) -> str:
    return "off" if value is None else str(value)


def _schedule(one: Changed) -> str:
    if one.after.get("cue"):
        did = "cue taken off" if one.after["drops_cue"] else "cue added"
        return f"{_name(one)}, {did}: “{safe(one.after['cue'])}”"
    kind = ScheduleKind(one.name)
    was, is_now = (when(kind, _timing(side)) for side in (one.before, one.after))
    return f"{_name(one)}: {was} → {is_now}"


def _timing(said: Mapping[str, Any]) -> Timing:
    at = time.fromisoformat(said["at"])
    return Timing(said["weekday"], at, said["is_on"], said["before_practice"] or None)


def _role(one: Changed) -> str:
    becomes = "is no longer" if one.action is AuditAction.WITHDRAWN else "becomes"
    second = f", confirmed by {safe(one.second)}" if one.second else ""
    return f"{safe(one.whom) or 'somebody'} {becomes} {ROLES[Role(one.name)]}{second}"


def _pitcher(one: Changed, team_id: int) -> str:
    whom = safe(one.whom)
    if "teams" in one.after:
        was, is_now = team_id in one.before["teams"], team_id in one.after["teams"]
        if was and is_now:
            return f"{whom} throws for another team too"
        return f"{whom} {'joins' if is_now else 'leaves'} the team"
    if one.action is AuditAction.RECORDED:
        return f"{whom} put on the roster"
    fields = [_FIELDS.get(name, name) for name in one.after["fields"]]
    return f"roster, {whom}: {listed(fields)} changed"


def _consent(one: Changed) -> str:
    did = {
        ConsentAct.AGREED: "agreed to the record of",
        ConsentAct.DECLINED: "did not agree to the record of",
        ConsentAct.WITHDRAWN: "withdrew consent to the record of",
    }[ConsentAct(one.name)]
    paper = f", on paper (recorded by {safe(one.second)})" if one.second else ""
    return f"{did} {safe(one.whom)}{paper}"
