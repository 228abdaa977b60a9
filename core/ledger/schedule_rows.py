"""A team's schedules as they stand: the defaults, with what the staff set applied to them."""

from dataclasses import dataclass, replace
from datetime import datetime, time

from sqlalchemy import bindparam
from sqlmodel import Session, col, select

from core.model import (
    ScheduleKind,
    ScheduleSetting,
    Team,
    TeamSchedule,
    key,
)
from core.store.once import insert_once


@dataclass(frozen=True, slots=True)
class Timing:
    """When something is sent: weekday (0 is Monday), local time, on or off, and its cues.

    `before_practice` are minutes before the week's first practice; none: never before one.
    """

    weekday: int
    at: time
    is_on: bool = True
    before_practice: int | None = None
    cues: tuple[str, ...] = ()


#: Until the staff set others.
DEFAULTS: dict[ScheduleKind, Timing] = {
    ScheduleKind.MONDAY_SUMMARY: Timing(0, time(7)),
    ScheduleKind.SPIN: Timing(2, time(16), before_practice=30),
    ScheduleKind.POST_GAME: Timing(0, time(8, 30)),
    ScheduleKind.REST_DAYS: Timing(0, time(8)),
    ScheduleKind.REST_EVENING: Timing(0, time(19, 30)),
}


def timing_of(row: TeamSchedule) -> Timing:
    """What a stored row says."""
    return Timing(row.weekday, row.at, row.is_on, row.before_practice, tuple(row.cues))


_SCHEDULES = select(TeamSchedule).where(col(TeamSchedule.team_id) == bindparam("team"))


def timings(session: Session, team_id: int) -> dict[ScheduleKind, Timing]:
    """Every schedule of a team as it stands; the default where no row is there yet."""
    rows = session.exec(_SCHEDULES, params={"team": team_id})
    return DEFAULTS | {ScheduleKind(row.kind): timing_of(row) for row in rows}


def timing(session: Session, team_id: int, kind: ScheduleKind) -> Timing:
    """One schedule of a team as it stands."""
    rows = select(TeamSchedule).where(TeamSchedule.team_id == team_id, TeamSchedule.kind == kind)
    row = session.exec(rows).first()
    return timing_of(row) if row is not None else DEFAULTS[kind]


def begin(session: Session, team: Team, kind: ScheduleKind, now: datetime) -> None:
    """Give a team a schedule that it lacks, from `now` (UTC) on."""
    first = DEFAULTS[kind]
    values = {
        "workspace_id": team.workspace_id,
        "team_id": key(team),
        "kind": kind,
        "weekday": first.weekday,
        "at": first.at,
        "is_on": first.is_on,
        "since": now,
        "before_practice": first.before_practice,
        "cues": [],
    }
    insert_once(session, TeamSchedule, values)


def bring_up(session: Session, team_id: int, kind: ScheduleKind, now: datetime) -> Timing:
    """Work a schedule out again from what is set and not taken back; gives it as it was before.

    One that was off makes up for nothing that fell due meanwhile.
    """
    session.flush()
    begin(session, session.get_one(Team, team_id), kind, now)
    rows = select(TeamSchedule).where(TeamSchedule.team_id == team_id, TeamSchedule.kind == kind)
    row = session.exec(rows.with_for_update()).one()
    before, wanted = timing_of(row), DEFAULTS[kind]
    settings = select(ScheduleSetting).where(
        ScheduleSetting.team_id == team_id,
        ScheduleSetting.kind == kind,
        col(ScheduleSetting.withdrawn_at).is_(None),
    )
    for setting in session.exec(settings.order_by(col(ScheduleSetting.id))):
        wanted = _applied(wanted, setting, DEFAULTS[kind])
    row.weekday, row.at, row.is_on = wanted.weekday, wanted.at, wanted.is_on
    row.before_practice, row.cues = wanted.before_practice, list(wanted.cues)
    if wanted.is_on and not before.is_on:
        row.since = now
    session.add(row)
    return before


def _applied(wanted: Timing, setting: ScheduleSetting, first: Timing) -> Timing:
    if setting.is_default:
        return replace(first, cues=wanted.cues)
    if setting.cue is not None:
        cues = [one for one in wanted.cues if one != setting.cue]
        return replace(wanted, cues=tuple(cues if setting.drops_cue else [*cues, setting.cue]))
    changed = {
        name: value
        for name in ("weekday", "at", "is_on")
        if (value := getattr(setting, name)) is not None
    }
    if setting.before_practice is not None:
        changed["before_practice"] = setting.before_practice or None
    elif "at" in changed or "weekday" in changed:
        # Whoever names a day or a time of his own means that time.
        changed["before_practice"] = None
    return replace(wanted, **changed)
