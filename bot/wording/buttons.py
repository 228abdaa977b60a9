"""What stands on buttons and in forms."""

from datetime import date

from bot.wording.words import day

UNDO = "Undo"
TYPE_IT = "Type it"
CLEARANCE = "Record a clearance"
SORE_GONE = "Gone, says the family"
TO_FAMILY = "Write to the family"
REPORT_PAIN = "Report pain"

#: Labels of stored values: kinds, fields and what two lines are to each other.
CHOICES = {
    "game": "Game",
    "bullpen": "Bullpen",
    "live": "Live",
    "catch": "Catch play",
    "off": "Day off",
    "pitches": "Pitches",
    "curve": "Curveballs",
    "slider": "Sliders",
    "changeup": "Changeups",
    "strikes": "Strikes",
    "same": "The same outing",
    "second": "A second outing",
    "no log": "Not part of the log",
    "gone": "Yes, it is gone",
    "not yet": "No, not yet",
    "yes": "Yes, that is right",
}

FORM_FIELDS = {
    "kind": "What was it?",
    "on": "Day",
    "pitches": "Pitches (throws in catch play)",
    "curve": "Curveballs",
    "slider": "Sliders",
    "breaking": "Breaking balls in all, if more than these",
    "changeup": "Changeups",
    "strikes": "Strikes",
    "innings": "Innings pitched, such as 4.1",
    "effort": "Effort, percent",
}

FORM_ERRORS = {
    "not allowed": "You may not change this one. Ask a coach, a guardian or the pitcher.",
    "gone": "This line is no longer in the log, so nothing was changed.",
    "no longer": "Nothing was changed: the soreness stands no longer, or it is pain now. A "
    "guardian's word or a clinician's clearance ends pain.",
    "impossible": "This cannot be: check it against the other counts. Nothing was changed.",
    "off": "A day off has no counts: empty them, or choose another kind. Nothing was changed.",
    "day": "The day must be one of the last 60, today included. Nothing was changed.",
    "innings": "Innings end in .0, .1 or .2, such as 4.1. Nothing was changed.",
    "too late": "That took too long, so the form did not open. Nothing is lost: press again.",
    "number": "A whole number, please. Nothing was changed.",
    "no guardian": "Not sent: no guardian is in this workspace, and nothing that an adult writes "
    "goes to a minor alone. Please call the family.",
}


def fix(name: str) -> str:
    """The label of the button that opens the form."""
    return f"Fix {name}".strip()


def thresholds(whom: str) -> str:
    """The label of the button that opens the form with all thresholds."""
    return f"All thresholds: {whom}" if whom else "All thresholds"


def not_there(name: str) -> str:
    """The label of the button that takes a pitcher out of a roll call."""
    return f"Not {name}"


def new_count(number: int | None, before: int, name: str) -> str:
    """The label that takes a number for an outing's new count: "26 pitches, not 24"."""
    told = f"{number} pitches, not {before}"
    return f"{name}: {told}" if name else told


def day_choice(place: int, when: date) -> str:
    """The label of a day: today or yesterday, with its date."""
    return f"{('Today', 'Yesterday')[place]}, {day(when)}"
