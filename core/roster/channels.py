"""Whether the bot stands in a team's channels: looked at with the set-up, and at a press."""

from typing import Final

from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.notices import Notice
from core.model import Errand, Matter, key
from core.roster.people import is_staff
from core.roster.teams import LOOK_AT_CHANNELS

#: The matter that tells a coach how his channels stand.
CHANNELS: Final = "channels"
#: How one stands: the bot is in it, is not, or it is open where it must be private.
IN, NOT_IN, OPEN = "in", "not in", "open"


def look_again(hand: Hand, matter_id: int) -> list[Notice]:
    """Look again soon. Raises `ByHandError` for who is not of the staff."""
    matter = hand.session.get(Matter, matter_id)
    if matter is None or matter.kind != CHANNELS or matter.team_id is None:
        raise ByHandError(Refusal.GONE)
    if not is_staff(hand.session, hand.person, matter.team_id):
        raise ByHandError(Refusal.NOT_ALLOWED)
    hand.session.add(
        Errand(
            workspace_id=matter.workspace_id,
            kind=LOOK_AT_CHANNELS,
            data={"team": matter.team_id, "by": key(hand.person)},
            not_before=hand.now,
        )
    )
    return []
