"""The buttons about consent and about deleting a record."""

from datetime import timedelta

from bot.presses.press import Carried, Press
from core.consent.asking import first_team, local_day
from core.consent.saying import say
from core.consent.standing import may_consent
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.matters import DELETION, matter_notices, open_matter, settle
from core.model import ConsentAct, Errand, MatterState, Pitcher, key

#: The errand that deletes a record.
DELETE_RECORD = "delete record"
#: How long the second question of a deletion stands.
STANDS = timedelta(days=1)


def _say(act: ConsentAct) -> Press:
    return Press(f"consent_{act}", lambda hand, carried: say(hand, int(carried["pitcher"]), act))


def begin_deletion(hand: Hand, pitcher_id: int) -> list[Notice]:
    """Ask a second time, and tell the staff. Raises `ByHandError` for whoever may not."""
    pitcher = deletable(hand, pitcher_id)
    matter = open_matter(hand, DELETION, {"name": pitcher.name}, pitcher_id=key(pitcher))
    return matter_notices(hand.session, matter, hand.now)


def deletable(hand: Hand, pitcher_id: int) -> Pitcher:
    """The pitcher, for whoever speaks for him. Raises `ByHandError` for anybody else."""
    pitcher = hand.session.get(Pitcher, pitcher_id)
    if pitcher is None or pitcher.workspace_id != hand.person.workspace_id:
        raise ByHandError(Refusal.GONE)
    day = local_day(first_team(hand.session, pitcher), hand.now)
    if key(hand.person) not in {key(one) for one in may_consent(hand.session, pitcher, day)}:
        raise ByHandError(Refusal.NOT_ALLOWED)
    return pitcher


def _delete(hand: Hand, carried: Carried) -> list[Notice]:
    matter = settle(hand, int(carried["matter"]), DELETION, MatterState.DONE, within=STANDS)
    if matter.pitcher_id is None:
        raise ByHandError(Refusal.GONE)
    deletable(hand, matter.pitcher_id)
    hand.session.add(
        Errand(
            workspace_id=matter.workspace_id,
            kind=DELETE_RECORD,
            data={"matter": key(matter)},
            not_before=hand.now,
        )
    )
    return matter_notices(hand.session, matter, hand.now)


def _keep(hand: Hand, carried: Carried) -> list[Notice]:
    matter = settle(hand, int(carried["matter"]), DELETION, MatterState.CANCELLED)
    return matter_notices(hand.session, matter, hand.now)


PRESSES = (
    *map(_say, ConsentAct),
    Press("delete_for_good", _delete),
    Press("keep_record", _keep),
)
