"""Schedules, cues and spin plans as the staff set them by a line; undoing takes them back."""

from dataclasses import dataclass, replace
from datetime import time

from sqlmodel import Session

from core.audience import Relation
from core.ledger.apply import Change, audit, keep_row
from core.ledger.crew import Crew
from core.ledger.one_meant import one_meant
from core.ledger.question import Question, QuestionCode
from core.ledger.schedule_rows import bring_up, timing
from core.ledger.settings import coached_teams
from core.ledger.spoken import spoken
from core.ledger.which_team import ask_which, chosen_team
from core.ledger.who import Arm, is_named_in
from core.model import (
    DAILY,
    FOR_AN_OUTING,
    AuditAction,
    Line,
    RestDayWord,
    ScheduleKind,
    ScheduleSetting,
    SpinPlan,
    Team,
    key,
)
from core.reading.coach_words import speaks_of_pain
from core.reading.schedule_lines import (
    Order,
    PlanOrder,
    RestDayOrder,
    ScheduleList,
    ScheduleOrder,
    schedule_list,
    schedule_orders,
)

#: What goes to families keeps out of their night.
BY_DAY = frozenset(ScheduleKind) - {ScheduleKind.MONDAY_SUMMARY}


@dataclass(frozen=True, slots=True)
class Set:
    """One order with the pitcher whom it is about, if any."""

    order: Order
    arm: Arm | None = None


@dataclass(frozen=True, slots=True)
class Scheduling:
    """What a line sets for one team, a list that it asks for, or what stands in the way."""

    sets: tuple[Set, ...] = ()
    asks: ScheduleList | None = None
    teams: tuple[Team, ...] = ()
    question: Question | None = None


def scheduling_here(session: Session, line: Line, crew: Crew) -> Scheduling | None:
    """What a line says of schedules, in a direct message or the staff channel; else none."""
    if not crew.takes_orders(line):
        return None
    text = spoken(session, line)
    asks, orders = schedule_list(text), schedule_orders(text)
    if asks is None and not orders:
        return None
    teams = tuple(session.get_one(Team, one) for one in sorted(coached_teams(session, crew)))
    if not teams:
        return Scheduling(question=Question(QuestionCode.ONLY_STAFF))
    if asks is not None:
        return Scheduling(asks=asks, teams=teams)
    which = ask_which(QuestionCode.SCHEDULE_UNCLEAR, teams)
    chosen = chosen_team(line, which)
    meant = _meant(orders, tuple(one for one in teams if chosen in {None, one.id}))
    if len(meant) != 1:
        named = [one.team for one in orders if not isinstance(one, PlanOrder) and one.team]
        no_such = bool(named) and not meant
        return Scheduling(question=_unclear("time", named[0]) if no_such else which)
    return _sets(session, line, crew, orders, meant)


def _meant(orders: tuple[Order, ...], teams: tuple[Team, ...]) -> tuple[Team, ...]:
    """The teams that every order can mean: those whose name holds the one named."""
    named = {one.team.casefold() for one in orders if not isinstance(one, PlanOrder) and one.team}
    return tuple(team for team in teams if all(name in team.name.casefold() for name in named))


def _sets(
    session: Session,
    line: Line,
    crew: Crew,
    orders: tuple[Order, ...],
    teams: tuple[Team, ...],
) -> Scheduling:
    sets: list[Set] = []
    for order in orders:
        arm: Arm | None = None
        if isinstance(order, PlanOrder) and order.who:
            found = one_meant(line, order.who, crew.related(Relation.STAFF))
            if isinstance(found, Question):
                return Scheduling(question=found)
            arm = found
        one = _named_cue(session, order, teams[0])
        problem = _problem(one, teams[0]) or _said_of_an_arm(one, crew)
        if problem is not None:
            return Scheduling(question=problem)
        sets.append(Set(one, arm))
    return Scheduling(tuple(sets), teams=teams)


def _named_cue(session: Session, order: Order, team: Team) -> Order:
    """A cue to drop by its number in the list becomes that cue."""
    if not isinstance(order, ScheduleOrder) or not order.drops_cue or not order.cue.isdecimal():
        return order
    cues = timing(session, key(team), ScheduleKind.SPIN).cues
    place = int(order.cue) - 1
    if not 0 <= place < len(cues):
        return replace(order, unclear=order.cue)
    return replace(order, cue=cues[place])


def _problem(order: Order, team: Team) -> Question | None:
    if isinstance(order, PlanOrder):
        return _unclear("plan", order.unclear) if order.unclear else None
    if isinstance(order, RestDayOrder):
        return _unclear("words", order.activity) if order.unclear else None
    if order == ScheduleOrder(order.kind, team=order.team):
        return _unclear("time", order.kind)
    if order.unclear:
        return _unclear("cue" if order.cue or order.drops_cue else "time", order.unclear)
    if order.at is not None and order.kind in BY_DAY and not is_by_day(order.at, team):
        return _unclear("night", f"{order.at:%H:%M}")
    if order.weekday is not None and order.kind in DAILY | FOR_AN_OUTING:
        return _unclear("daily", order.kind)
    return None


def _said_of_an_arm(order: Order, crew: Crew) -> Question | None:
    """What everybody reads, minors too, speaks of nobody's pain and of no pitcher by name."""
    words = order.words if isinstance(order, RestDayOrder) else ""
    if isinstance(order, ScheduleOrder) and not order.drops_cue:
        words = order.cue
    if speaks_of_pain(words):
        return _unclear("pain")
    named = any(is_named_in(words, arm) for arm in crew.arms)
    return _unclear("named") if words and named else None


def is_by_day(at: time, team: Team) -> bool:
    """Whether a time keeps out of the quiet hours of the team's families."""
    return time(team.quiet_to) <= at < time(team.quiet_from)


def _unclear(reason: str, about: str = "") -> Question:
    return Question(QuestionCode.SCHEDULE_UNCLEAR, about=about, reason=reason)


def set_schedules(change: Change, said: Scheduling, by_person: int) -> None:
    """Put what a line sets on file, and bring the schedules up to it."""
    if said.question is not None or not said.sets:
        return
    team = said.teams[0]
    for one in said.sets:
        if isinstance(one.order, PlanOrder):
            _set_plan(change, one.order, one.arm, team, by_person)
        elif isinstance(one.order, RestDayOrder):
            _set_words(change, one.order, team, by_person)
        else:
            _set_schedule(change, one.order, team, by_person)


def _set_schedule(change: Change, order: ScheduleOrder, team: Team, by_person: int) -> None:
    row = ScheduleSetting(
        workspace_id=team.workspace_id,
        team_id=key(team),
        kind=order.kind,
        weekday=order.weekday,
        at=order.at,
        is_on=order.is_on,
        before_practice=order.before_practice,
        cue=order.cue or None,
        drops_cue=order.drops_cue,
        is_default=order.is_default,
        line_id=key(change.line),
        set_by=by_person,
        set_at=change.at,
    )
    change.session.add(row)
    change.session.flush()
    before = bring_up(change.session, key(team), order.kind, change.at)
    after = timing(change.session, key(team), order.kind)
    was = {"weekday": before.weekday, "at": f"{before.at:%H:%M}", "is_on": before.is_on}
    is_now = {"weekday": after.weekday, "at": f"{after.at:%H:%M}", "is_on": after.is_on}
    was["before_practice"] = before.before_practice or 0
    is_now["before_practice"] = after.before_practice or 0
    audit(change, row, AuditAction.RECORDED, {"kind": order.kind, **was}, is_now)


def _set_plan(
    change: Change, order: PlanOrder, arm: Arm | None, team: Team, by_person: int
) -> None:
    row = SpinPlan(
        workspace_id=team.workspace_id,
        team_id=key(team),
        pitcher_id=arm.pitcher_id if arm is not None else None,
        sessions=order.sessions,
        reps=order.reps,
        is_default=order.sessions is None,
        line_id=key(change.line),
        set_by=by_person,
        set_at=change.at,
    )
    told = {"sessions": row.sessions, "reps": row.reps, "is_default": row.is_default}
    keep_row(change, row, told)


def _set_words(change: Change, order: RestDayOrder, team: Team, by_person: int) -> None:
    row = RestDayWord(
        workspace_id=team.workspace_id,
        team_id=key(team),
        activity=order.activity,
        words=order.words or None,
        line_id=key(change.line),
        set_by=by_person,
        set_at=change.at,
    )
    keep_row(change, row, {"activity": order.activity, "words": row.words})
