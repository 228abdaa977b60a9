"""Schedules in words: what was set, what stands beside its default, what comes this week."""

from collections.abc import Mapping, Sequence
from datetime import datetime
from zoneinfo import ZoneInfo

from bot.wording.asked import ACTIVITIES
from bot.wording.calendar import clock
from bot.wording.spin import CUES, plan
from bot.wording.words import day, days_between, listed, safe, sentences
from core.due.forecast import WEEK, Coming
from core.due.spin import TeamPlans, WeekPlan
from core.ledger.notices import NoticeKind
from core.ledger.schedule_rows import DEFAULTS, Timing
from core.model import ScheduleKind
from core.reading.asking import Activity

WEEKDAYS = (
    "Mondays", "Tuesdays", "Wednesdays", "Thursdays", "Fridays", "Saturdays", "Sundays",
)  # fmt: skip
NAMES = {
    ScheduleKind.MONDAY_SUMMARY: "Monday summary",
    ScheduleKind.SPIN: "Spin reminder",
    ScheduleKind.POST_GAME: "Post-game question",
    ScheduleKind.REST_DAYS: "Rest days to families",
    ScheduleKind.REST_EVENING: "Rest days before a game",
}
#: What a line calls each; the answer quotes it.
TYPED = {
    ScheduleKind.MONDAY_SUMMARY: "monday summary",
    ScheduleKind.SPIN: "spin reminder",
    ScheduleKind.POST_GAME: "post-game question",
    ScheduleKind.REST_DAYS: "rest day messages",
    ScheduleKind.REST_EVENING: "evening rest messages",
}
CHANGE = "Change schedules"


def change(team: str) -> str:
    """The label of the button that opens the form; with the team where there are several."""
    return f"{CHANGE}: {team}" if team else CHANGE


TAKEN_BACK = "Taken back: the schedules are as they were before this line."
HOW = (
    "Set one with “monday summary at 6:30”, “spin reminder thursday 5pm”, “spin reminder 30 "
    "minutes before practice”, “spin reminders off”, “rest day messages at 9am”, “monday summary "
    "default”, “add cue: …”, “remove cue 2”, “spin plan 3 x 12 for Leo”, “rest day hitting: tee "
    "work only”. “what will you send this week” lists what comes."
)


def when(kind: ScheduleKind, timing: Timing) -> str:
    """When something is sent: "Mondays, 7 am", "off"."""
    if not timing.is_on:
        return "off"
    at = clock(timing.at)
    if kind is ScheduleKind.REST_DAYS:
        return f"{at} the morning after an outing that asks for rest"
    if kind is ScheduleKind.REST_EVENING:
        return f"{at} the evening before, instead of the morning"
    if kind is ScheduleKind.POST_GAME:
        return f"{at} the morning after a game, if a line is missing"
    weekly = f"{WEEKDAYS[timing.weekday]}, {at}"
    if timing.before_practice is None:
        return weekly
    return f"{timing.before_practice} minutes before the week's first practice, else {weekly}"


def set_now(kind: ScheduleKind, before: str, timing: Timing) -> str:
    """What a line set, with what it was and what the default is."""
    return (
        f"{NAMES[kind]}: {when(kind, timing)} (before: {before}; default: "
        f"{when(kind, DEFAULTS[kind])})."
    )


def cues_now(timing: Timing) -> str:
    """The list of cues as it stands."""
    if not timing.cues:
        return f"Cues: none of your own, so I say “{CUES[0]}”"
    rows = [f"{number}. {safe(cue)}" for number, cue in enumerate(timing.cues, 1)]
    return sentences(["Cues, one each week in turn:", *rows])


def rest_day(words: Mapping[str, str]) -> str:
    """What the coach allows on a rest day, as families read it."""
    said = [f"{ACTIVITIES[one]} “{safe(words[one])}”" for one in Activity if one in words]
    return f"On a rest day: {'; '.join(said) or 'nothing of yours yet, so I say: ask the coach'}."


def words_set(activity: Activity, words: str) -> str:
    """The coach's words on a rest day as they stand now."""
    name = ACTIVITIES[activity]
    if not words:
        return f"On a rest day, {name}: no words of yours. Families read that they should ask you."
    return (
        f"On a rest day, {name}: “{safe(words)}”. Families read it as your own words. It is never "
        "said of an arm that hurts."
    )


def plan_set(whom: str, of: WeekPlan) -> str:
    """A spin plan as it stands now."""
    whose = f"for {safe(whom)}" if whom else "for the team"
    first = WeekPlan()
    return (
        f"Spin plan {whose}: {plan(of)}, {of.total} a week (default: {first.sessions} x "
        f"{first.reps}). Half effort; none on an arm that hurts."
    )


def listing(
    team: str, zone: str, timings: Mapping[ScheduleKind, Timing], plans: TeamPlans,
    names: Mapping[int, str], words: Mapping[str, str],
) -> str:  # fmt: skip
    """Every schedule of a team with its default, the cues and the spin plans."""
    rows = [f"• {NAMES[kind]}: {_beside(kind, timing)}" for kind, timing in timings.items()]
    own = [f"{safe(names[one])}: {plan(of)}" for one, of in plans.own.items() if one in names]
    return sentences(
        [
            f"*Schedules of {safe(team)}* ({safe(zone.replace('_', ' '))} time)",
            *rows,
            cues_now(timings[ScheduleKind.SPIN]),
            f"Spin plan: {plan(plans.team)}{'' if plans.team != WeekPlan() else ' (default)'}.",
            *own,
            rest_day(words),
            HOW,
        ]
    )


def _beside(kind: ScheduleKind, timing: Timing) -> str:
    now, first = when(kind, timing), when(kind, DEFAULTS[kind])
    return f"*{now}* (default)" if now == first else f"*{now}* (default: {first})"


#: What comes, as the staff read it.
COMES: dict[str, str] = {
    ScheduleKind.MONDAY_SUMMARY: "Monday summary",
    ScheduleKind.SPIN: "spin reminder",
    ScheduleKind.POST_GAME: "“who else pitched?”, if a line is missing",
    NoticeKind.SPIN_REPS: "spin reps so far, if some are missing",
    NoticeKind.REST_DAYS: "rest days",
    NoticeKind.LAST_REST_DAY: "the last rest day",
}
CHANNELS = {"staff": "the staff channel", "log": "the log channel"}
AS_IT_HAPPENS = (
    "Answers, alerts and pain notices come as things happen. Families hear of rest days once an "
    "outing that asks for rest is logged."
)


def coming(
    team: str, zone: str, found: Sequence[Coming], off: Sequence[ScheduleKind], now: datetime
) -> str:
    """What will be sent in the coming seven days, to whom."""
    local = ZoneInfo(zone)
    first, last = now.astimezone(local).date(), (now + WEEK).astimezone(local).date()
    rows = [_row(one, local) for one in found]
    return sentences(
        [
            f"*What I will send for {safe(team)}*, {days_between(first, last)}",
            *(rows or ["Nothing by the clock."]),
            f"Off: {listed([NAMES[kind] for kind in off])}." if off else "",
            AS_IT_HAPPENS,
        ]
    )


def _row(one: Coming, zone: ZoneInfo) -> str:
    at = one.at.astimezone(zone)
    when_ = f"• {day(at.date())}, {clock(at.time())}"
    if one.barred:
        return f"{when_}: no {COMES[one.kind]}: a game day, months off, or nobody to remind"
    whom = CHANNELS[one.channel] if one.channel else _people(one.people)
    return f"{when_}: {COMES[one.kind]}, to {whom}"


def _people(names: Sequence[str]) -> str:
    if len(names) > 8:
        return f"{listed([safe(one) for one in names[:7]])} and {len(names) - 7} more"
    return listed([safe(one) for one in names])


def shortly(timings: Mapping[ScheduleKind, Timing]) -> str:
    """Every schedule in a few words, for the list of settings."""
    rows = [f"{NAMES[kind]} {_short(kind, timing)}" for kind, timing in timings.items()]
    return f"{'; '.join(rows)}."


def _short(kind: ScheduleKind, timing: Timing) -> str:
    if not timing.is_on:
        return "off"
    at = clock(timing.at)
    if kind not in {ScheduleKind.MONDAY_SUMMARY, ScheduleKind.SPIN}:
        return at
    weekly = f"{WEEKDAYS[timing.weekday][:3]} {at}"
    if timing.before_practice is None:
        return weekly
    return f"{timing.before_practice} min before practice, else {weekly}"


SWITCH = {True: "On", False: "Off"}
BEFORE_LABEL = "Or so many minutes before the week's first practice (empty: never)"
CUES_LABEL = "Cues for spin in catch play, one a line, each week in turn"
AT_NIGHT = (
    "Families sleep then. Choose a time from 08:00 to before 20:00, outside the team's quiet "
    "hours. Nothing was changed."
)
BEFORE_WRONG = "From 5 to 180 minutes, or empty. Nothing was changed."
CUES_PAIN = (
    "Cues say nothing of pain, soreness or an injury: minors read them. Nothing was changed."
)
CUES_WRONG = "At most 10 cues of 120 characters. Nothing was changed."


def day_label(kind: ScheduleKind) -> str:
    """The label of a weekday."""
    return f"{NAMES[kind]}: day"


def time_label(kind: ScheduleKind) -> str:
    """The label of a time."""
    return f"{NAMES[kind]}: time"


def form_note(team: str, zone: str) -> str:
    """What stands at the head of the form."""
    return f"{safe(team)}, {safe(zone.replace('_', ' '))} time. The default stands beside each."


def form_label(kind: ScheduleKind) -> str:
    """The label of a schedule, with its default."""
    return f"{NAMES[kind]} (default: {when(kind, DEFAULTS[kind])})"
