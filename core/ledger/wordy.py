"""Whether a line is answered in words, or a reaction is enough; and whose counts it brings."""

from datetime import datetime

from sqlmodel import Session, col, select

from core.audience import Relation
from core.ledger.crew import Crew
from core.ledger.days import before_the_day_turns
from core.ledger.decide import Decision
from core.ledger.whom import EVERYONE
from core.model import Line, LineState


def needs_words(session: Session, line: Line, decision: Decision, posted: datetime) -> bool:
    """Whether the answer needs words: a game, the arm, a question, a roll call, a moved day."""
    if decision.questions:
        return True
    kept = decision.kept
    return bool(kept) and (
        any(one.kind == "game" or one.entry.pain or one.entry.tired for one in kept)
        or any(one.entry.who == EVERYONE for one in kept)
        or (before_the_day_turns(posted) and any(one.entry.on is None for one in kept))
        or not _has_been_read_before(session, line)
    )


def is_scorekeepers(decision: Decision, crew: Crew) -> bool:
    """Whether its author keeps the score for any of its pitchers and is nothing else to him."""
    only = frozenset({Relation.SCOREKEEPER})
    return any(crew.relations[kept.arm.pitcher_id] == only for kept in decision.kept)


def _has_been_read_before(session: Session, line: Line) -> bool:
    earlier = select(Line.id).where(
        Line.author_id == line.author_id,
        col(Line.state).in_([LineState.READ, LineState.ASKED]),
        Line.id != line.id,
    )
    return session.exec(earlier.limit(1)).first() is not None
