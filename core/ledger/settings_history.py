"""Who changed what of a team, newest first: settings, roles, the roster, and consent to records.

Birth dates and what lines say of an arm are in none of it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import ColumnElement, and_, case, func, or_
from sqlmodel import Session, col, select
from sqlmodel.sql.expression import SelectOfScalar

from core.ledger.audit import subject_of
from core.model import (
    AuditAction,
    AuditEntry,
    CoachLimit,
    ConsentEvent,
    ConsentWay,
    Membership,
    Person,
    Pitcher,
    PitcherTeam,
    RestDayWord,
    ScheduleSetting,
    SpinPlan,
    Team,
    ThresholdSetting,
    key,
)

_Setting = ThresholdSetting | CoachLimit | ScheduleSetting | SpinPlan | RestDayWord


class Topic(StrEnum):
    """What a change is about: the name under which the audit keeps it; consent has a table."""

    THRESHOLD = subject_of(ThresholdSetting)
    LIMIT = subject_of(CoachLimit)
    SCHEDULE = subject_of(ScheduleSetting)
    SPIN_PLAN = subject_of(SpinPlan)
    REST_DAY = subject_of(RestDayWord)
    TEAM = subject_of(Team)
    ROLE = subject_of(Membership)
    PITCHER = subject_of(Pitcher)
    CONSENT = subject_of(ConsentEvent)


_TABLES: dict[Topic, type[_Setting]] = {
    Topic.THRESHOLD: ThresholdSetting,
    Topic.LIMIT: CoachLimit,
    Topic.SCHEDULE: ScheduleSetting,
    Topic.SPIN_PLAN: SpinPlan,
    Topic.REST_DAY: RestDayWord,
}


@dataclass(frozen=True, slots=True)
class Changed:
    """One change at `at` (UTC); `by` is empty where nobody on file made it.

    `name` says which threshold, schedule, activity, or what was said to consent; `whom` is the
    pitcher or person it is about, `second` who confirmed a role or recorded a paper.
    """

    at: datetime
    by: str
    topic: Topic
    action: AuditAction
    name: str = ""
    whom: str = ""
    second: str = ""
    before: Mapping[str, Any] = field(default_factory=dict)
    after: Mapping[str, Any] = field(default_factory=dict)


def changes_of(session: Session, team: Team, most: int) -> list[Changed]:
    """The `most` newest changes of a team, newest first."""
    found = [*_audited(session, team, most), *_consents(session, team, most)]
    return sorted(found, key=lambda one: one.at, reverse=True)[:most]


def _audited(session: Session, team: Team, most: int) -> list[Changed]:
    rows = session.exec(
        select(AuditEntry, Person.name)
        .outerjoin(
            Person,
            (col(Person.workspace_id) == col(AuditEntry.workspace_id))
            & (
                (col(Person.slack_id) == col(AuditEntry.by_slack_id))
                | (col(Person.former_slack_id) == col(AuditEntry.by_slack_id))
            ),
        )
        .where(
            AuditEntry.workspace_id == team.workspace_id,
            col(AuditEntry.subject).in_([*Topic]),
            _is_of(team),
        )
        .order_by(col(AuditEntry.id).desc())
        .limit(most)
    ).all()
    return [_told(session, entry, by or "") for entry, by in rows]


def _is_of(team: Team) -> ColumnElement[bool]:
    """The entries of one team: by what they are about, or by what they say."""
    subject, about = col(AuditEntry.subject), col(AuditEntry.subject_id)
    arms = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    of_settings = [
        and_(subject == topic, about.in_(_ids(table, team, arms)))
        for topic, table in _TABLES.items()
    ]
    # A pitcher's entries about consent are told as what was said, which has its own table.
    of_pitchers = and_(
        subject == Topic.PITCHER,
        or_(
            and_(about.in_(arms), _json("after", "fields").as_string().is_not(None)),
            _names_team("before", team),
            _names_team("after", team),
        ),
    )
    return or_(
        *of_settings,
        of_pitchers,
        and_(subject == Topic.TEAM, about == key(team)),
        # The row of a role that was taken is gone; the entry knows the team.
        case((subject == Topic.ROLE, _role_team() == key(team)), else_=False),
    )


def _ids(table: type[_Setting], team: Team, arms: SelectOfScalar[int]) -> Any:
    if table is CoachLimit:
        return select(CoachLimit.id).where(col(CoachLimit.pitcher_id).in_(arms))
    columns: Any = table
    return select(columns.id).where(columns.team_id == key(team))


def _json(side: str, name: str) -> Any:
    return getattr(AuditEntry, side)[name]


def _role_team() -> Any:
    return func.coalesce(_json("after", "team").as_integer(), _json("before", "team").as_integer())


def _names_team(side: str, team: Team) -> ColumnElement[bool]:
    """Whether the list of a pitcher's teams, "[1, 2]", has this one."""
    said: Any = _json(side, "teams").as_string()
    for sign, comma in ((" ", ""), ("[", ","), ("]", ",")):
        said = func.replace(said, sign, comma)
    found: ColumnElement[bool] = said.contains(f",{key(team)},")
    return found


def _told(session: Session, entry: AuditEntry, by: str) -> Changed:
    topic, name, whom, second = Topic(entry.subject), "", "", ""
    before, after = dict(entry.before), dict(entry.after)
    match topic:
        case Topic.TEAM:
            pass
        case Topic.PITCHER:
            whom = _pitcher(session, entry.subject_id)
        case Topic.ROLE:
            said = entry.after if "role" in entry.after else entry.before
            name, whom = str(said["role"]), _person(session, said["person"])
            second = _person(session, entry.after.get("confirmed_by"))
            second = "" if second == by else second
        case _:
            row = session.get(_TABLES[topic], entry.subject_id)
            name = str(getattr(row, "key", "") or getattr(row, "kind", ""))
            name = name or str(getattr(row, "activity", ""))
            whom = _pitcher(session, getattr(row, "pitcher_id", None))
            if isinstance(row, ScheduleSetting) and row.cue:
                after["cue"], after["drops_cue"] = row.cue, row.drops_cue
    action = AuditAction(entry.action)
    return Changed(entry.at, by, topic, action, name, whom, second, before, after)


def _pitcher(session: Session, pitcher_id: int | None) -> str:
    found = session.get(Pitcher, pitcher_id) if pitcher_id is not None else None
    return found.name if found is not None else ""


def _person(session: Session, person_id: int | None) -> str:
    found = session.get(Person, person_id) if person_id is not None else None
    return found.name if found is not None else ""


def _consents(session: Session, team: Team, most: int) -> list[Changed]:
    arms = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    rows = session.exec(
        select(ConsentEvent, Pitcher.name)
        .join(Pitcher, col(Pitcher.id) == col(ConsentEvent.pitcher_id))
        .where(
            col(ConsentEvent.pitcher_id).in_(arms),
            # What the team's file brought is where the record begins, not a change of it.
            ConsentEvent.way != ConsentWay.FILE,
        )
        .order_by(col(ConsentEvent.at).desc(), col(ConsentEvent.id).desc())
        .limit(most)
    ).all()
    return [
        Changed(
            event.at,
            event.said_by,
            Topic.CONSENT,
            AuditAction.RECORDED,
            name=event.act,
            whom=pitcher,
            second=_person(session, event.recorded_by),
        )
        for event, pitcher in rows
    ]
