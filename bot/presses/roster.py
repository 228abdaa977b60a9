"""The buttons under a roster that was looked at."""

from bot.presses.press import Press
from bot.roster_file import apply, cancel

PRESSES = (
    Press("roster_apply", lambda hand, carried: apply(hand, int(carried["matter"]))),
    Press("roster_cancel", lambda hand, carried: cancel(hand, int(carried["matter"]))),
)
