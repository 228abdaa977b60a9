"""Deleting a record leaves nothing of a pitcher in any table, on each database."""

from sqlalchemy import select as rows_of
from sqlmodel import select

from core.consent.deleting import delete_record
from core.model import Line, Person, Pitcher, Stored, key
from tests.support.ledger_desk import DANA, ELENA, NOW, Desk, edited, said


def everything(desk: Desk) -> str:
    """Every value of every table, as text."""
    tables = Stored.metadata.sorted_tables
    return " ".join(str(tuple(row)) for t in tables for row in desk.session.execute(rows_of(t)))


def test_no_table_holds_his_name_his_words_or_his_birth_date(desk: Desk) -> None:
    desk.hear(
        said("62p 11cb vs Summit, elbow hurts 6/10"),
        edited("64p 11cb vs Summit, elbow hurts 6/10", 30),
        said("limit Mateo 45 until 5/20", "1777762900.000100", DANA, "CSTAFF"),
        said("Mateo pen 20 pitches", "1777763000.000100", ELENA),
        said("set mix 18% for Mateo", "1777763100.000100", DANA, "CSTAFF"),
        said("when can Mateo pitch", "1777763200.000100", DANA, "CSTAFF"),
    )
    pitcher_id = key(desk.pitcher)

    delete_record(desk.session, desk.pitcher, ELENA, NOW)
    desk.session.flush()

    left = everything(desk)
    assert desk.session.get(Pitcher, pitcher_id) is None
    for word in ("Mateo", "62p", "64p", "elbow", "2009"):
        assert word not in left
    assert "Elena Cruz" in left
    names = desk.session.exec(select(Person.name)).all()
    assert "(deleted)" in names


def test_what_comes_late_of_a_deleted_line_brings_nothing_back(desk: Desk) -> None:
    desk.hear(said("62p 11cb vs Summit"))
    delete_record(desk.session, desk.pitcher, ELENA, NOW)
    desk.session.flush()

    desk.hear(edited("66p 12cb vs Summit", 60), said("62p 11cb vs Summit"))

    assert desk.outings() == []
    assert [line.text for line in desk.session.exec(select(Line))] == [""]
