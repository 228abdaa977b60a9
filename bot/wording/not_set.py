"""Why a line about schedules, cues or plans set nothing, and what to write instead."""

from bot.wording.words import safe

#: Why words that young pitchers and families read are not taken.
NO_PAIN = (
    "these words go to young pitchers or families, so they say nothing of pain, soreness or an "
    "injury. An arm that hurts stops, and an adult is told. Please put it in other words."
)
NO_NAMES = (
    "these words go to everybody, so they name no pitcher. Please write them without the name."
)


def unclear(reason: str, about: str) -> str:
    """Why a line set nothing, and what to write."""
    typed = safe(about)
    return {
        "team": "I set nothing yet: you coach more than one team. For which one is it? You can "
        "also name it at the end, for example “monday summary at 6:30 for 14U”.",
        "night": f"I set nothing: at {typed} families sleep. Between 08:00 and 20:00, please.",
        "daily": "I set nothing: that one follows each game or outing, so it has a time and no "
        "weekday.",
        "cue": f"I changed no cue: “{typed}” is not on the list, is empty, or is longer than 120 "
        "characters. “schedules” shows the list with its numbers.",
        "words": "I set nothing: at most 200 characters, please.",
        "pain": f"I set nothing: {NO_PAIN}",
        "named": f"I set nothing: {NO_NAMES}",
        "plan": f"I set no plan: “{typed}” is not clear. Write “spin plan 3 x 12” or “spin plan 3 "
        "x 12 for Leo”: 1 to 7 sessions a week, 1 to 60 reps in each.",
    }.get(
        reason,
        f"I set nothing: “{typed}” is not clear. Write for example “spin reminder thursday 5pm”, "
        "“monday summary at 6:30” or “spin reminder 30 minutes before practice”.",
    )
