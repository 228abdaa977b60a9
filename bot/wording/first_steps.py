"""The first steps: the welcome, the team's form, its channels, and what comes next."""

from collections.abc import Mapping, Sequence
from typing import Any

from bot.wording.hints import EXAMPLES
from bot.wording.words import day, listed, safe
from core.roster.channels import NOT_IN, OPEN
from core.roster.teams import Changed

SET_UP, LOOK_AGAIN = "Set up the team", "Look again"
ADD_PITCHER, MANY, ROLES, SETTINGS = "Add a pitcher", "Many from a CSV", "Roles", "Team settings"
NEW_TITLE, SETTINGS_TITLE = "Set up the team", "Team settings"

ADMIN = (
    "*Welcome to Spinkeeper.* I keep a team's pitching log: one short line after a game or a "
    "practice, and I work out the breaking-ball share and the days of rest that published rules "
    "ask for. Nobody coaches here yet. As an admin of this workspace you can set the team up and "
    "become its coach; later you can give that role to somebody else.\n"
    "You need a channel for the log, and a *private* one for the staff."
)
ADMIN_DONE = "The team is set up."
NO_TEAM = (
    "*Welcome.* I keep a team's pitching log, but no team is set up here yet, so nothing is "
    "counted. Ask an owner or admin of this workspace to open my Home tab and press “Set up the "
    "team”: it takes a minute."
)
SET_UP_FIRST = (
    "No team is set up in this workspace yet, so nothing is counted. An owner or admin of the "
    "workspace opens my Home tab and presses “Set up the team”: it takes a minute."
)
FIELDS = {
    "name": "Name of the team",
    "age_group": "Age group, such as 12U",
    "time_zone": "Time zone",
    "log_channel": "Where the team logs",
    "staff_channel": "Channel of the staff",
    "rule_books": "Rule books",
    "account_age": "From which age does a pitcher have an account of his own?",
}
HINTS = {
    "time_zone": "Rest counts calendar days here. Such as America/Chicago.",
    "log_channel": "Everybody who logs is in it. I answer there with a reaction, never with pain.",
    "staff_channel": "Private: staff answers hold what minors say of pain.",
    "rule_books": "Where several apply, the stricter answer stands. League rules govern.",
}
AGES = {
    16: "16: the lowest that Slack's terms allow",
    17: "17",
    18: "18: only adults log; nobody under 18 has one",
}
AGE_NOTE = (
    "Whoever is younger has no account here: guardians, the scorekeeper and the staff log for him "
    "from their own phones. A club may raise this age, never lower it under 16. Raising it takes "
    "the accounts of younger pitchers off the roster; their record stays."
)


def welcome(teams: Sequence[str]) -> str:
    """The welcome of somebody who coaches, once."""
    names = listed([safe(one) for one in teams])
    return (
        f"*Welcome.* You coach {names}. Type a line to me or in the log channel, for example "
        f"{EXAMPLES}; write “help” to see the rest. Here is what to set up:"
    )


def channels(team: str, log: str, staff: str, places: Mapping[str, str | None]) -> str:
    """How the channels of a team stand, and what comes next."""
    steps = channel_steps(log, staff, places)
    if steps:
        todo = "\n".join(steps)
        return (
            f"*{safe(team)} is set up, and one step is open:*\n{todo}\nThen press “{LOOK_AGAIN}”. "
            "The roster can be filled meanwhile."
        )
    return (
        f"*{safe(team)} is set up, and I am in both channels.* Next comes the roster: add each "
        "pitcher with the date of birth and the guardians. I ask the guardians for consent; from "
        "their yes on lines are counted."
    )


def channel_steps(log: str, staff: str, places: Mapping[str, str | None]) -> list[str]:
    """What must be done in the two channels, each as they were found; empty where nothing."""
    steps = []
    for name, state in (("log", log), ("staff", staff)):
        place = f"<#{places.get(name)}>"
        if state == NOT_IN:
            steps.append(f"• I am not in {place} yet: write `/invite @Spinkeeper` there.")
        if state == OPEN:
            steps.append(
                f"• {place} is open to everybody, so I do not use it: what is for the staff comes "
                "to you here. Choose a private channel in the team settings."
            )
    return steps


def first_pitcher(team: str) -> str:
    """The first step of a team without pitchers."""
    return (
        f"{safe(team)} has no pitcher yet. Add each with the date of birth and a guardian; I ask "
        "the guardians for consent, and from their yes on lines are counted."
    )


def consent_missing(names: Sequence[str], unasked: Sequence[str]) -> str:
    """Who waits for consent, and for whom nobody could be asked in Slack."""
    said = (
        f"No consent on file yet: {listed([safe(one) for one in names])}. Such lines are kept, and "
        "count once there is a yes."
    )
    if unasked:
        said += (
            f" Nobody who may agree for {listed([safe(one) for one in unasked])} has an account "
            "here: record a signature on paper, or name a guardian."
        )
    return said


ADD_ANOTHER = "Add another pitcher"


def added(name: str, team: str, asked: Sequence[str], *, waits: bool) -> str:
    """That a pitcher is on the roster, and whose yes is waited for."""
    said = f"*{safe(name)} is on the roster of {safe(team)}.*"
    if not waits:
        return f"{said} Consent is on file: lines count."
    if not asked:
        return (
            f"{said} Nobody who may agree has an account here: record a signature on paper. Until "
            "then lines are kept and not counted."
        )
    who = listed([safe(one) or "the guardian" for one in asked], last="or")
    return f"{said} I ask {who} for consent; lines count from the yes on."


def on_paper(name: str) -> str:
    """The label of the button that records a signature."""
    return f"Consent on paper: {name}"


def changes(found: Sequence[Changed]) -> str:
    """Who changed what last."""
    rows = [
        f"• {day(one.on)}, {safe(one.by)}: {changed_fields(one.before, one.after)}" for one in found
    ]
    return "*Changed last:*\n" + "\n".join(rows) if rows else "Nothing was changed yet."


def changed_fields(
    before: Mapping[str, Any], after: Mapping[str, Any], names: Mapping[str, str] = FIELDS
) -> str:
    """What of a team was changed, by these names of its fields: "account age: 16 → 17"."""
    told = [
        f"{names.get(name, name).lower()}: {_shown(before.get(name))} → {_shown(value)}"
        for name, value in after.items()
    ]
    return listed(told)


def _shown(value: Any) -> str:
    if isinstance(value, list):
        return listed([safe(str(one)) for one in value]) or "nothing"
    if isinstance(value, str) and value[:1] in {"C", "G"} and value.isalnum() and value.isupper():
        return f"<#{value}>"
    return safe(str(value)) if value not in (None, "") else "nothing"
