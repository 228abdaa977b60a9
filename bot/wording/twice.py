"""Two counts that may be of one outing, as the staff read of them until somebody says."""

from bot.wording.words import counted, day, safe
from core.due.waiting import Waiting

TITLE, FIELD, ANSWER = "One outing or two?", "What is it?", "Answer"


def one_outing_or_two(found: Waiting) -> list[str]:
    """Of each open question of a line: whose outing, both counts and by whom, what stands now."""
    return [
        f"{safe(one.pitcher)}: {_count(one.count)} by {safe(found.author)}, {_count(one.other)} by "
        f"{safe(one.other_by or found.author)} (asked on {day(found.on)}). One outing, or two? The "
        "larger number stands until that is answered."
        for one in found.two_counts
    ]


def _count(pitches: int | None) -> str:
    return "no count" if pitches is None else counted(pitches, "pitch", "pitches")
