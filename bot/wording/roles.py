"""What is said of roles: the form, the second coach's question, what became of it."""

from collections.abc import Mapping, Sequence

from bot.wording.words import listed, safe
from core.model import Role

TITLE = "Roles"
FIELDS = {
    "team": "Team",
    "who": "Who",
    "role": "Role",
    "give": "What do you want to do?",
}
NAMES = {
    Role.COACH: "coach",
    Role.ASSISTANT: "assistant coach",
    Role.SCOREKEEPER: "scorekeeper",
}
MEANS = {
    Role.COACH: "Coach: everything, roles and settings too",
    Role.ASSISTANT: "Assistant coach: logs and reads everything, roster too",
    Role.SCOREKEEPER: "Scorekeeper: logs game counts, reads only own lines",
}
GIVES = {"give": "Give the role", "take": "Take the role away"}
NOTE = (
    "Somebody may hold several roles. Pitchers and guardians are named in the roster. A coach's "
    "role is given and taken by two coaches where there are two: I ask another one."
)
CONFIRM, REFUSE = "Confirm", "No, leave it"


def standing(team: str, held: Mapping[Role, Sequence[str]]) -> str:
    """Who holds which role now."""
    named = {role: [safe(one) or "somebody new" for one in held[role]] for role in NAMES}
    rows = [f"• {NAMES[role]}: {listed(named[role]) or 'nobody'}" for role in NAMES]
    return f"*{safe(team)}*\n" + "\n".join(rows)


def _change(role: Role, who: str, team: str, give: bool) -> str:
    if give:
        return f"{who} becomes {NAMES[role]} of {safe(team)}"
    return f"{who} is no longer {NAMES[role]} of {safe(team)}"


def asked(role: Role, who: str, team: str, give: bool, by: str) -> str:
    """The question to a second coach."""
    return (
        f"{safe(by)} asks for a change: {_change(role, who, team, give)}. A coach sees everything "
        "about every pitcher of the team, so two coaches must agree. Do you?"
    )


def waits(role: Role, who: str, team: str, give: bool, second: Sequence[str]) -> str:
    """To the asker, until a second coach has answered."""
    return (
        f"Asked: {_change(role, who, team, give)}. It waits for "
        f"{listed([safe(one) for one in second], last='or')}; nothing is changed yet."
    )


def done(role: Role, who: str, team: str, give: bool, by: str, confirmed: str) -> str:
    """What was changed, by whom."""
    second = f", confirmed by {safe(confirmed)}" if confirmed else ""
    return f"*{_change(role, who, team, give)}* ({safe(by)}{second})."


def refused(role: Role, who: str, team: str, give: bool, by: str) -> str:
    """A second coach said no."""
    return f"Not changed: {_change(role, who, team, give)}. {safe(by)} did not agree."


def told(role: Role, team: str, give: bool) -> str:
    """To whom it is about."""
    if not give:
        return f"You are no longer {NAMES[role]} of {safe(team)}."
    can = {
        Role.COACH: "You log, read and set everything there; write me “help” to see how.",
        Role.ASSISTANT: "You log and read everything there; write me “help” to see how.",
        Role.SCOREKEEPER: "You log the game counts: “Leo 45p 6cb, Mateo 30p 3cb vs Summit”, or "
        "`/spinkeeper counts`.",
    }
    return f"You are now {NAMES[role]} of {safe(team)}. {can[role]}"
