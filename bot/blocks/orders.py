"""The answer to what a line set or lifted: a limit of the coach's, a clinician's clearance."""

from sqlmodel import Session, select

from bot.blocks.buttons import undo_line
from bot.blocks.holds import clearances_said
from bot.blocks.message import Part
from bot.wording import limits as say
from core.model import CoachLimit, Line, Pitcher, key


def order_parts(session: Session, line: Line) -> list[Part]:
    """What a line set, or that it lifted a limit."""
    texts = [*clearances_said(session, line), *_limits(session, line)]
    if not texts:
        return [Part(say.LIFTED)]
    return [*(Part(text) for text in texts), Part("", (undo_line(line),))]


def _limits(session: Session, line: Line) -> list[str]:
    rows = session.exec(select(CoachLimit).where(CoachLimit.line_id == key(line))).all()
    return [
        say.limit_set(
            session.get_one(Pitcher, row.pitcher_id).name, row.pitches, row.starts_on, row.ends_on
        )
        for row in rows
        if row.withdrawn_at is None
    ]
