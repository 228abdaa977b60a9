"""The settings of a team: their names, and what they are now."""

from collections.abc import Mapping, Sequence

from bot.wording.words import counted, listed, safe

CHANGE = "Change"
THRESHOLDS = "Thresholds"
SCHEDULES = "Schedules"
ROSTER = "Roster"
ROLES = "Roles"
RULE_BOOKS = "Rule books"
TEAM = "Team"
QUIET = "Quiet hours"
#: So many pitchers with thresholds of their own are named.
MOST_NAMED = 5


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


def thresholds(changed: int, own: Mapping[str, int]) -> str:
    """How many thresholds differ from their defaults; `own` are those of single pitchers."""
    team = f"{changed} not at the default" if changed else "all at their defaults"
    if own:
        named = [f"{number} for {safe(name)}" for name, number in own.items()]
        named[0] = named[0].replace(" for ", " of its own for ", 1)
        team = f"team: {team if changed else 'defaults'}; {_few(named)}"
    return f"{team}. “thresholds” lists them; “set mix 18%” sets one."


def _few(named: Sequence[str]) -> str:
    """The first few of a list, and how many more there are."""
    if len(named) <= MOST_NAMED:
        return listed(named)
    return f"{', '.join(named[:MOST_NAMED])} and for {len(named) - MOST_NAMED} more"


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
