"""“He's fine now”, typed to the bot while a report of that arm stands: meant as “no pain”.

It ends nothing: like "no pain" it is answered with the question whether the pain is gone.
"""

import re

from sqlmodel import Session, col, select

from core.audience import Relation
from core.ledger.answers import GONE
from core.ledger.clearance import arm_records
from core.ledger.crew import Crew
from core.ledger.notices import NoticeKind
from core.ledger.still_typed import BETTER, value_typed
from core.ledger.typed_answers import WITHIN
from core.ledger.who import find
from core.model import Line, OutboxMessage, Pitcher, key

_FINE = r"(?:fine|ok|okay|good|better|great|all right|alright|gone|healed)"
_WORDS = frozenset(
    {"i", "it", "he", "she", "his arm", "her arm", "my arm", "the arm", "everything", "the pain"}
)
_FORM = re.compile(
    r"(?:(?:ya|yeah|yes|ok|no|hey|hi|now)[,.!]?\s+)*"
    r"(?:(?P<who>i|it|he|she|his arm|her arm|my arm|the arm|everything|the pain|[^\W\d][\w'’-]+)"
    r"(?:\s+is|'?s|\s+feels|\s+feeling|'?m|\s+am)?\s+)"
    rf"(?:(?:all|much|feeling|totally|doing|back to)\s+)*{_FINE}"
    r"(?:\s+(?:now|again|today|thanks|thank you))*[\s.!]*",
    re.IGNORECASE,
)


def said_to_be_fine(session: Session, line: Line, text: str, crew: Crew) -> str | None:
    """The line "… no pain" that such words mean here; none where they mean anything else.

    Of the one arm with a report that stands, the author's own or his child's.
    """
    if not line.direct or not (_is_fine(text, crew) or _answers_the_clock(session, line, text)):
        return None
    family = [*crew.related(Relation.SELF), *crew.related(Relation.GUARDIAN)]
    pitchers = [session.get_one(Pitcher, arm.pitcher_id) for arm in family if arm.consented]
    today = crew.local(line.posted_at).date()
    records = arm_records(session, pitchers) if pitchers else {}
    # What it was read as stays so once its question was answered, and nothing stands any more.
    read_as = {int(str(one["slot"]).partition("/")[0]) for one in line.entries}
    standing = [
        one
        for one in pitchers
        if key(one) in read_as or records[key(one)].status(today).since is not None
    ]
    return f"{standing[0].name}: no pain" if len(standing) == 1 else None


def _is_fine(text: str, crew: Crew) -> bool:
    found = _FORM.fullmatch(" ".join(text.split()))
    return found is not None and _is_of_one(found["who"], crew)


def _answers_the_clock(session: Session, line: Line, text: str) -> bool:
    """Whether it is a yes to "is it gone?", or better, asked of its author in the last days."""
    if value_typed(text) not in {GONE, BETTER} or line.author_id is None:
        return False
    asked = select(OutboxMessage.id).where(
        OutboxMessage.kind == NoticeKind.STILL_HURTS,
        OutboxMessage.person_id == line.author_id,
        col(OutboxMessage.not_before) >= line.posted_at - WITHIN,
        col(OutboxMessage.ts).is_not(None),
    )
    return session.exec(asked.limit(1)).first() is not None


def _is_of_one(who: str, crew: Crew) -> bool:
    """Whether it is a word for somebody or his arm; "sounds good" is not."""
    return who.casefold() in _WORDS or bool(find(who, crew.arms))
