"""The button that gives the newest line another count, as its author typed it."""

from bot.presses.press import Carried, Press
from core.ledger import Notice
from core.ledger.answer_notices import answers_again
from core.ledger.by_hand import Hand, put_right


def _set_count(hand: Hand, carried: Carried) -> list[Notice]:
    notices = put_right(hand, int(carried["outing"]), {"pitches": int(carried["pitches"])})
    return [*notices, *answers_again(int(carried["reply"]), hand.now)]


PRESSES = (Press("set_count", _set_count),)
