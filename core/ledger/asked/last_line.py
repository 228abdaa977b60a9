"""“Undo” and “fix” as people type them to the bot: they point to the newest line in the log."""

import re

from sqlmodel import Session, col, select

from core.ledger.asked.answers import LastLine
from core.model import Line, LineState

_BEFORE = r"(?:(?:nvm|never ?mind|no|oops|sorry|please|pls|can you)[,.!]?\s+)*"
_DOES = r"(?:undo|fix|delete|remove|take back|scratch|correct)"
_WHICH = r"(?:\s+(?:that|this|it|my|the|last|latest|newest|one|line|entry))*"
_UNDO = re.compile(rf"{_BEFORE}{_DOES}{_WHICH}(?:\s+(?:please|pls|back))?[\s.!?]*", re.IGNORECASE)


def speaks_of_last(line: Line) -> bool:
    """Whether a direct message is nothing but the wish to put the newest line right."""
    return line.direct and _UNDO.fullmatch(line.text.strip()) is not None


def last_line(session: Session, line: Line) -> LastLine:
    """The author's newest line before this one that is in the log; none where there is none."""
    found = session.exec(
        select(Line.id)
        .where(
            Line.workspace_id == line.workspace_id,
            Line.author_id == line.author_id,
            col(Line.posted_at) <= line.posted_at,
            Line.id != line.id,
            col(Line.state).in_([LineState.READ, LineState.ASKED]),
            col(Line.deleted_at).is_(None),
        )
        .order_by(col(Line.posted_at).desc(), col(Line.id).desc())
        .limit(1)
    ).first()
    return LastLine(found)
