"""Spin reminders, in the program's words; the coach's cue goes to the whole channel only."""

from collections.abc import Sequence
from datetime import date

from bot.wording.words import counted, day, listed, safe
from core.due.spin import TeamPlans, WeekPlan
from core.due.spin_reps import SpinSoFar

#: What a team says until its coach has a list of cues.
CUES = ("Half effort, spin first.",)
CARE = "Half effort, and none at all when the arm hurts or is tired: then stop and tell an adult."


def post(cues: Sequence[str], week: date, plans: TeamPlans) -> str:
    """The one post in the log channel, open to everybody there."""
    cue = (cues or CUES)[week.isocalendar().week % len(cues or CUES)]
    own = " Some have a plan of their own." if plans.own else ""
    return (
        f"*Spin this week.* {safe(cue)}\n"
        f"The plan: {plan(plans.team)}.{own} Log one in a line here: “catch 40 throws 12 spins”.\n"
        "On a rest day only what the coach allows; none at all when the arm hurts or is tired."
    )


def plan(of: WeekPlan) -> str:
    """A week's plan in words."""
    sessions = counted(of.sessions, "session")
    return f"{sessions} of catch play with {counted(of.reps, 'spin rep')} each"


def private(reader: str, so_far: Sequence[SpinSoFar]) -> str:
    """What concerns one pitcher, for him, or for a guardian of younger ones."""
    own = [one for one in so_far if one.own]
    if own:
        return (
            f"Your spin reps this week: {_reps(own[0])} so far. Any catch play that is not in the "
            f"log yet? One line is enough: “catch 40 throws 12 spins”.\n{CARE}"
        )
    children = listed([f"{safe(one.pitcher.name)} {_reps(one)}" for one in so_far])
    first = safe(so_far[0].pitcher.name.split()[0])
    return (
        f"{safe(reader)}, spin reps this week so far: {children}. Any catch play that is not in "
        f"the log yet? One line is enough: “{first} catch 40 throws 12 spins”.\n{CARE}"
    )


def _reps(one: SpinSoFar) -> str:
    return f"{one.spin.reps} of {one.spin.planned}"


def silent(pitcher: str, reminders: int, last: date | None) -> str:
    """Asked of the staff instead of one more reminder."""
    logged = f"the last were logged on {day(last)}" if last is not None else "none are on record"
    return (
        f"{safe(pitcher)} logged no spin reps after {reminders} reminders in a row ({logged}). "
        "I stop reminding until some are logged; would you ask in person?"
    )
