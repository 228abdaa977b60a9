"""Two counts of one outing, side by side, for the staff."""

from collections.abc import Set

from sqlmodel import Session, col, select

from bot.blocks.buttons import FIX
from bot.blocks.message import Button, Part
from bot.wording import answers
from bot.wording.buttons import fix
from core.model import JoinedAs, Line, Outing, Person, Pitcher, key


def two_counts_parts(session: Session, line: Line, team_pitchers: Set[int]) -> list[Part]:
    """Both counts of each outing of a line, of one team, that was logged with another count."""
    same = session.exec(
        select(Outing).where(
            Outing.line_id == key(line),
            Outing.joined_as == JoinedAs.SAME,
            col(Outing.pitcher_id).in_(team_pitchers),
            col(Outing.withdrawn_at).is_(None),
        )
    ).all()
    pairs = [(session.get_one(Outing, outing.joins), outing) for outing in same]
    return [
        _part(session, first, second)
        for first, second in pairs
        if first.withdrawn_at is None and first.pitches != second.pitches
    ]


def _part(session: Session, first: Outing, second: Outing) -> Part:
    pitcher = session.get_one(Pitcher, first.pitcher_id)
    counts = [(_author(session, one), one.pitches) for one in (first, second)]
    button = Button(fix(pitcher.name), FIX, {"outing": key(first), "line": first.line_id})
    return Part(answers.two_counts(pitcher.name, first.on, counts), (button,))


def _author(session: Session, outing: Outing) -> str:
    line = session.get_one(Line, outing.line_id)
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    return author.name if author is not None else "somebody"
