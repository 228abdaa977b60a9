"""Rest days, as a guardian reads of them."""

from collections.abc import Sequence

from bot.wording.answers import RULES_GOVERN
from bot.wording.asked import ACTIVITIES, COACH_DECIDES, why
from bot.wording.pain import NOT_A_DOCTOR
from bot.wording.words import day, days_between, safe, sentences
from core.due.last_day import ChildLastDay, LastDayTold
from core.due.resting import ChildRest, Told
from core.reading.asking import Activity

CHANGED = "_Changed since I first wrote this:_"


def rest_days(guardian: str, children: Sequence[ChildRest]) -> list[str]:
    """The paragraphs of the message: one for each child."""
    resting = any(child.told is Told.RESTS for child in children)
    return [
        f"{safe(guardian)}, about rest from pitching:",
        *(_child(child) for child in children),
        RULES_GOVERN if resting else "",
    ]


def _child(child: ChildRest) -> str:
    name = f"*{safe(child.pitcher.name)}*"
    if child.not_cleared_since is not None:
        what = "soreness" if child.sore else "pain"
        return (
            f"{name}: {what} was reported on {day(child.not_cleared_since)}, so I name no "
            "day. Please have a licensed clinician check the arm before any more throwing. "
            f"{NOT_A_DOCTOR}"
        )
    if child.told is Told.TAKEN_BACK or child.rest is None or child.first is None:
        return f"{name}: after a correction of the log, no rest day is owed by rule any more."
    return sentences([f"{name} {_days(child)}", why(child.rest), _coach(child)])


def _days(child: ChildRest) -> str:
    assert child.first is not None
    if child.last is None:
        return f"rests from {day(child.first)} on; no date within a year is known by rule."
    earliest = day(child.rest.next_eligible) if child.rest and child.rest.next_eligible else ""
    return (
        f"rests {days_between(child.first, child.last)}. Earliest {earliest} by rule; the coach "
        "decides the count."
    )


def _coach(child: ChildRest) -> str:
    """What the coach allows on a rest day, in the coach's own words."""
    words = child.rest_day or {}
    said = [
        f"{ACTIVITIES[activity]}: “{safe(words[activity])}”"
        for activity in Activity
        if activity in words
    ]
    if not said:
        return "What else is allowed on a rest day, the coach can tell you."
    return f"On a rest day the coach says, {'; '.join(said)}. For the rest, ask the coach."


def last_rest_day(guardian: str, children: Sequence[ChildLastDay]) -> str:
    """The second message, for a family that asked for it."""
    told = " ".join(_LAST[child.told].format(name=safe(child.pitcher.name)) for child in children)
    governs = any(child.told is LastDayTold.LAST for child in children)
    ends = f"{COACH_DECIDES} {RULES_GOVERN} " if governs else ""
    return f"{safe(guardian)}, as you asked: {told} {ends}{STOP_LAST_DAY}"


STOP_LAST_DAY = "“stop last-day reminders” ends these."
_LAST = {
    LastDayTold.LAST: "today is the last rest day of *{name}* by rule.",
    LastDayTold.CHANGED: "the log of *{name}* was changed since I first wrote this, so today is "
    "not the last rest day.",
    LastDayTold.NOT_CLEARED: "for *{name}* I name no day. Ask the coach.",
}


def wish_kept(*, wants: bool, stopped: bool) -> str:
    """The answer to a family that asks for the second message, or for no more of it.

    `stopped`: whoever asks has stopped all reminders, so that none comes for now.
    """
    if wants and stopped:
        return (
            "Noted, but you asked for no more reminders, so this one does not come either. “start "
            "reminders” brings all of them back, the one on the last rest day too."
        )
    if wants:
        return (
            f"I will write to you once more on the last rest day, in the morning. {STOP_LAST_DAY}"
        )
    return "No more messages on the last rest day. The first one about rest days still comes."
