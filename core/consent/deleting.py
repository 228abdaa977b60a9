"""Deleting a pitcher's record for good: asked for, confirmed a second time, then done."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Delete, Table, delete, select, update
from sqlmodel import Session, col
from sqlmodel import select as rows_of

from core.consent.asking import bring_up_to_date
from core.ledger.audit import put_on_audit
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
#: Rows of one statement; databases bound how many values one may name.
AT_ONCE = 500


def delete_record(session: Session, pitcher: Pitcher, by: str, now: datetime) -> list[Notice]:
    """Delete a pitcher: every row about him, and his lines' words; `by` is a Slack id.

    A line about several pitchers is kept for the others, without his name and counts. What
    stands in Slack is not touched. The audit keeps that a record was deleted, and nothing of it.
    """
    notices = bring_up_to_date(session, pitcher, now)
    pitcher_id = key(pitcher)
    _clean_lines(session, pitcher, now)
    _forget_audit(session, pitcher_id)
    person_id = pitcher.person_id
    session.flush()
    _delete_rows(session, pitcher_id)
    session.delete(pitcher)
    session.flush()
    if person_id is not None:
        _forget_person(session, person_id)
    put_on_audit(session, pitcher, AuditAction.DELETED, by, now)
    return notices


@dataclass(frozen=True, slots=True)
class _Named:
    """How lines name the pitcher: by every form, and by those that mean nobody else."""

    forms: frozenset[str]
    own: frozenset[str]


def _clean_lines(session: Session, pitcher: Pitcher, now: datetime) -> None:
    """Take a pitcher out of every line of the workspace."""
    named, of_rows = _named(session, pitcher), _pitchers_of_lines(session, pitcher.workspace_id)
    alone: list[int] = []
    shared: list[int] = []
    for line in session.exec(rows_of(Line).where(Line.workspace_id == pitcher.workspace_id)).all():
        about = of_rows[key(line)] | _about(line)
        is_own = pitcher.person_id is not None and line.author_id == pitcher.person_id
        if key(pitcher) in about or is_own:
            others = about - {key(pitcher)}
            _clean(line, pitcher, others, named, now)
            (shared if others else alone).append(key(line))
            session.add(line)
        elif _may_name(line, named.own) and (text := _without(line.text, named.own)) != line.text:
            line.text = text  # a question about him, a name in passing
            shared.append(key(line))
            session.add(line)
    session.flush()
    _forget_lines(session, alone, shared)


def _may_name(line: Line, forms: Iterable[str]) -> bool:
    """Whether one of these names is somewhere in a line at all: most lines end here."""
    text = plain(line.text)
    return any(form.partition(" ")[0] in text for form in forms)


def _named(session: Session, pitcher: Pitcher) -> _Named:
    pitchers = session.exec(
        rows_of(Pitcher).where(Pitcher.workspace_id == pitcher.workspace_id)
    ).all()
    others = {form for one in pitchers if one.id != pitcher.id for form in _forms(one)}
    forms = _forms(pitcher)
    return _Named(frozenset(forms), frozenset(forms - others))


def _forms(pitcher: Pitcher) -> set[str]:
    return names_of(Arm(key(pitcher), pitcher.name, tuple(pitcher.also_called)))


def _pitchers_of_lines(session: Session, workspace_id: str) -> dict[int, set[int]]:
    """The pitchers about whom the rows of each line are: outings, reports, limits, …"""
    found: dict[int, set[int]] = defaultdict(set)
    for table in Stored.metadata.sorted_tables:
        if {"line_id", "pitcher_id", "workspace_id"} <= set(table.c.keys()):
            pairs = select(table.c.line_id, table.c.pitcher_id).where(
                table.c.workspace_id == workspace_id,
                table.c.line_id.is_not(None),
                table.c.pitcher_id.is_not(None),
            )
            for line_id, pitcher_id in session.execute(pairs):
                found[line_id].add(pitcher_id)
    return found


def _about(line: Line) -> set[int]:
    asked = {one["pitcher_id"] for one in (*line.questions, *line.answers) if one["pitcher_id"]}
    return asked | {_pitcher_of(entry) for entry in line.entries}


def _pitcher_of(entry: dict[str, Any]) -> int:
    return int(str(entry["slot"]).partition("/")[0])


def _clean(line: Line, pitcher: Pitcher, others: set[int], named: _Named, now: datetime) -> None:
    if not others:
        line.text, line.entries, line.questions, line.answers = "", [], [], []
        line.deleted_at = line.deleted_at or now  # what comes late of it changes nothing
        return
    line.text = _without(line.text, named.forms)
    line.entries = [one for one in line.entries if _pitcher_of(one) != key(pitcher)]
    line.questions = [one for one in line.questions if one["pitcher_id"] != key(pitcher)]
    line.answers = [one for one in line.answers if one["pitcher_id"] != key(pitcher)]


def _forget_lines(session: Session, alone: list[int], shared: list[int]) -> None:
    """The audit keeps nothing of lines about him alone, and no text of the others."""
    line_id, subject = col(AuditEntry.line_id), col(AuditEntry.subject)
    for some in _chunks(alone):
        _run(session, delete(AuditEntry).where(line_id.in_(some)))
    for some in _chunks(shared):
        _run(session, delete(AuditEntry).where(line_id.in_(some), subject == "line"))


def _chunks(ids: list[int]) -> Iterator[list[int]]:
    return (ids[at : at + AT_ONCE] for at in range(0, len(ids), AT_ONCE))


def _run(session: Session, statement: Delete) -> None:
    session.execute(statement, execution_options={"synchronize_session": False})


def _without(text: str, names: Iterable[str]) -> str:
    """A text without any of these names (in their plain form), whatever case or accents."""
    forms = sorted((form.split() for form in names), key=len, reverse=True)
    words = re.split(r"(\W+)", text)
    for form in forms:
        for at in range(0, len(words) - 2 * len(form) + 2, 2):
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
