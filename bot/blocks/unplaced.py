"""Pain on no record: what the staff and the family read of it, and the buttons that place it."""

from sqlmodel import Session

from bot.blocks.message import Button, Part
from bot.presses.pain import PLACE_PRESS
from bot.presses.press import presses
from bot.wording import pain as say
from bot.wording.words import listed
from core.ledger.people import guardians_of
from core.ledger.question import Question, QuestionCode
from core.ledger.unplaced import settled_by, who_may_it_be
from core.model import Line, OutboxMessage, Pitcher, key


def unplaced_parts(session: Session, row: OutboxMessage, line: Line, author: str) -> list[Part]:
    """The notice to the staff, or to a parent of the pitcher named; empty where none is open."""
    stored = [Question.from_json(one) for one in line.questions]
    asked = [one for one in stored if one.code is QuestionCode.PAIN_UNPLACED]
    settled = settled_texts(session, line)
    if not asked and (not settled or row.person_id is not None or line.deleted_at is not None):
        return []
    if row.person_id is not None:
        own = [one.about for one in asked if _is_guardian(session, one, row.person_id)]
        return [Part(say.unplaced_for_guardian(listed(own)))] if own else []
    text = say.unplaced(author, listed([one.about for one in asked if one.about]))
    if settled:
        return [Part("\n".join([text, *settled]))]
    return [Part(text, _buttons(session, row, line))]


def settled_texts(session: Session, line: Line) -> list[str]:
    """On whose record the pain stands since, and who said so; empty while that is open."""
    return [
        say.placed(session.get_one(Pitcher, pitcher).name, by)
        for pitcher, by in settled_by(session, line)
    ]


def _is_guardian(session: Session, asked: Question, person_id: int) -> bool:
    if asked.pitcher_id is None:
        return False
    return any(key(one) == person_id for one in guardians_of(session, {asked.pitcher_id}))


def _buttons(session: Session, row: OutboxMessage, line: Line) -> tuple[Button, ...]:
    if line.deleted_at is not None:
        return ()
    return tuple(
        Button(
            say.place_on(one.name),
            presses(PLACE_PRESS),
            {"line": key(line), "pitcher": key(one), "team": row.team_id},
        )
        for one in who_may_it_be(session, line, row.team_id)
    )
