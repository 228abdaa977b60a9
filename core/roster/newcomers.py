"""Lines that named a pitcher before the roster held him: they are read again once it does."""

from datetime import datetime, timedelta
from typing import Final

from sqlmodel import Session, col, select

from core.ledger.crew import crew_of
from core.ledger.question import QuestionCode
from core.ledger.who import find
from core.model import Errand, Line, LineState

#: The errand that reads the lines again that named a pitcher too early.
HEAR_NEWCOMERS: Final = "hear of new pitchers"
#: How far back: as far as a form may date an outing.
SINCE = timedelta(days=60)


def hear_newcomers(session: Session, workspace_id: str, now: datetime, after: int = 0) -> None:
    """Have the lines read again soon that named somebody who is on the roster now.

    `after` is the id of the last line that was looked at before.
    """
    if lines_that_named(session, workspace_id, now, after):
        session.add(
            Errand(
                workspace_id=workspace_id,
                kind=HEAR_NEWCOMERS,
                data={"after": after},
                not_before=now,
            )
        )


def lines_that_named(
    session: Session, workspace_id: str, now: datetime, after: int = 0
) -> list[Line]:
    """The lines that ask who a name is which their author can name by now, oldest first."""
    rows = session.exec(
        select(Line)
        .where(
            Line.workspace_id == workspace_id,
            Line.state == LineState.ASKED,
            col(Line.id) > after,
            col(Line.deleted_at).is_(None),
            col(Line.posted_at) >= now - SINCE,
        )
        .order_by(col(Line.id))
    )
    return [line for line in rows if _is_known_now(session, line)]


def _is_known_now(session: Session, line: Line) -> bool:
    unknown = [one["about"] for one in line.questions if one["code"] == QuestionCode.UNKNOWN_NAME]
    crew = crew_of(session, line) if unknown else None
    return crew is not None and any(find(name, crew.arms) for name in unknown)
