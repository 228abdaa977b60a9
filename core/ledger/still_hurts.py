"""Whether pain that was reported is gone: its family is asked after 1, 3 and 7 days.

Only of an arm that stopped and is on no hold: a hold ends by a clinician's clearance alone.
Nothing follows from silence.
"""

from collections.abc import Iterable, Iterator
from datetime import date, datetime
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.audience import Occasion, Told, who_is_told
from core.ledger.audit import put_on_audit, subject_of
from core.ledger.clearance import ADULT, age_on, arm_records, may_clear
from core.ledger.holds import sore_arms, stopping
from core.ledger.notices import Notice, NoticeKind, quiet_until
from core.ledger.reminders import is_first
from core.model import (
    AuditAction,
    AuditEntry,
    Line,
    OutboxMessage,
    PainReport,
    Person,
    Pitcher,
    PitcherTeam,
    Reminder,
    Team,
    key,
)
from core.pain.status import ArmStatus

#: Days after the report was made.
STEPS = (1, 3, 7)
NOT_YET = "not yet"


def ask_again(session: Session, team: Team, now: datetime) -> list[Notice]:
    """What a team's families are asked on this local day; once for each report and step."""
    links = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    reported = select(PainReport.pitcher_id).where(col(PainReport.pitcher_id).in_(links))
    # No DISTINCT: PostgreSQL compares no JSON columns.
    rows = select(Pitcher).where(col(Pitcher.id).in_(reported)).order_by(col(Pitcher.id))
    pitchers = session.exec(rows).all()
    records = arm_records(session, pitchers)
    today = now.astimezone(ZoneInfo(team.time_zone)).date()
    return [
        notice
        for pitcher in pitchers
        for notice in _ask(session, team, pitcher, records[key(pitcher)].status(today), now)
    ]


def _ask(
    session: Session, team: Team, pitcher: Pitcher, status: ArmStatus, now: datetime
) -> Iterator[Notice]:
    zone = ZoneInfo(team.time_zone)
    today = now.astimezone(zone).date()
    if status.since is None or status.held or (found := _newest(session, pitcher)) is None:
        return
    report, line = found
    passed = (today - line.posted_at.astimezone(zone).date()).days
    step = max((one for one in STEPS if one <= passed), default=None)
    if step is None:
        return
    period = f"{key(report)}/{step}"
    row = who_is_told(Occasion.STILL_HURTS)
    at = quiet_until(now, team.time_zone) if row.waits_for_morning else now
    people = [one for one in who_may_say(session, pitcher, today) if one.slack_id is not None]
    for person in people if Told.WHO_CLEARS in row.told else ():
        slot = f"{NoticeKind.STILL_HURTS}/{key(pitcher)}/{period}/person/{key(person)}"
        if is_first(
            session, NoticeKind.STILL_HURTS, person, key(pitcher), period=period, slot=slot
        ):
            yield _notice(slot, person.slack_id or "", at, team, person)
    slot = f"{NoticeKind.STILL_HURTS}/{key(pitcher)}/{period}/team/{key(team)}"
    if not people and not _is_owed(session, team, slot):
        yield _notice(slot, team.staff_channel, now, team)


def who_may_say(session: Session, pitcher: Pitcher, on: date) -> list[Person]:
    """Whoever may say that this arm is free of pain again; an adult pitcher speaks for himself."""
    allowed = may_clear(session, pitcher, on)
    if age_on(pitcher.birth_date, on) >= ADULT and pitcher.person_id is not None:
        allowed = {pitcher.person_id}
    people = select(Person).where(col(Person.id).in_(allowed)).order_by(col(Person.id))
    return list(session.exec(people))


def _newest(session: Session, pitcher: Pitcher) -> tuple[PainReport, Line] | None:
    """The report that was made last among those that stop the arm or call it sore."""
    rows = session.exec(
        select(PainReport, Line)
        .join(Line, col(PainReport.line_id) == col(Line.id))
        .where(PainReport.pitcher_id == key(pitcher))
        .order_by(col(Line.posted_at).desc(), col(PainReport.id).desc())
    ).all()
    reports = [report for report, _ in rows]
    stop = stopping(session, reports, pitcher) | sore_arms(reports, pitcher)
    return next(((report, line) for report, line in rows if key(report) in stop), None)


def _is_owed(session: Session, team: Team, slot: str) -> bool:
    known = select(OutboxMessage.id).where(
        OutboxMessage.workspace_id == team.workspace_id, OutboxMessage.slot == slot
    )
    return session.exec(known).first() is not None


def _notice(slot: str, to: str, at: datetime, team: Team, person: Person | None = None) -> Notice:
    return Notice(
        slot=slot,
        kind=NoticeKind.STILL_HURTS,
        destination=to,
        not_before=at,
        team_id=key(team),
        person_id=key(person) if person is not None else None,
    )


def questions_about(session: Session, pitcher_ids: Iterable[int], now: datetime) -> list[Notice]:
    """The questions about these arms that people see, brought up to what stands now."""
    slots = select(Reminder.slot).where(
        Reminder.kind == NoticeKind.STILL_HURTS, col(Reminder.pitcher_id).in_(list(pitcher_ids))
    )
    return [
        Notice(
            slot=slot,
            kind=NoticeKind.STILL_HURTS,
            destination="",
            not_before=now,
            only_if_shown=True,
        )
        for slot in session.exec(slots.order_by(col(Reminder.id)))
    ]


def say_not_yet(
    session: Session, report: PainReport, step: int, person: Person, now: datetime, on: date
) -> None:
    """Keep that somebody answered "not yet" on a local day; it is no new report, ends nothing
    and puts off when soreness lapses.
    """
    report.not_gone_on = on
    session.add(report)
    put_on_audit(
        session, report, AuditAction.RECORDED, person.slack_id or "", now,
        after={"gone": NOT_YET, "step": step, "person": key(person)},
    )  # fmt: skip
    session.flush()


def said_not_yet(session: Session, report_id: int, step: int) -> str:
    """The name of whoever answered "not yet" to this question, or nothing."""
    rows = session.exec(
        select(AuditEntry).where(
            AuditEntry.subject == subject_of(PainReport), AuditEntry.subject_id == report_id
        )
    )
    people = [
        row.after["person"]
        for row in rows
        if row.after.get("gone") == NOT_YET and row.after.get("step") == step
    ]
    person = session.get(Person, people[0]) if people else None
    return person.name if person is not None else ""
