"""The buttons with which a second coach confirms a change of a coach's role, or not."""

from bot.presses.press import Press
from core.roster.roles import confirm_role, refuse_role

PRESSES = (
    Press("role_confirm", lambda hand, carried: confirm_role(hand, int(carried["matter"]))),
    Press("role_refuse", lambda hand, carried: refuse_role(hand, int(carried["matter"]))),
)
