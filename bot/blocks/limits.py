"""The answer to a limit that the staff set or lifted."""

from sqlmodel import Session, select

from bot.blocks.buttons import undo_line
from bot.blocks.message import Part
from bot.wording import limits as say
from core.model import CoachLimit, Line, Pitcher, key


def limit_parts(session: Session, line: Line) -> list[Part]:
    """What a line set, or that it lifted a limit."""
    rows = session.exec(select(CoachLimit).where(CoachLimit.line_id == key(line))).all()
    standing = [row for row in rows if row.withdrawn_at is None]
    if not standing:
        return [Part(say.LIFTED)]
    texts = [
        say.limit_set(
            session.get_one(Pitcher, row.pitcher_id).name, row.pitches, row.starts_on, row.ends_on
        )
        for row in standing
    ]
    return [*(Part(text) for text in texts), Part("", (undo_line(line),))]
