"""Both engines keep what was committed, refuse what breaks a link, and let one writer claim."""

from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

import pytest
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError
from sqlmodel import select

from bot.outbox import owe
from core.ledger import Notice, NoticeKind, correct, record, withdraw
from core.model import Line, MessageState, OutboxMessage, Outing, Person, Workspace
from core.store import Store
from tests.support.ledger_desk import LOG, NOW, WORKSPACE, deleted, edited, said, seed


def pragma(store: Store, name: str) -> object:
    with store.reading() as session:
        return session.execute(text(f"PRAGMA {name}")).scalar_one()


def test_sqlite_keeps_an_acknowledged_line_through_a_power_cut(store: Store) -> None:
    assert pragma(store, "journal_mode") == "wal"
    assert pragma(store, "synchronous") == 2  # FULL, see sqlite.org/pragma.html#pragma_synchronous
    assert pragma(store, "foreign_keys") == 1


def test_a_writer_waits_less_than_slack_does(store: Store) -> None:
    wait = pragma(store, "busy_timeout")

    assert isinstance(wait, int)
    assert 0 < wait < 3_000


def test_a_row_that_points_nowhere_is_refused(any_store: Store) -> None:
    with pytest.raises(IntegrityError), any_store.writing() as session:
        session.add(Person(workspace_id="T-nowhere", slack_id="U1", name="Ann"))


def test_an_error_carries_no_value_into_the_logs(any_store: Store) -> None:
    with pytest.raises(IntegrityError) as refused, any_store.writing() as session:
        session.add(Person(workspace_id="T-nowhere", slack_id="U1", name="elbow hurts"))

    assert "elbow hurts" not in str(refused.value)


def test_what_raises_is_rolled_back(any_store: Store) -> None:
    def fail_after_writing() -> None:
        with any_store.writing() as session:
            session.add(Workspace(id="T1"))
            session.flush()
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        fail_after_writing()

    with any_store.reading() as session:
        assert session.get(Workspace, "T1") is None


def test_reading_never_commits(any_store: Store) -> None:
    with any_store.reading() as session:
        session.add(Workspace(id="T1"))
        session.flush()

    with any_store.reading() as session:
        assert session.get(Workspace, "T1") is None


def test_reading_goes_on_while_somebody_writes(any_store: Store) -> None:
    with any_store.writing() as writer:
        writer.add(Workspace(id="T1"))
        writer.flush()
        with any_store.reading() as reader:
            assert reader.exec(select(Workspace)).all() == []


def test_record_correct_and_withdraw_across_transactions(any_store: Store) -> None:
    with any_store.writing() as session:
        seed(session)

    with any_store.writing() as session:
        owe(session, WORKSPACE, record(session, said("26p 11cb vs Summit"), NOW))
    with any_store.writing() as session:
        edit = edited("62p 11cb vs Summit, elbow pain 3/10", 5)
        owe(session, WORKSPACE, correct(session, edit, NOW))
    with any_store.writing() as session:
        owe(session, WORKSPACE, withdraw(session, deleted(), NOW))

    with any_store.reading() as session:
        outing = session.exec(select(Outing)).one()
        kinds = set(session.exec(select(OutboxMessage.kind)))
    assert (outing.pitches, outing.withdrawn_at) == (62, NOW)
    assert kinds >= {NoticeKind.ANSWER, NoticeKind.PAIN, NoticeKind.PAIN_WITHDRAWN}


def test_the_same_line_from_many_threads_is_one_line(any_store: Store) -> None:
    with any_store.writing() as session:
        seed(session)
    together = Barrier(6)

    def hear(_number: int) -> int:
        together.wait()
        with any_store.writing() as session:
            return len(record(session, said("62p 11cb vs Summit"), NOW))

    with ThreadPoolExecutor(6) as pool:
        heard = list(pool.map(hear, range(6)))

    assert sum(bool(notices) for notices in heard) == 1
    with any_store.reading() as session:
        assert len(session.exec(select(Line)).all()) == 1
        assert len(session.exec(select(Outing)).all()) == 1


def test_edits_from_many_threads_end_in_the_newest(any_store: Store) -> None:
    with any_store.writing() as session:
        seed(session)
    together = Barrier(6)

    def hear(number: int) -> None:
        together.wait()
        with any_store.writing() as session:
            correct(session, edited(f"{50 + number}p vs Summit", number), NOW)

    with ThreadPoolExecutor(6) as pool:
        list(pool.map(hear, range(6)))

    with any_store.reading() as session:
        assert [one.pitches for one in session.exec(select(Outing))] == [55]


def test_the_same_slot_from_many_threads_is_one_message(any_store: Store) -> None:
    with any_store.writing() as session:
        seed(session)
    together = Barrier(6)
    notice = Notice("summary/team/1/2026-W18", NoticeKind.ANSWER, LOG, NOW)

    def claim(_number: int) -> None:
        together.wait()
        with any_store.writing() as session:
            owe(session, WORKSPACE, [notice])

    with ThreadPoolExecutor(6) as pool:
        list(pool.map(claim, range(6)))

    with any_store.reading() as session:
        row = session.exec(select(OutboxMessage)).one()
    assert (row.wanted, row.state) == (6, MessageState.QUEUED)


def test_owing_again_leaves_a_row_with_its_sender(any_store: Store) -> None:
    notice = Notice("a", NoticeKind.ANSWER, LOG, NOW)
    with any_store.writing() as session:
        seed(session)
        owe(session, WORKSPACE, [notice])
        session.exec(select(OutboxMessage)).one().state = MessageState.SENDING

    with any_store.writing() as session:
        owe(session, WORKSPACE, [notice])

    with any_store.reading() as session:
        row = session.exec(select(OutboxMessage)).one()
    assert (row.wanted, row.state) == (2, MessageState.SENDING)
