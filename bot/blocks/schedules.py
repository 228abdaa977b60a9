"""The answer to a line about schedules, the list of them, and what comes this week."""

from datetime import datetime, time

from sqlmodel import Session, col, select

from bot.blocks.message import Button, Part
from bot.forms.form import opens
from bot.wording import schedules as say
from bot.wording.rest_days import wish_kept
from core.contact.reach import wants_no_reminders
from core.due.forecast import forecast
from core.due.spin import team_plans
from core.ledger.audit import recorded
from core.ledger.crew import crew_of
from core.ledger.of_line import standing_of_line
from core.ledger.rest_day_words import rest_day_words
from core.ledger.schedule_rows import Timing, timing, timings
from core.ledger.schedules import Scheduling, scheduling_here
from core.model import (
    LastDayWish,
    Line,
    Pitcher,
    RestDayWord,
    ScheduleKind,
    ScheduleSetting,
    SpinPlan,
    Team,
    key,
)
from core.reading.asking import Activity


def schedule_lists(session: Session, line: Line) -> list[Part]:
    """The list that a line asks for, as of when it was posted; none where it asks for none."""
    said = _said(session, line)
    if said is None or said.asks is None:
        return []
    if said.asks.forecast:
        return [Part(_coming(session, team, line.posted_at)) for team in said.teams]
    return [
        Part(
            schedule_text(session, team),
            (
                Button(
                    say.change(team.name if len(said.teams) > 1 else ""),
                    opens("schedules"),
                    {"team": key(team)},
                ),
            ),
        )
        for team in said.teams
    ]


def schedule_text(session: Session, team: Team) -> str:
    """Every schedule of a team as it stands."""
    plans = team_plans(session, key(team))
    rows = select(Pitcher).where(col(Pitcher.id).in_(list(plans.own)))
    names = {key(one): one.name for one in session.exec(rows)} if plans.own else {}
    words = rest_day_words(session, [team])
    return say.listing(team.name, team.time_zone, timings(session, key(team)), plans, names, words)


def _coming(session: Session, team: Team, now: datetime) -> str:
    off = [kind for kind, one in timings(session, key(team)).items() if not one.is_on]
    return say.coming(team.name, team.time_zone, forecast(session, team, now), off, now)


def schedules_said(session: Session, line: Line) -> list[str]:
    """What a line set of schedules, cues, plans and wishes; nothing for another line."""
    return [
        *_schedules(session, line),
        *_plans(session, line),
        *_words(session, line),
        *(_wish(session, row) for row in standing_of_line(session, line, LastDayWish)),
    ]


def _wish(session: Session, row: LastDayWish) -> str:
    return wish_kept(wants=row.wants, stopped=wants_no_reminders(session, row.person_id))


def _schedules(session: Session, line: Line) -> list[str]:
    texts: list[str] = []
    for row in standing_of_line(session, line, ScheduleSetting):
        kind = ScheduleKind(row.kind)
        stands = timing(session, row.team_id, kind)
        if row.cue is not None:
            texts.append(say.cues_now(stands))
        else:
            texts.append(say.set_now(kind, _before(session, row, kind), stands))
    return list(dict.fromkeys(texts))


def _before(session: Session, row: ScheduleSetting, kind: ScheduleKind) -> str:
    """How the schedule stood before the line, as its audit entry has it."""
    entry = recorded(session, row)
    was = entry.before
    at = time.fromisoformat(was["at"])
    return say.when(kind, Timing(was["weekday"], at, was["is_on"], was["before_practice"] or None))


def _plans(session: Session, line: Line) -> list[str]:
    texts = []
    for row in standing_of_line(session, line, SpinPlan):
        plans = team_plans(session, row.team_id)
        if row.pitcher_id is None:
            texts.append(say.plan_set("", plans.team))
            continue
        pitcher = session.get_one(Pitcher, row.pitcher_id)
        texts.append(say.plan_set(pitcher.name, plans.of(pitcher)))
    return texts


def _words(session: Session, line: Line) -> list[str]:
    texts = []
    for row in standing_of_line(session, line, RestDayWord):
        stand = rest_day_words(session, [session.get_one(Team, row.team_id)])
        texts.append(say.words_set(Activity(row.activity), stand.get(row.activity, "")))
    return texts


def _said(session: Session, line: Line) -> Scheduling | None:
    crew = crew_of(session, line)
    return scheduling_here(session, line, crew) if crew is not None else None
