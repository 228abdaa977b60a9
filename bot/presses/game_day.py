"""The button under the question of the morning after a game."""

from datetime import date

from bot.presses.press import Carried, Press
from core.ledger import Notice
from core.ledger.by_hand import Hand
from core.ledger.nobody_else import nobody_else

NOBODY = "nobody_else"


def _nobody(hand: Hand, carried: Carried) -> list[Notice]:
    return nobody_else(hand, int(carried["team"]), date.fromisoformat(str(carried["on"])))


PRESSES = (Press(NOBODY, _nobody),)
