"""Holds on the record: raised with the report that calls for one, never undone by its line."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import date, timedelta

from sqlalchemy import bindparam
from sqlmodel import Session, col, select

from core.ledger.apply import Change, audit
from core.ledger.settings import pain_threshold
from core.model import AuditAction, Clearance, Feeling, Hold, Line, Outing, PainReport, Pitcher, key
from core.pain import PAIN_THRESHOLD, Report, is_sore_arm, lingers, stops_throwing
from core.pain.holds import (
    AGAIN_WITHIN,
    ClearedBy,
    Held,
    HoldReason,
    covers,
    hold_reason,
)
from core.reading.urgent import urgency
from core.store.together import Together

HURTS = frozenset({Feeling.PAIN, Feeling.SORE})
#: What may stop throwing: pain, and soreness or a tired arm that goes on.
STOPPING = HURTS | {Feeling.TIRED}
DAY = timedelta(days=1)


def raise_holds(change: Change) -> None:
    """Put every arm on hold whose report in this line calls for it; once for each line and arm.

    A report counts whatever became of it since: withdrawn ones too.
    """
    for report in _reports(change):
        if report.feeling in HURTS and not _is_held(change, report.pitcher_id):
            _raise(change, report)


def _reports(change: Change) -> Sequence[PainReport]:
    if change.is_new:
        return [row for row in change.added if isinstance(row, PainReport)]
    of_line = select(PainReport).where(PainReport.line_id == key(change.line))
    return change.session.exec(of_line.order_by(col(PainReport.id))).all()


def _is_held(change: Change, pitcher_id: int) -> bool:
    known = select(Hold.id).where(Hold.line_id == key(change.line), Hold.pitcher_id == pitcher_id)
    return change.session.exec(known).first() is not None


def _raise(change: Change, report: PainReport) -> None:
    pitcher = change.session.get_one(Pitcher, report.pitcher_id)
    near = reports_near(change.session, key(pitcher), report.on)
    stop = stopping(change.session, near, pitcher)
    sore = sore_arms(near, pitcher)
    others = [one for one in near if one.line_id != report.line_id]
    reason = hold_reason(
        report.severity,
        report.on,
        stops=key(report) in stop,
        be_seen=urgency(change.line.text) is not None and report.severity != 0,
        earlier=[
            one.on
            for one in others
            if key(one) in stop or (key(one) in sore and not _goes_on(one, report))
        ],
        threshold=pain_threshold(change.session, report.pitcher_id),
    )
    if reason is None:
        return
    row = Hold(
        workspace_id=change.line.workspace_id,
        pitcher_id=report.pitcher_id,
        line_id=key(change.line),
        on=report.on,
        reason=reason,
        raised_at=change.at,
    )
    change.session.add(row)
    change.session.flush()
    audit(change, row, AuditAction.RECORDED, {}, {"on": row.on.isoformat(), "reason": row.reason})


def _goes_on(earlier: PainReport, report: PainReport) -> bool:
    """Whether this is soreness of the day before still there: pain, and no second report yet."""
    return report.feeling == Feeling.SORE and earlier.on == report.on - DAY


def stopping(session: Session, reports: Sequence[PainReport], pitcher: Pitcher) -> frozenset[int]:
    """Which of a pitcher's reports (ids) stop throwing.

    A tired arm that was reported the day before by another line stops it too: still there on
    the second day. So does soreness of the throwing arm that was reported by another line on
    one of the 14 days before.
    """
    threshold = PAIN_THRESHOLD
    if any(one.feeling == Feeling.SORE and one.severity for one in reports):
        threshold = pain_threshold(session, key(pitcher))
    known = [one for one in reports if one.feeling in STOPPING]
    stop = [one for one in known if stops_throwing(_told(one), pitcher.throws, threshold)]
    lingering = [one for one in known if lingers(_told(one), pitcher.throws)]
    felt = {(one.on, one.line_id) for one in [*stop, *lingering]}
    again = [
        one
        for one in lingering
        if any(on == one.on - DAY and line_id != one.line_id for on, line_id in felt)
    ]
    sore = [one for one in lingering if one.feeling == Feeling.SORE]
    sore_again = [
        one
        for one in sore
        if any(
            timedelta(0) < one.on - other.on <= AGAIN_WITHIN and other.line_id != one.line_id
            for other in [*stop, *sore]
        )
    ]
    return frozenset(key(one) for one in [*stop, *again, *sore_again])


def sore_arms(reports: Iterable[PainReport], pitcher: Pitcher) -> frozenset[int]:
    """Which of a pitcher's reports (ids) call the throwing arm sore."""
    return frozenset(key(one) for one in reports if is_sore_arm(_told(one), pitcher.throws))


def _told(report: PainReport) -> Report:
    return Report(
        report.site,
        report.severity,
        report.side,
        sore=report.feeling == Feeling.SORE,
        tired=report.feeling == Feeling.TIRED,
    )


def reports_near(session: Session, pitcher_id: int, on: date) -> list[PainReport]:
    """The reports of a pitcher about the days within two weeks of a day."""
    rows = select(PainReport).where(
        PainReport.pitcher_id == pitcher_id,
        col(PainReport.on) >= on - AGAIN_WITHIN,
        col(PainReport.on) <= on + AGAIN_WITHIN,
    )
    return list(session.exec(rows.order_by(col(PainReport.id))))


def stops(session: Session, report: PainReport, pitcher: Pitcher) -> bool:
    """Whether throwing stops for this report."""
    near = reports_near(session, key(pitcher), report.on)
    return key(report) in stopping(session, near, pitcher)


def holds_by_pitcher(holds: Iterable[Hold]) -> dict[int, list[Hold]]:
    """Holds by pitcher, oldest first."""
    found: dict[int, list[Hold]] = defaultdict(list)
    for one in sorted(holds, key=lambda hold: (hold.on, key(hold))):
        found[one.pitcher_id].append(one)
    return found


def clearances_by_pitcher(clearances: Iterable[Clearance]) -> dict[int, list[Clearance]]:
    """Clearances by pitcher, oldest first by the clinician's day."""
    found: dict[int, list[Clearance]] = defaultdict(list)
    for one in sorted(clearances, key=lambda row: (row.on, key(row))):
        found[one.pitcher_id].append(one)
    return found


def as_held(hold: Hold) -> Held:
    """The hold as the rules of `core.pain` see it."""
    return Held(hold.on, hold.raised_at)


def as_cleared(row: Clearance) -> ClearedBy:
    """The clearance as the rules of `core.pain` see it."""
    return ClearedBy(row.on, row.said_at)


_HELD_AND_CLEARED = Together(
    (Hold, col(Hold.pitcher_id) == bindparam("pitcher")),
    (
        Clearance,
        (col(Clearance.pitcher_id) == bindparam("pitcher")) & col(Clearance.withdrawn_at).is_(None),
    ),
)


def hold_covering(session: Session, pitcher_id: int, day: date) -> Hold | None:
    """The hold during which nothing was meant to be thrown on this day, if there is one."""
    holds, clearances = _HELD_AND_CLEARED.rows(session, pitcher=pitcher_id)
    held = holds_by_pitcher(holds)[pitcher_id]
    ended = [as_cleared(row) for row in clearances_by_pitcher(clearances)[pitcher_id]]
    return next((one for one in held if covers(as_held(one), ended, day)), None)


def is_thrown_on_hold(session: Session, outing: Outing) -> bool:
    """Whether an outing on record is throwing on a day of a hold."""
    standing = outing.withdrawn_at is None and outing.kind != "off"
    return standing and hold_covering(session, outing.pitcher_id, outing.on) is not None


def hold_of_line(session: Session, line: Line, pitcher_id: int) -> HoldReason | None:
    """Why a line put this arm on hold, or none."""
    rows = select(Hold).where(Hold.line_id == key(line), Hold.pitcher_id == pitcher_id)
    row = session.exec(rows).first()
    return HoldReason(row.reason) if row is not None else None


def earlier_at_site(session: Session, report: PainReport) -> int:
    """How many other lines reported pain at the same site in the twelve months before."""
    rows = select(PainReport.line_id).where(
        PainReport.pitcher_id == report.pitcher_id,
        PainReport.site == report.site,
        PainReport.line_id != report.line_id,
        col(PainReport.feeling).in_(list(HURTS)),
        col(PainReport.on) <= report.on,
        col(PainReport.on) > report.on - timedelta(days=365),
    )
    return len(set(session.exec(rows)))
