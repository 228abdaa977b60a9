"""What was sent to a pitcher himself lately, for his guardians to see."""

from collections import Counter
from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta

from sqlmodel import Session, col, func, select

from core.ledger.notices import NoticeKind
from core.model import MessageState, OutboxMessage, Pitcher, key

#: How far back it goes.
SINCE = timedelta(days=7)
#: No messages: a reaction stands under a line, a Home tab is looked at.
NO_MESSAGES = (NoticeKind.REACTION, NoticeKind.HOME)
#: How many messages of each kind.
Sent = Mapping[str, int]


def sent_to(session: Session, pitchers: Sequence[Pitcher], now: datetime) -> dict[int, Sent]:
    """By pitcher with an account, the messages of the last seven days that went to him alone."""
    of_person: dict[int | None, int] = {
        one.person_id: key(one) for one in pitchers if one.person_id is not None
    }
    if not of_person:
        return {}
    rows = session.exec(
        select(OutboxMessage.person_id, OutboxMessage.kind, func.count())
        .where(
            col(OutboxMessage.person_id).in_(list(of_person)),
            OutboxMessage.state == MessageState.SENT,
            col(OutboxMessage.ts).is_not(None),
            col(OutboxMessage.kind).not_in(NO_MESSAGES),
            col(OutboxMessage.not_before) >= now - SINCE,
        )
        .group_by(col(OutboxMessage.person_id), col(OutboxMessage.kind))
    )
    found: dict[int, Counter[str]] = {pitcher_id: Counter() for pitcher_id in of_person.values()}
    for person_id, kind, number in rows:
        found[of_person[person_id]][kind] += number
    return dict(found)
