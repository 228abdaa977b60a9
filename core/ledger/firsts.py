"""Whether somebody's line is the first of his that was read: then the answer has words."""

from sqlmodel import Session, col, func, select

from core.model import Line, LineState


def is_first_read(session: Session, line: Line) -> bool:
    """Whether no earlier line of the author was read or asked about."""
    earlier = select(func.count()).where(
        Line.author_id == line.author_id,
        col(Line.state).in_([LineState.READ, LineState.ASKED]),
        col(Line.id) < line.id,
    )
    return not session.exec(earlier).one()
