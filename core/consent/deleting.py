"""Deleting a pitcher's record for good: asked for, confirmed a second time, then done."""

import re
from collections.abc import Iterable
from datetime import datetime
from typing import Any

from sqlalchemy import Table, delete, select, update
from sqlmodel import Session, col
from sqlmodel import select as rows_of

from core.consent.asking import bring_up_to_date
from core.ledger.notices import Notice
from core.ledger.who import Arm, names_of, plain
from core.model import (
    AuditAction,
    AuditEntry,
    GuardianLink,
    Line,
    Matter,
    Membership,
    Outing,
    Person,
    Pitcher,
    Role,
    Stored,
    key,
)

#: Stands in a line of several pitchers where the name of one stood whose record is deleted.
GONE_NAME = "(deleted)"


def delete_record(session: Session, pitcher: Pitcher, by: str, now: datetime) -> list[Notice]:
    """Delete a pitcher: every row about him, and his lines' words; `by` is a Slack id.

    A line about several pitchers is kept for the others, without his name and counts. What
    stands in Slack is not touched. The audit keeps that a record was deleted, and nothing of it.
    """
    notices = bring_up_to_date(session, pitcher, now)
    pitcher_id, workspace_id = key(pitcher), pitcher.workspace_id
    for line in _lines(session, pitcher):
        _clean(session, line, pitcher, now)
    _forget_audit(session, pitcher_id)
    person_id = pitcher.person_id
    session.flush()
    _delete_rows(session, pitcher_id)
    session.delete(pitcher)
    session.flush()
    if person_id is not None:
        _forget_person(session, person_id)
    session.add(
        AuditEntry(
            workspace_id=workspace_id,
            at=now,
            by_slack_id=by,
            subject="pitcher",
            subject_id=pitcher_id,
            action=AuditAction.DELETED,
        )
    )
    return notices


def _lines(session: Session, pitcher: Pitcher) -> list[Line]:
    """The lines that say something about a pitcher, and those that he wrote himself."""
    of_workspace = rows_of(Line).where(Line.workspace_id == pitcher.workspace_id)
    lines = session.exec(of_workspace)
    return [one for one in lines if key(pitcher) in _about(one) or _is_own(one, pitcher)]


def _is_own(line: Line, pitcher: Pitcher) -> bool:
    return pitcher.person_id is not None and line.author_id == pitcher.person_id


def _about(line: Line) -> set[int]:
    asked = {one["pitcher_id"] for one in (*line.questions, *line.answers) if one["pitcher_id"]}
    return asked | {_pitcher_of(entry) for entry in line.entries}


def _pitcher_of(entry: dict[str, Any]) -> int:
    return int(str(entry["slot"]).partition("/")[0])


def _clean(session: Session, line: Line, pitcher: Pitcher, now: datetime) -> None:
    others = _about(line) - {key(pitcher)}
    if not others:
        line.text, line.entries, line.questions, line.answers = "", [], [], []
        line.deleted_at = line.deleted_at or now  # what comes late of it changes nothing
        session.execute(delete(AuditEntry).where(col(AuditEntry.line_id) == key(line)))
    else:
        line.text = _without(line.text, pitcher)
        line.entries = [one for one in line.entries if _pitcher_of(one) != key(pitcher)]
        line.questions = [one for one in line.questions if one["pitcher_id"] != key(pitcher)]
        line.answers = [one for one in line.answers if one["pitcher_id"] != key(pitcher)]
        of_text = delete(AuditEntry).where(
            col(AuditEntry.line_id) == key(line), col(AuditEntry.subject) == "line"
        )
        session.execute(of_text)
    session.add(line)


def _without(text: str, pitcher: Pitcher) -> str:
    """A text without any name of the pitcher's, whatever its case or accents."""
    arm = Arm(key(pitcher), pitcher.name, tuple(pitcher.also_called))
    forms = sorted((form.split() for form in names_of(arm)), key=len, reverse=True)
    words = re.split(r"(\W+)", text)
    for form in forms:
        places = range(0, len(words) - 2 * len(form) + 2, 2)
        for at in places:
            span = words[at : at + 2 * len(form) - 1]
            if [plain(word) for word in span[::2]] == form:
                words[at : at + 2 * len(form) - 1] = [GONE_NAME, *([""] * (2 * len(form) - 2))]
    return "".join(words)


def _forget_audit(session: Session, pitcher_id: int) -> None:
    for table in _tables_about("pitcher"):
        if "id" in table.c:
            ids = select(table.c.id).where(_to(table, "pitcher") == pitcher_id)
            of_rows = delete(AuditEntry).where(
                col(AuditEntry.subject) == table.name, col(AuditEntry.subject_id).in_(ids)
            )
            session.execute(of_rows)
    session.execute(
        delete(AuditEntry).where(
            col(AuditEntry.subject) == "pitcher", col(AuditEntry.subject_id) == pitcher_id
        )
    )


def _delete_rows(session: Session, pitcher_id: int) -> None:
    """Delete whatever refers to a pitcher, and first whatever refers to that."""
    about = (col(Matter.pitcher_id) == pitcher_id,)
    session.execute(update(Matter).where(*about).values(pitcher_id=None, data={}))
    outings = col(Outing.pitcher_id) == pitcher_id
    session.execute(update(Outing).where(outings).values(joins=None))
    for table in _tables_about("pitcher"):
        if "id" in table.c:
            ids = select(table.c.id).where(_to(table, "pitcher") == pitcher_id)
            for inner in _tables_about(table.name):
                if inner is not table:
                    session.execute(delete(inner).where(_to(inner, table.name).in_(ids)))
        session.execute(delete(table).where(_to(table, "pitcher") == pitcher_id))


def _tables_about(name: str) -> Iterable[Table]:
    """The tables with a reference to the table of this name."""
    tables = Stored.metadata.sorted_tables
    return [t for t in reversed(tables) if t.name != name and _references(t, name)]


def _references(table: Table, name: str) -> list[Any]:
    return [c for c in table.columns for f in c.foreign_keys if f.column.table.name == name]


def _to(table: Table, name: str) -> Any:
    return _references(table, name)[0]


def _forget_person(session: Session, person_id: int) -> None:
    """An account that was nothing but this pitcher's keeps no name."""
    roles = rows_of(Membership).where(
        Membership.person_id == person_id, Membership.role != Role.PITCHER
    )
    wards = rows_of(GuardianLink).where(GuardianLink.person_id == person_id)
    if session.exec(roles).first() or session.exec(wards).first():
        return
    person = session.get_one(Person, person_id)
    person.name, person.slack_id, person.former_slack_id = GONE_NAME, None, None
    session.add(person)
