"""A line that a form wrote: recorded once, answered directly, with no reaction to look for."""

from sqlmodel import select

from bot.forms.form import Filled
from bot.forms.written import write_line
from bot.outbox import owe
from core.ledger.by_hand import Hand
from core.ledger.crew import find_person
from core.model import MessageState, OutboxMessage
from tests.support.club import Club


def _write(club: Club, who: str, view_id: str, text: str) -> None:
    with club.store.writing() as session:
        person = find_person(session, club.ws.team_id, club.people[who].id)
        assert person is not None
        hand = Hand(session, person, club.clock.now())
        owe(session, person.workspace_id, write_line(hand, Filled(view_id, {}, {}), text))
    club.settle()


def test_it_is_answered_directly_and_a_second_submission_changes_nothing(club: Club) -> None:
    _write(club, "mateo", "V1", "game, 62 pitches, 11 curves")
    _write(club, "mateo", "V1", "game, 62 pitches, 11 curves")

    (answer,) = club.heard("mateo")
    assert "Breaking balls: 11 of 62 = 18 %." in answer
    with club.store.reading() as session:
        rows = session.exec(select(OutboxMessage.state)).all()
    assert MessageState.SENT in rows
    assert MessageState.FAILED not in rows
