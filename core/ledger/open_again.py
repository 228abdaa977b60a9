"""Lines whose questions are asked once more on the next morning, in one message to one person."""

from collections.abc import Sequence
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.ledger.notices import MORNING, Notice, NoticeKind
from core.ledger.question import Question
from core.model import Line, OutboxMessage


def asks_again_at(posted_at: datetime, zone: ZoneInfo) -> datetime:
    """08:00 local of the day after a line was posted, in the zone of `posted_at` (UTC)."""
    next_day = posted_at.astimezone(zone).date() + timedelta(days=1)
    return datetime.combine(next_day, MORNING, zone).astimezone(posted_at.tzinfo)


def asked_together(session: Session, row: OutboxMessage, zone: ZoneInfo) -> list[Line]:
    """The lines, oldest first, whose open questions this message asks.

    The first message of a morning to a person asks for all of his lines of the day before; the
    others ask nothing. In a thread of a channel each line asks for itself.
    """
    line = session.get_one(Line, row.line_id)
    if not row.destination.startswith(("U", "W")):
        return [line] if _waits(line) else []
    found = _of_the_day(session, row.workspace_id, row.destination, line, zone)
    first = _first(found)
    if first is not None and first.id != row.id:
        # One that was sent by itself is kept up to date by itself.
        return [line] if row.ts is not None and _waits(line) else []
    return [of for one, of in found if _waits(of) and (one.id == row.id or one.ts is None)]


def shown_for(session: Session, again: Notice, line: Line, zone: ZoneInfo) -> list[Notice]:
    """The message that asks for this line too, brought up to date; before the morning none is."""
    found = _of_the_day(session, line.workspace_id, again.destination, line, zone)
    shown = [one for one, of in found if one.ts is not None and of.id != line.id]
    return [
        Notice(
            slot=one.slot,
            kind=NoticeKind.ASKED_AGAIN,
            destination=one.destination,
            not_before=again.not_before,
            line_id=one.line_id,
            only_if_shown=True,
        )
        for one in shown[:1]
    ]


def _first(found: Sequence[tuple[OutboxMessage, Line]]) -> OutboxMessage | None:
    shown = (one for one, _ in found if one.ts is not None)
    asking = (one for one, of in found if _waits(of))
    return next(shown, None) or next(asking, None)


def _waits(line: Line) -> bool:
    return line.deleted_at is None and any(Question.from_json(one).waits for one in line.questions)


def _of_the_day(
    session: Session, workspace_id: str, to: str, line: Line, zone: ZoneInfo
) -> list[tuple[OutboxMessage, Line]]:
    """The messages of the same morning to the same person, with their lines, oldest first."""
    day = line.posted_at.astimezone(zone).date()
    begins = datetime.combine(day, time(), zone).astimezone(line.posted_at.tzinfo)
    ends = datetime.combine(day + timedelta(days=1), time(), zone).astimezone(begins.tzinfo)
    rows = session.exec(
        select(OutboxMessage, Line)
        .join(Line, col(OutboxMessage.line_id) == col(Line.id))
        .where(
            OutboxMessage.workspace_id == workspace_id,
            OutboxMessage.kind == NoticeKind.ASKED_AGAIN,
            OutboxMessage.destination == to,
            col(Line.posted_at) >= begins,
            col(Line.posted_at) < ends,
        )
        .order_by(col(OutboxMessage.id))
    )
    return list(rows)
