"""What a Home tab tells, on both databases; and which tabs follow a change."""

from datetime import timedelta

from sqlmodel import Session, select

from bot.outbox import owe
from bot.outbox.homes import refresh_homes
from core.home import home_of
from core.ledger import Notice, NoticeKind, record
from core.model import MessageState, OutboxMessage
from core.rulebooks import load_books
from core.store import Store
from tests.support.ledger_desk import DANA, ELENA, MATEO, NOW, WORKSPACE, said, seed


def homes(session: Session) -> dict[str, int]:
    """How often each Home tab is wanted."""
    rows = select(OutboxMessage).where(OutboxMessage.kind == NoticeKind.HOME)
    return {row.destination: row.wanted for row in session.exec(rows)}


def test_each_reads_what_is_theirs(any_store: Store) -> None:
    with any_store.writing() as session:
        seed(session)
        record(session, said("62p 11cb 4.1ip vs Summit"), NOW)

    with any_store.reading() as session:
        mateo, elena, dana, stranger = (
            home_of(session, WORKSPACE, who, NOW + timedelta(days=1), load_books)
            for who in (MATEO, ELENA, DANA, "UNOBODY")
        )

    (card,) = mateo.own
    assert card.today.rest is not None
    assert not card.today.rest.eligible
    assert [(one.kind, one.pitches, one.outs) for one in card.outings] == [("game", 62, 13)]
    assert [one.pitcher.name for one in elena.children] == ["Mateo Cruz"]
    assert elena.own == ()
    assert elena.board is None
    assert dana.board is not None
    assert [one.pitcher.name for one in dana.board.arms] == ["Mateo Cruz"]
    free = {day: [one.name for one in who] for day, who in dana.board.ahead}
    # Pitch Smart, 17-18: 61 to 80 pitches, 3 days of rest (the table of core/rulebooks).
    assert [bool(who) for who in free.values()] == [False, False, True, True, True, True]
    assert stranger.person is None


def test_a_line_wants_the_tabs_of_the_staff_and_the_family_that_were_opened(
    any_store: Store,
) -> None:
    with any_store.writing() as session:
        seed(session)
        opened = [
            Notice(f"home/{who}", NoticeKind.HOME, who, NOW) for who in (MATEO, DANA, "UOTHER")
        ]
        owe(session, WORKSPACE, opened)
        notices = record(session, said("62p 11cb vs Summit"), NOW)
        refresh_homes(session, WORKSPACE, notices, NOW)

        assert homes(session) == {MATEO: 2, DANA: 2, "UOTHER": 1}


def test_a_tab_that_is_being_published_stays_with_its_process(any_store: Store) -> None:
    with any_store.writing() as session:
        seed(session)
        owe(session, WORKSPACE, [Notice(f"home/{DANA}", NoticeKind.HOME, DANA, NOW)])
        row = session.exec(select(OutboxMessage)).one()
        row.state = MessageState.SENDING
        session.add(row)
        session.flush()
        refresh_homes(session, WORKSPACE, record(session, said("62p vs Summit"), NOW), NOW)
        session.refresh(row)

        assert (row.state, row.wanted) == (MessageState.SENDING, 2)
