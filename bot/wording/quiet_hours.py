"""A team's quiet hours: what they are, and the form that lengthens them."""

from bot.wording.words import safe
from core.model import ScheduleKind
from core.roster.quiet_hours import BEGINS, ENDS

FROM = "From"
TO = "Until"
_DEFAULT = " (default)"
_SENT = {
    ScheduleKind.REST_EVENING: "The evening rest message",
    ScheduleKind.SPIN: "The spin reminder",
}


def now(begin: int, end: int) -> str:
    """The hours as they stand, and what they hold back."""
    usual = " (the default)" if (begin, end) == (BEGINS[0], ENDS[0]) else ""
    return (
        f"{begin}:00 to {end:02}:00{usual}. No unasked-for message reaches a pitcher or a family "
        "then, except pain, which goes to the adults at any hour."
    )


def begins(hour: int) -> str:
    """A choice of when they begin."""
    return f"{hour}:00{_DEFAULT if hour == BEGINS[0] else ''}"


def ends(hour: int) -> str:
    """A choice of when they end."""
    return f"{hour:02}:00{_DEFAULT if hour == ENDS[0] else ''}"


def form_note(team: str) -> str:
    """What the form is for."""
    return (
        f"*{safe(team)}*: when nothing unasked-for reaches pitchers and families. They can be "
        "longer than 20:00 to 08:00, not shorter. Pain goes to the adults at any hour."
    )


def still_sent(kind: ScheduleKind) -> str:
    """Why the hours cannot begin so early."""
    return f"{_SENT[kind]} goes out later than that. Set it earlier under Schedules first."
