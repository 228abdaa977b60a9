"""The question of the morning after a game, and what stands there once it is answered."""

from datetime import date

from bot.wording.words import day, listed, safe
from core.due.post_game import GameAsked

NOBODY = "Nobody else"
LOG = "Log counts"


def asked(found: GameAsked) -> str:
    """One quiet question."""
    who = "who else pitched" if found.has_counts else "who pitched"
    names = listed([safe(one.name) for one in found.missing], last="or")
    first = safe(found.missing[0].name)  # the whole name: two may share a first one
    when = f"{found.on.month}/{found.on.day}"
    return (
        f"{_game(found)}: {who}? I have no line of {names} yet. One line is enough: “{first} 45 "
        f"pitches 6 curves {when}”. I ask this only once."
    )


def _game(found: GameAsked) -> str:
    against = [one.title for one in found.games if one.title]
    whom = f" ({safe(against[0])})" if against else ""
    return f"*Game of {day(found.on)}*{whom}"


def all_in(on: date) -> str:
    """Every count came in after it was asked."""
    return f"Game of {day(on)}: every count is in now. Thank you."


def nobody(on: date, by: str) -> str:
    """Somebody said that nobody else pitched."""
    return (
        f"Game of {day(on)}: nobody else pitched, says {safe(by)}. If somebody did after all, log "
        "a line as usual."
    )
