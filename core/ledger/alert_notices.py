"""Who hears of an alert: the rows of the audience table, applied to one pitcher and team."""

from dataclasses import replace
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.alerts import Key, threshold
from core.audience import Told, who_is_told
from core.contact.reach import himself
from core.ledger.clearance import arm_status
from core.ledger.holds import stops
from core.ledger.notices import Notice, NoticeKind, quiet_until
from core.ledger.people import guardians_of
from core.model import (
    Alert,
    AlertState,
    Line,
    OutboxMessage,
    PainReport,
    Person,
    PitchCaller,
    Pitcher,
    Team,
    key,
)

#: What the calendar brings for several arms at once: one message for all of a team and day.
TOGETHER = frozenset({Key.SILENT_DAYS, Key.SPIN_WEEK})
#: An alert and the report that raised it are of one moment.
AT_ONCE = timedelta(minutes=1)


def told_together(session: Session, slot: str) -> list[Alert]:
    """The alerts that one message tells of together; none where it tells of a single one."""
    _, name, day, *rest = slot.split("/")
    if name not in TOGETHER:
        return []
    rows = select(Alert).where(
        Alert.team_id == int(rest[-1]),
        Alert.key == name,
        Alert.raised_on == date.fromisoformat(day),
    )
    return list(session.exec(rows.order_by(col(Alert.id))))


def notices_of(
    session: Session, alert: Alert, pitcher: Pitcher, team: Team, now: datetime, *, is_new: bool
) -> list[Notice]:
    """The messages of one alert; where it changed, those that people see already are edited.

    An alert that stands again after it was taken back is edited too, not sent a second time.
    """
    row = who_is_told(threshold(Key(alert.key)).told)
    later = quiet_until(now, team.time_zone) if row.waits_for_morning else now
    shown = not is_new and alert.state != AlertState.STANDING
    notices: list[Notice] = []
    if Told.STAFF_CHANNEL in row.told:
        notices.append(replace(staff_notice(alert, team, now), only_if_shown=shown))
    if Told.GUARDIANS in row.told:
        notices += [
            _notice(alert, _slot(alert, person), person.slack_id, later, shown, key(person))
            for person in guardians_of(session, {key(pitcher)})
            if person.slack_id is not None
        ]
    own = _himself(session, pitcher, team, now) if Told.PITCHER in row.told else None
    if own is not None and own.slack_id is not None:
        slot = _slot(alert, own)
        notices.append(_notice(alert, slot, own.slack_id, later, shown, key(own)))
    return notices


def is_told_with_report(session: Session, alert: Alert, person_id: int) -> bool:
    """Whether the report that raised an alert of pain was told to this guardian by itself.

    That notice stops the arm and says more; of soreness alone a family is told by the alert.
    """
    if alert.key != Key.PAIN_REPORTS:
        return False
    since = alert.raised_at - AT_ONCE
    reports = select(PainReport, Line).join(Line, col(PainReport.line_id) == col(Line.id))
    own = reports.where(
        PainReport.pitcher_id == alert.pitcher_id,
        Line.author_id == person_id,
        col(Line.received_at) >= since,
        col(PainReport.withdrawn_at).is_(None),
    )
    pitcher = session.get_one(Pitcher, alert.pitcher_id)
    if any(stops(session, report, pitcher) for report, _ in session.exec(own)):
        return True
    of_pitcher = select(PainReport.line_id).where(PainReport.pitcher_id == alert.pitcher_id)
    told = select(OutboxMessage.id).where(
        OutboxMessage.kind == NoticeKind.PAIN,
        OutboxMessage.person_id == person_id,
        col(OutboxMessage.line_id).in_(of_pitcher),
        col(OutboxMessage.not_before) >= since,
        col(OutboxMessage.not_before) <= alert.raised_at + AT_ONCE,
    )
    return session.exec(told.limit(1)).first() is not None


def staff_notice(alert: Alert, team: Team, now: datetime) -> Notice:
    """The alert's message in the staff channel, brought up to date where it stands already."""
    slot = f"{NoticeKind.ALERT}/{key(alert)}/team/{key(team)}"
    if alert.key in TOGETHER:
        slot = f"{NoticeKind.ALERT}/{alert.key}/{alert.raised_on}/team/{key(team)}"
    return _notice(alert, slot, team.staff_channel, now, shown=True)


def _slot(alert: Alert, person: Person) -> str:
    return f"{NoticeKind.ALERT}/{key(alert)}/person/{key(person)}"


def _notice(
    alert: Alert, slot: str, to: str, at: datetime, shown: bool, person_id: int | None = None
) -> Notice:
    return Notice(
        slot=slot,
        kind=NoticeKind.ALERT,
        destination=to,
        not_before=at,
        team_id=alert.team_id,
        person_id=person_id,
        only_if_shown=shown,
    )


def _himself(session: Session, pitcher: Pitcher, team: Team, now: datetime) -> Person | None:
    """The pitcher's own account, where the pitches are his own choice and he may be written to.

    Nobody is told how to pitch while his arm must not.
    """
    today = now.astimezone(ZoneInfo(team.time_zone)).date()
    if pitcher.pitch_caller != PitchCaller.PITCHER:
        return None
    if arm_status(session, pitcher, today).bars_pitching:
        return None
    return himself(session, pitcher, team, today)
