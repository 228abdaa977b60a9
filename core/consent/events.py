"""Events of consent, and what each does to the record at once."""

from datetime import date, datetime

from sqlmodel import Session, col, select

from core.consent.asking import bring_up_to_date, first_team, local_day, tell_staff
from core.consent.standing import consent_of
from core.ledger.audit import put_on_audit
from core.ledger.notices import Notice
from core.ledger.question import QuestionCode
from core.ledger.watch import watch
from core.model import (
    AuditAction,
    ConsentAct,
    ConsentEvent,
    ConsentWay,
    Errand,
    Line,
    LineState,
    Outing,
    Person,
    Pitcher,
    key,
)

#: The errand that reads the lines again that were kept back.
HEAR_KEPT = "hear kept lines"


def withdraw_by_line(session: Session, line: Line, pitcher_id: int, person: Person) -> None:
    """Withdraw by a typed word; hearing the line again adds nothing, its deletion nothing back."""
    if session.exec(select(ConsentEvent).where(ConsentEvent.line_id == key(line))).first():
        return
    pitcher = session.get_one(Pitcher, pitcher_id)
    event = ConsentEvent(
        workspace_id=line.workspace_id,
        pitcher_id=pitcher_id,
        act=ConsentAct.WITHDRAWN,
        way=ConsentWay.SLACK,
        on=local_day(first_team(session, pitcher), line.posted_at),
        at=line.posted_at,
        person_id=key(person),
        said_by=person.name,
        line_id=key(line),
    )
    add_event(session, pitcher, event, person, line.posted_at)


def add_event(
    session: Session, pitcher: Pitcher, event: ConsentEvent, by: Person | None, now: datetime
) -> list[Notice]:
    """Put an event on file and bring the record to it.

    With consent the kept-back lines are read again soon; without it the outings leave every
    sum at once. Nothing is deleted, and no hold ends.
    """
    session.add(event)
    session.flush()
    return [*settle_consent(session, pitcher, by, now), *tell_staff(session, event, now)]


def settle_consent(
    session: Session, pitcher: Pitcher, by: Person | None, now: datetime
) -> list[Notice]:
    """Bring a pitcher's record to the consent as it stands; `by` made the change."""
    before = pitcher.consent_on
    on = local_day(first_team(session, pitcher), now)
    pitcher.consent_on = consent_of(session, pitcher, on).since
    session.add(pitcher)
    notices = bring_up_to_date(session, pitcher, now)
    if pitcher.consent_on == before:
        return notices
    _audit(session, pitcher, before, by, now)
    if pitcher.consent_on is None:
        _take_out(session, pitcher, now)
        return [*notices, *watch(session, {key(pitcher)}, now)]
    if before is None:
        _bring_back(session, pitcher)
        if kept_lines(session, pitcher):
            session.add(
                Errand(
                    workspace_id=pitcher.workspace_id,
                    kind=HEAR_KEPT,
                    data={"pitcher": key(pitcher), "by": by.id if by is not None else None},
                    not_before=now,
                )
            )
    return notices


def _audit(
    session: Session, pitcher: Pitcher, before: date | None, by: Person | None, now: datetime
) -> None:
    after, by_slack_id = pitcher.consent_on, (by.slack_id if by is not None else None) or ""
    put_on_audit(
        session, pitcher, AuditAction.CORRECTED, by_slack_id, now,
        before={"consent_on": before.isoformat() if before else None},
        after={"consent_on": after.isoformat() if after else None},
    )  # fmt: skip


def _take_out(session: Session, pitcher: Pitcher, now: datetime) -> None:
    """Take every outing out of the sums; the rows stay, to come back with consent."""
    standing = select(Outing).where(
        Outing.pitcher_id == key(pitcher), col(Outing.withdrawn_at).is_(None)
    )
    for outing in session.exec(standing):
        outing.withdrawn_at, outing.kept_back = now, True
        session.add(outing)
    session.flush()


def _bring_back(session: Session, pitcher: Pitcher) -> None:
    """Bring the outings back whose lines still stand."""
    rows = (
        select(Outing, Line)
        .join(Line, col(Outing.line_id) == col(Line.id))
        .where(Outing.pitcher_id == key(pitcher), Outing.kept_back)
    )
    for outing, line in session.exec(rows).all():
        outing.kept_back = False
        if _still_said(line, outing):
            outing.withdrawn_at = None
        session.add(outing)
    session.flush()


def _still_said(line: Line, outing: Outing) -> bool:
    """Whether a line says what it said when its outing was taken out."""
    if line.deleted_at is not None or line.state == LineState.UNDONE:
        return False
    in_line = any(entry["slot"] == outing.slot for entry in line.entries)
    return in_line or is_kept_back(line, outing.pitcher_id)


def is_kept_back(line: Line, pitcher_id: int) -> bool:
    """Whether a line waits for consent to this pitcher's record."""
    return any(
        asked["code"] == QuestionCode.NO_CONSENT and asked["pitcher_id"] == pitcher_id
        for asked in line.questions
    )


def kept_lines(session: Session, pitcher: Pitcher) -> list[Line]:
    """The lines that wait for consent to this pitcher's record, oldest first."""
    rows = session.exec(
        select(Line)
        .where(
            Line.workspace_id == pitcher.workspace_id,
            col(Line.state).in_([LineState.ASKED, LineState.NOT_ALLOWED]),
            col(Line.deleted_at).is_(None),
        )
        .order_by(col(Line.posted_at), col(Line.id))
    )
    return [line for line in rows if is_kept_back(line, key(pitcher))]
