"""The buttons that act at once: one file for each subject, checked again when they are pressed."""

from typing import Final

from bot.presses import consent, counts, first_steps, game_day, pain, roles, roster, whom
from bot.presses.press import Press

#: Every press by its name.
PRESSES: Final[dict[str, Press]] = {
    one.name: one
    for one in (
        *consent.PRESSES,
        *counts.PRESSES,
        *game_day.PRESSES,
        *pain.PRESSES,
        *whom.PRESSES,
        *roster.PRESSES,
        *roles.PRESSES,
        *first_steps.PRESSES,
    )
}
