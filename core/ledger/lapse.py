"""Soreness that nobody reported again stands no longer after 14 days: kept in the audit.

Pain and holds never end by themselves. What lapses says nothing of how an arm is.
"""

from datetime import date, datetime
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.ledger.audit import put_on_audit, subject_of
from core.ledger.clearance import arm_records
from core.ledger.notices import Notice
from core.ledger.still_hurts import questions_about
from core.model import (
    AuditAction,
    AuditEntry,
    Feeling,
    PainReport,
    Pitcher,
    PitcherTeam,
    Team,
    key,
)

LAPSED = "no further report within 14 days"


def lapse_soreness(session: Session, team: Team, now: datetime) -> list[Notice]:
    """Put on the audit whose soreness lapsed, once for each report; nobody did it.

    The questions to families that are shown are brought up to it.
    """
    today = now.astimezone(ZoneInfo(team.time_zone)).date()
    ended = [
        pitcher
        for pitcher, report in _lapsed(session, team, today)
        if _put_on_audit(session, report, now)
    ]
    return questions_about(session, [key(one) for one in ended], now) if ended else []


def _lapsed(session: Session, team: Team, today: date) -> list[tuple[Pitcher, PainReport]]:
    links = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    rows = select(PainReport).where(
        col(PainReport.pitcher_id).in_(links), PainReport.feeling == Feeling.SORE
    )
    newest = {one.pitcher_id: one for one in session.exec(rows.order_by(col(PainReport.on)))}
    pitchers = session.exec(select(Pitcher).where(col(Pitcher.id).in_(list(newest)))).all()
    records = arm_records(session, pitchers) if pitchers else {}
    return [
        (one, newest[key(one)])
        for one in sorted(pitchers, key=key)
        if records[key(one)].has_lapsed(today)
    ]


def _put_on_audit(session: Session, report: PainReport, now: datetime) -> bool:
    known = session.exec(
        select(AuditEntry).where(
            AuditEntry.subject == subject_of(PainReport), AuditEntry.subject_id == key(report)
        )
    )
    if any(one.after.get("ended") == LAPSED for one in known):
        return False
    put_on_audit(
        session, report, AuditAction.CORRECTED, "", now,
        before={"stands": True}, after={"stands": False, "ended": LAPSED},
    )  # fmt: skip
    session.flush()
    return True
