"""A roster that somebody of the staff sends: looked at first, applied at his word."""

from collections.abc import Mapping
from datetime import timedelta
from typing import Any, Final

from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.matters import ROSTER, matter_notices, open_matter, settle
from core.model import Errand, MatterState, key
from core.roster.people import coached_teams

#: The errands: to fetch and look at it, to apply it, and to forget it.
LOOK: Final = "look at a roster"
APPLY: Final = "apply a roster"
FORGET: Final = "forget a roster"
#: How long a file that waits is kept: it holds dates of birth.
STANDS: Final = timedelta(days=1)


def is_roster(file: Mapping[str, Any]) -> bool:
    """Whether a file that somebody sent may be a roster."""
    name = str(file.get("name") or "").casefold()
    return name.endswith((".csv", ".txt")) or file.get("filetype") in {"csv", "text"}


def begin(hand: Hand, data: Mapping[str, Any]) -> list[Notice]:
    """Look at a roster soon; `data` has its `csv`, or the `url` of the file.

    Raises `ByHandError` for somebody who coaches no team.
    """
    if not coached_teams(hand.session, hand.person):
        raise ByHandError(Refusal.NOT_ALLOWED)
    matter = open_matter(hand, ROSTER, data)
    for kind, when in ((LOOK, hand.now), (FORGET, hand.now + STANDS)):
        hand.session.add(
            Errand(
                workspace_id=matter.workspace_id,
                kind=kind,
                data={"matter": key(matter)},
                not_before=when,
            )
        )
    return matter_notices(hand.session, matter, hand.now)


def apply(hand: Hand, matter_id: int) -> list[Notice]:
    """Let a roster be applied that was looked at. Raises `ByHandError`."""
    matter = settle(hand, matter_id, ROSTER, MatterState.DONE, within=STANDS)
    if not matter.data.get("says"):
        raise ByHandError(Refusal.GONE)
    hand.session.add(
        Errand(
            workspace_id=matter.workspace_id,
            kind=APPLY,
            data={"matter": key(matter)},
            not_before=hand.now,
        )
    )
    return matter_notices(hand.session, matter, hand.now)


def cancel(hand: Hand, matter_id: int) -> list[Notice]:
    """Forget a roster. Raises `ByHandError`."""
    matter = settle(hand, matter_id, ROSTER, MatterState.CANCELLED)
    matter.data = {}
    hand.session.add(matter)
    return matter_notices(hand.session, matter, hand.now)
