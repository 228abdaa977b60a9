"""The button that looks again whether the bot is in a team's channels."""

from bot.presses.press import Press
from core.roster.channels import look_again

PRESSES = (Press("look_again", lambda hand, carried: look_again(hand, int(carried["matter"]))),)
