"""“Undo”, “fix” and “oops, 64 not 62” as people type them: they point to the newest line."""

import re
from datetime import timedelta

from sqlmodel import Session, col, select

from core.ledger.asked.answers import LastLine
from core.model import Line, LineState, Outing

_BEFORE = r"(?:(?:nvm|never ?mind|no|oops|sorry|please|pls|can you)[,.!]?\s+)*"
_DOES = r"(?:undo|fix|delete|remove|take back|scratch|correct)"
_WHICH = r"(?:\s+(?:that|this|it|my|the|last|latest|newest|one|line|entry))*"
_UNDO = re.compile(rf"{_BEFORE}{_DOES}{_WHICH}(?:\s+(?:please|pls|back))?[\s.!?]*", re.IGNORECASE)


_CORRECTS = re.compile(
    r"(?:(?:(?:wait|actually|oops|whoops|sorry|my bad|correction|no|i meant|meant|make (?:it|that)|"
    r"should(?:'?ve| have)? (?:be|been)|it should be|change (?:it|that) to|it was|it's|its|"
    r"that was)"
    r"[,.:]?\s+)+(?P<count>\d{1,3})|(?P<bare>\d{1,3}),?\s+not\s+\d{1,3})"
    r"(?:,?\s+not\s+\d{1,3})?[\s.!]*",
    re.IGNORECASE,
)
#: A correction is of a line of the last day; the largest count that a form takes.
LATELY, MOST = timedelta(days=1), 200


def speaks_of_last(session: Session, line: Line) -> bool:
    """Whether a line is nothing but the wish to put the author's newest one right.

    A bare new count is such a wish wherever it stands, of a count logged within a day; one with
    its unit ("it was 26 pitches") is read, and asked about beside the outing on record.
    """
    said = line.text.strip()
    if line.direct and _UNDO.fullmatch(said) is not None:
        return True
    return corrected_count(said) is not None and _last_counted(session, line) is not None


def corrected_count(text: str) -> int | None:
    """The count that "oops, 64 not 62" names, in pitches; none where a text corrects none."""
    found = _CORRECTS.fullmatch(" ".join(text.replace("’", "'").split()))
    count = int(found["count"] or found["bare"]) if found is not None else 0
    return count if 0 < count <= MOST else None


def _last_counted(session: Session, line: Line) -> Outing | None:
    """The one outing with a count of the author's newest line, where that is of the last day."""
    newest = last_line(session, line).line_id
    last = session.get(Line, newest) if newest is not None else None
    if last is None or line.posted_at - last.posted_at > LATELY:
        return None
    return only_counted(session, last)


def only_counted(session: Session, line: Line) -> Outing | None:
    """The outing of a line, where it has one and a count."""
    rows = session.exec(
        select(Outing).where(Outing.line_id == line.id, col(Outing.withdrawn_at).is_(None))
    ).all()
    return rows[0] if len(rows) == 1 and rows[0].pitches is not None else None


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
    return LastLine(found, corrected_count(line.text))
