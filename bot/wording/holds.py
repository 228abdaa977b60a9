"""What is said of arms on hold, of a clinician's clearance and of the limits it names."""

from collections.abc import Sequence
from datetime import date

from bot.wording.pain import URGENT
from bot.wording.words import counted, day, listed, safe
from core.pain.holds import HoldReason
from core.pain.status import ArmStatus, ClinicianLimit, LimitKind
from core.reading.urgent import Urgency


def _example(pitcher: str) -> str:
    return f"“cleared {safe(pitcher)} by Dr. Reyes 5/20, no breaking balls until 6/1”"


#: Said first, before anything else, where the words of a line call for it.
FIRST: dict[Urgency | None, str] = {
    None: "",
    Urgency.BE_SEEN: f"*Stop throwing now.* {URGENT} *Otherwise have a licensed clinician look at "
    "this promptly; do not wait for it to pass.*",
    Urgency.URGENT_CARE: "*Get urgent medical care now; in an emergency call your emergency "
    "number.*",
    Urgency.EMERGENCY: "*Call your emergency number now.*",
}

_REASONS = {
    HoldReason.BE_SEEN: "the line names a sign that should be seen",
    HoldReason.SEVERITY: "at or over the team's pain threshold",
    HoldReason.AGAIN: "a second report within 14 days",
}


def hold_for_staff(pitcher: str, reason: HoldReason) -> str:
    """Why an arm is on hold and how a hold ends, for the staff."""
    return (
        f"*On hold* ({_REASONS[reason]}): no throwing until a coach or a guardian records a "
        f"licensed clinician's clearance with name and date, for example {_example(pitcher)}. "
        "Nothing else ends it."
    )


def hold_for_family(pitcher: str) -> str:
    """How a hold ends, for the family."""
    return (
        f"{safe(pitcher)} is on hold: no throwing until a licensed clinician has looked at it and "
        f"an adult writes me the clinician's name and the date, for example {_example(pitcher)}."
    )


HOLD_FOR_AUTHOR = (
    "This arm is on hold: no throwing until an adult records a licensed clinician's clearance."
)


def reported(status: ArmStatus) -> str:
    """What stands, in a word: "pain" or "soreness"."""
    return "soreness" if status.sore else "pain"


def stands(status: ArmStatus) -> str:
    """Said of an arm that no answer may call able to pitch; no count is named beside it."""
    if status.since is None:
        return f"{limits(status)} No answer here says that this arm may pitch before that."
    if status.held:
        return (
            f"Pain was reported on {day(status.since)} and this arm is on hold: no throwing until "
            "an adult records a licensed clinician's clearance (name, date, limits)."
        )
    if status.sore:
        return (
            f"Soreness was reported on {day(status.since)}, so no answer here says that this arm "
            "may throw until a parent or guardian (the pitcher from 18 on) says it is gone, or 14 "
            "days pass without another word of it. If it hurts, a licensed clinician decides."
        )
    return (
        f"Pain was reported on {day(status.since)}, so no answer here says that this arm may "
        "throw. A licensed clinician should check it; a parent or guardian says when it is gone."
    )


def stands_shortly(status: ArmStatus) -> str:
    """The same in a row of the staff's sheet."""
    if status.since is None:
        return limits(status)
    if status.held:
        return f"on hold, pain reported on {day(status.since)}."
    return f"stopped, {reported(status)} reported on {day(status.since)}."


def limits(status: ArmStatus) -> str:
    """A clinician's limits that are in force; empty where there are none."""
    if not status.limits or status.cleared_on is None:
        return ""
    told = listed([limit(one) for one in status.limits])
    return f"Limits set by {safe(status.clinician)} ({day(status.cleared_on)}): {told}."


def limit(one: ClinicianLimit) -> str:
    """One limit: "no breaking balls until Mon 1 Jun"."""
    until = f" until {day(one.until)}" if one.until else ""
    amount = one.amount or 0
    words = {
        LimitKind.NO_THROWING: "no throwing",
        LimitKind.NO_PITCHING: "no pitching in games",
        LimitKind.ONLY_CATCH: "only catch play",
        LimitKind.NO_BREAKING: "no breaking balls",
        LimitKind.MOST_THROWS: f"at most {counted(amount, 'throw')} a day",
        LimitKind.MOST_FEET: f"at most {amount} ft",
    }
    return f"{words[one.kind]}{until}"


def clearance(
    pitcher: str, clinician: str, on: date, told: Sequence[ClinicianLimit], by: str
) -> str:
    """An adult's record of a clearance, for whoever may read it."""
    named = listed([limit(one) for one in told]) or "none"
    return (
        f"*On record for {safe(pitcher)}:* clearance by {safe(clinician)}, {day(on)}; limits: "
        f"{named}. Recorded by {safe(by)}. I'm a bot, not a doctor: I keep what was recorded and "
        "judge nothing; the clinician, the league's rules and the coach decide."
    )


def clearance_taken_back(pitcher: str) -> str:
    """A clearance whose line was edited or deleted."""
    return (
        f"The clearance of {safe(pitcher)} was taken back: its line was edited, deleted or undone. "
        "What it ended stands again: no throwing."
    )


def thrown_on_hold(pitcher: str, on: date, author: str, since: date) -> str:
    """Throwing logged for a day on which the arm was on hold: for the adults."""
    return (
        f"*Throwing during a hold.* A line by {safe(author)} logs throwing by {safe(pitcher)} on "
        f"{day(on)}; the arm is on hold since {day(since)}. It is stored as logged. Please talk "
        "with the family and the coach: no throwing until a licensed clinician has checked it. "
        "I'm a bot, not a doctor."
    )


def thrown_on_hold_for_family(pitcher: str, on: date, author: str, since: date) -> str:
    """The same for a guardian, who is the family."""
    return (
        f"*Throwing during a hold.* A line by {safe(author)} logs throwing by {safe(pitcher)} on "
        f"{day(on)}; {safe(pitcher)} is on hold since {day(since)}. If that is right: please no "
        "throwing until a licensed clinician has checked the arm, and talk with the coach, who "
        "has read this too. If it is not, tell the coach. I'm a bot, not a doctor."
    )


NO_LONGER_LOGGED = "The line that logged throwing during a hold was taken back."
