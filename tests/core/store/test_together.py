"""Several tables in one question give the same rows as a question for each."""

from sqlalchemy import event
from sqlmodel import col, select

from core.ledger import record
from core.model import GuardianLink, Membership, Outing, PainReport, Person, Season, key
from core.store import Store
from core.store.together import together
from tests.support.ledger_desk import NOW, WORKSPACE, said, seed


def statements(store: Store) -> list[str]:
    """The statements that are sent from now on; the beginning of a transaction is none."""
    sent: list[str] = []

    def note(*args: object) -> None:
        if not str(args[2]).startswith("BEGIN"):
            sent.append(str(args[2]))

    event.listen(store.engine, "before_cursor_execute", note)
    return sent


def test_the_rows_of_each_table_come_once_in_one_statement(any_store: Store) -> None:
    with any_store.writing() as session:
        seed(session)
        record(session, said("62p 11cb vs Summit, elbow pain 4/10"), NOW)
        record(session, said("catch 30 throws", ts="1777762801.000100"), NOW)
    asked = statements(any_store)

    with any_store.reading() as session:
        people, outings, reports, seasons, links = together(
            session,
            (Person, col(Person.workspace_id) == WORKSPACE),
            (Outing, col(Outing.kind).in_(["game", "catch"])),
            (PainReport, col(PainReport.id) > 0),
            (Season, col(Season.id) > 0),
            (GuardianLink, col(GuardianLink.pitcher_id) > 0),
        )
        number = len(asked)
        expected = session.exec(select(Person)).all()

    assert number == 1
    assert sorted(one.name for one in people) == sorted(one.name for one in expected)
    assert sorted(one.kind for one in outings) == ["catch", "game"]
    assert [one.site for one in reports] == ["elbow"]
    assert seasons == []
    assert len(links) == 1
    assert {key(one) for one in people} == {key(one) for one in expected}


def test_no_rows_at_all_are_no_rows(any_store: Store) -> None:
    with any_store.reading() as session:
        assert together(
            session, (Person, col(Person.id) > 0), (Membership, col(Membership.id) > 0)
        ) == [[], []]
