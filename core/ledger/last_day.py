"""Whether a family wants a second message on the last rest day, as it says so by a line."""

import re
from dataclasses import dataclass

from sqlmodel import Session, col, select

from core.audience import Relation
from core.ledger.apply import Change, keep_row
from core.ledger.crew import Crew
from core.ledger.spoken import spoken
from core.model import LastDayWish, Line, key

_LAST_DAY = r"(?:the |his |her |their )?last (?:rest[- ]?day|day of rest|day)"
_YES = re.compile(
    rf"^(?:please )?(?:also )?(?:remind|tell|nudge) (?:us|me)(?: again)? on {_LAST_DAY}(?: too)?$"
    r"|^last[- ](?:rest[- ]?)?day reminders?(?: on)?$",
    re.IGNORECASE,
)
_NO = re.compile(
    r"^(?:please )?(?:stop|no|no more|end) (?:the )?last[- ](?:rest[- ]?)?day reminders?$"
    r"|^last[- ](?:rest[- ]?)?day reminders? off$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class LastDay:
    """The wish of a guardian."""

    wants: bool
    #: Every order may carry one; a wish never does.
    question: None = None


def last_day_wish(text: str) -> bool | None:
    """Whether a text asks for it, or for no more of it; none where it says neither."""
    said = " ".join(text.split()).rstrip(".! ")
    if _YES.match(said):
        return True
    return False if _NO.match(said) else None


def last_day_here(session: Session, line: Line, crew: Crew) -> LastDay | None:
    """The wish in a guardian's direct message; from anybody else the words are talk."""
    wants = last_day_wish(spoken(session, line))
    if wants is None or not line.direct or not crew.related(Relation.GUARDIAN):
        return None
    return LastDay(wants)


def keep_wish(change: Change, said: LastDay, by_person: int) -> None:
    """Put the wish on file."""
    row = LastDayWish(
        workspace_id=change.line.workspace_id,
        person_id=by_person,
        wants=said.wants,
        line_id=key(change.line),
        set_at=change.at,
    )
    keep_row(change, row, {"wants": row.wants})


def wants_last_day(session: Session, person_id: int) -> bool:
    """Whether somebody wants the second message, by his newest word."""
    rows = select(LastDayWish).where(
        LastDayWish.person_id == person_id, col(LastDayWish.withdrawn_at).is_(None)
    )
    newest = session.exec(rows.order_by(col(LastDayWish.id).desc())).first()
    return newest is not None and newest.wants
