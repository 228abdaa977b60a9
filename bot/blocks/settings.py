"""The settings of a team: what each is now, the form that changes it, and who changed what."""

from zoneinfo import ZoneInfo

from sqlmodel import Session, col, func, select

from bot.blocks.message import Button, Part
from bot.forms import FORMS
from bot.forms.form import opens
from bot.wording import settings as say
from core.model import (
    STAFF_ROLES,
    AuditEntry,
    CoachLimit,
    Membership,
    Person,
    Pitcher,
    Team,
    TeamSchedule,
    ThresholdSetting,
    key,
)

#: So many changes are listed, the newest ones.
MOST_CHANGES = 5
_THRESHOLD, _LIMIT = (table.__name__.lower() for table in (ThresholdSetting, CoachLimit))


def settings_parts(session: Session, team: Team) -> list[Part]:
    """Every setting with its present value and the button that changes it, then the changes.

    A form that is a setting stands here by itself; what no form sets is told all the same.
    """
    forms = {one.setting.title: one for one in FORMS.values() if one.setting is not None}
    parts = []
    for title, form in forms.items():
        now = form.setting.now(session, team) if form.setting is not None else ""
        button = Button(say.CHANGE, opens(form.name), {"team": key(team)})
        parts.append(Part(say.setting(title, now), (button,)))
    told = {title: now for title, now in _told(session, team).items() if title not in forms}
    parts += [Part("\n".join(say.setting(*one) for one in told.items()))]
    return [*parts, Part(_changes(session, team))]


def _told(session: Session, team: Team) -> dict[str, str]:
    """The settings that may have no form, with their present values."""
    return {
        say.SCHEDULES: say.schedules(_schedules(session, team)),
        say.RULE_BOOKS: say.rule_books(team.rule_books),
        say.TEAM: say.team(team.time_zone, team.account_age),
        say.QUIET: say.QUIET_NOW,
    }


def _schedules(session: Session, team: Team) -> list[str]:
    rows = select(TeamSchedule).where(TeamSchedule.team_id == key(team))
    return [
        say.schedule(row.kind, row.weekday, f"{row.at:%H:%M}", is_on=row.is_on)
        for row in session.exec(rows.order_by(col(TeamSchedule.id)))
    ]


def _changes(session: Session, team: Team) -> str:
    """What the staff of the team changed last: thresholds and limits."""
    staff = select(Membership.person_id).where(
        Membership.team_id == key(team), col(Membership.role).in_(STAFF_ROLES)
    )
    rows = session.exec(
        select(AuditEntry, Person.name, ThresholdSetting.key, Pitcher.name)
        .join(
            Person,
            (col(Person.slack_id) == col(AuditEntry.by_slack_id))
            & (col(Person.workspace_id) == col(AuditEntry.workspace_id)),
        )
        .outerjoin(
            ThresholdSetting,
            (col(AuditEntry.subject) == _THRESHOLD)
            & (col(ThresholdSetting.id) == col(AuditEntry.subject_id)),
        )
        .outerjoin(
            CoachLimit,
            (col(AuditEntry.subject) == _LIMIT)
            & (col(CoachLimit.id) == col(AuditEntry.subject_id)),
        )
        .outerjoin(
            Pitcher,
            col(Pitcher.id) == func.coalesce(ThresholdSetting.pitcher_id, CoachLimit.pitcher_id),
        )
        .where(
            AuditEntry.workspace_id == team.workspace_id,
            col(AuditEntry.subject).in_([_THRESHOLD, _LIMIT]),
            col(Person.id).in_(staff),
        )
        .order_by(col(AuditEntry.id).desc())
        .limit(MOST_CHANGES)
    ).all()
    zone = ZoneInfo(team.time_zone)
    told = [
        say.change(
            entry.at.astimezone(zone).date(),
            by,
            name or entry.subject,
            whom or "",
            entry.before,
            entry.after,
        )
        for entry, by, name, whom in rows
    ]
    return "\n".join([say.CHANGES, *told]) if told else say.NO_CHANGES
