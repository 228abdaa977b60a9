"""The team's calendar as the staff keep it by lines; a line's deletion takes its part back."""

from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta

from sqlmodel import Session, col, select

from core.calendar.days import entries
from core.ledger.answers import Answer, Answers
from core.ledger.apply import Change, audit, keep_row, touch, withdraw_row
from core.ledger.crew import Crew
from core.ledger.question import Question, QuestionCode
from core.ledger.settings import coached_teams
from core.ledger.spoken import spoken
from core.ledger.which_team import ask_which, chosen_team
from core.ledger.who import is_named_in
from core.model import (
    AuditAction,
    CalendarEntry,
    CalendarSource,
    CalledOff,
    EntryKind,
    Line,
    Season,
    Team,
    key,
)
from core.reading import read
from core.reading.calendar_free import free_calendar_line
from core.reading.calendar_lines import (
    CalendarLine,
    CalendarList,
    Planned,
    SourceLine,
    at_hour,
    calendar_line,
    calendar_list,
    next_week,
    source_line,
    weeks_of,
)

#: "Every tuesday" fills the calendar to the end of the season, or for so long where none is known.
WEEKLY = timedelta(weeks=12)
LONGEST = timedelta(weeks=40)


@dataclass(frozen=True, slots=True)
class Calendaring:
    """What a line says of one team's calendar, or the question that stands in its way."""

    order: CalendarLine | SourceLine | CalendarList
    team: Team | None = None
    question: Question | None = None
    #: For a list: the teams whose calendars the author may read.
    teams: tuple[Team, ...] = ()


def calendar_here(session: Session, line: Line, crew: Crew) -> Calendaring | None:
    """What a line says of the calendar, in a direct message or the staff channel; else none.

    A line that holds anything of the log is none, whatever else it says.
    """
    if not crew.takes_orders(line):
        return None
    text, posted = spoken(session, line), crew.local(line.posted_at)
    asked = calendar_list(text)
    if asked is not None:
        return Calendaring(asked, teams=(crew.here,) if crew.here is not None else crew.teams)
    return _order_here(session, line, crew, source_line(text) or calendar_line(text, posted))


def free_calendar_here(session: Session, line: Line, crew: Crew) -> Calendaring | None:
    """The same of words in any order; every other order of the staff's goes before it."""
    if not crew.takes_orders(line) or not crew.coaches:
        return None
    order = free_calendar_line(spoken(session, line), crew.local(line.posted_at))
    return _order_here(session, line, crew, order)


def _order_here(
    session: Session, line: Line, crew: Crew, order: CalendarLine | SourceLine | None
) -> Calendaring | None:
    if order is None:
        return None
    text, posted = spoken(session, line), crew.local(line.posted_at)
    if isinstance(order, CalendarLine) and _logs(order, text, posted, crew):
        return None
    teams = [session.get_one(Team, one) for one in sorted(coached_teams(session, crew))]
    if not teams:
        return Calendaring(order, question=_only_staff()) if _is_sure(order) else None
    which = ask_which(QuestionCode.CALENDAR_UNCLEAR, teams)
    chosen = chosen_team(line, which)
    team = _team(order, [one for one in teams if chosen in {None, one.id}])
    if team is None:
        return Calendaring(order, question=which)
    if isinstance(order, CalendarLine):
        order = _of_next_week(session, _with_hour(line, order, posted), team)
    return Calendaring(order, team, _problem(session, order, team))


def _logs(order: CalendarLine, text: str, posted: datetime, crew: Crew) -> bool:
    """Whether a line holds anything of the log, which goes before the calendar.

    The staff's line that names no pitcher logs nothing: its bare number is the hour asked about.
    """
    if order.in_free_words and any(is_named_in(text, arm) for arm in crew.arms):
        return True
    logged = read(text, posted, "coach", roster=crew.roster())
    if order.hour is None or not crew.coaches:
        return bool(logged.entries or logged.unread)
    return any(entry.who is not None or entry.pain for entry in logged.entries)


def _hours(hour: int) -> tuple[tuple[str, str], ...]:
    """The times that a bare hour may mean, the likelier first: value and label."""
    am, pm = (f"{hour % 12:02}:00", f"{hour} am"), (f"{hour % 12 + 12:02}:00", f"{hour} pm")
    # Youth games begin between 8 in the morning and 7 in the evening (common practice, no source).
    return (am, pm) if 8 <= hour <= 11 else (pm, am)


def _ask_hour(hour: int) -> Question:
    values, labels = zip(*_hours(hour), strict=True)
    question = _unclear("hour", str(hour), labels)
    return replace(question, values=values)


def _with_hour(line: Line, order: CalendarLine, posted: datetime) -> CalendarLine:
    """The order with the hour that was chosen for its bare number, where one was."""
    if order.hour is None:
        return order
    given = Answers(tuple(Answer.from_json(one) for one in line.answers or ()))
    chosen = given.value(_ask_hour(order.hour))
    if chosen is None or ":" not in chosen:
        return order
    return at_hour(order, time.fromisoformat(chosen), posted)


def _of_next_week(session: Session, order: CalendarLine, team: Team) -> CalendarLine:
    """On a Saturday without a game, "no game sat" means the next one."""
    if not order.may_be_next or any(_meant(session, order, one, team) for one in order.planned):
        return order
    return replace(order, planned=tuple(next_week(one) for one in order.planned))


def keep_calendar(change: Change, said: Calendaring) -> None:
    """Bring the calendar to what a line says now."""
    if said.team is None or said.question is not None or isinstance(said.order, CalendarList):
        return
    if isinstance(said.order, SourceLine):
        _keep_source(change, said.order, said.team)
    elif said.order.off:
        _call_off(change, said.order, said.team)
    else:
        _add(change, said.order, said.team)


def _is_sure(order: CalendarLine | SourceLine) -> bool:
    """Whether the words can hardly mean anything else: a time or an opponent is named."""
    if isinstance(order, SourceLine):
        return bool(order.address)
    if order.in_free_words or order.hour is not None:
        return False
    return not order.off and any(one.at or one.title for one in order.planned)


def _team(order: CalendarLine | SourceLine, teams: list[Team]) -> Team | None:
    named = order.team if isinstance(order, CalendarLine) else ""
    if named:
        teams = [team for team in teams if named.casefold() in team.name.casefold()]
    return teams[0] if len(teams) == 1 else None


def _problem(session: Session, order: CalendarLine | SourceLine, team: Team) -> Question | None:
    if isinstance(order, SourceLine):
        if order.address and not order.address.lower().startswith("https://"):
            return _unclear("https")
        return None
    if order.moved:
        return _unclear("moved", order.kind)
    if order.hour is not None:
        return _ask_hour(order.hour)
    if order.unclear:
        return _unclear("day", order.unclear)
    if order.off and not any(_meant(session, order, one, team) for one in order.planned):
        return _unclear("nothing", order.kind, tuple(one.on.isoformat() for one in order.planned))
    return None


def _unclear(reason: str, about: str = "", values: tuple[str, ...] = ()) -> Question:
    return Question(QuestionCode.CALENDAR_UNCLEAR, about=about, reason=reason, choices=values)


def _only_staff() -> Question:
    return Question(QuestionCode.ONLY_STAFF)


def _add(change: Change, order: CalendarLine, team: Team) -> None:
    planned = list(order.planned)
    if order.weekly:
        last = _season_end(change.session, team, planned[0].on)
        planned = sorted(
            (week for one in planned for week in weeks_of(one, last)), key=lambda one: one.on
        )
    for number, one in enumerate(_new(change, order, planned, team)):
        _put(change, order, one, team, number)


def _new(change: Change, order: CalendarLine, planned: list[Planned], team: Team) -> list[Planned]:
    """What is not on the calendar already; each that stands there accounts for one typed."""
    if not planned:
        return []
    kind = EntryKind(order.kind)
    days = [one.on for one in planned]
    known = entries(change.session, [key(team)], min(days), max(days), kind)
    standing = [one for one in known if one.line_id != key(change.line)]
    new = []
    for one in planned:
        there = next((e for e in standing if e.on == one.on and one.at in {None, e.at}), None)
        if there is None:
            new.append(one)
        else:
            standing.remove(there)
    return new


def _put(change: Change, order: CalendarLine, one: Planned, team: Team, number: int) -> None:
    """One entry of the line; what stood in its place before keeps its UID and is changed."""
    uid = f"line-{key(change.line)}-{number}@spinkeeper"
    stored = select(CalendarEntry).where(
        CalendarEntry.team_id == key(team), CalendarEntry.uid == uid
    )
    row = change.session.exec(stored).first()
    told = {"on": one.on.isoformat(), "kind": order.kind, "title": one.title}
    if row is None:
        row = CalendarEntry(
            workspace_id=change.line.workspace_id,
            team_id=key(team),
            kind=order.kind,
            on=one.on,
            at=one.at,
            until=one.until,
            title=one.title,
            uid=uid,
            line_id=key(change.line),
            changed_at=change.at,
        )
        keep_row(change, row, told)
        return
    before = {"on": row.on.isoformat(), "kind": row.kind, "title": row.title}
    row.kind, row.on, row.at, row.until, row.title = (
        order.kind, one.on, one.at, one.until, one.title,
    )  # fmt: skip
    row.sequence, row.changed_at, row.withdrawn_at = row.sequence + 1, change.at, None
    change.session.add(row)
    audit(change, row, AuditAction.CORRECTED, before, told)


def _call_off(change: Change, order: CalendarLine, team: Team) -> None:
    for one in order.planned:
        for entry in _meant(change.session, order, one, team):
            row = CalledOff(
                workspace_id=change.line.workspace_id,
                entry_id=key(entry),
                on=entry.on,
                line_id=key(change.line),
            )
            keep_row(change, row, {"on": entry.on.isoformat(), "kind": entry.kind})
            touch(change, entry)


def _meant(session: Session, order: CalendarLine, one: Planned, team: Team) -> list[CalendarEntry]:
    """The entries that "no game sat" means: all of that day, or the one of the time named."""
    known = entries(session, [key(team)], one.on, one.on, EntryKind(order.kind))
    title = one.title.casefold()
    return [e for e in known if one.at in {None, e.at} and title in e.title.casefold()]


def _season_end(session: Session, team: Team, first: date) -> date:
    ends = select(col(Season.ends_on)).where(
        Season.team_id == key(team), col(Season.starts_on) <= first, col(Season.ends_on) >= first
    )
    last = max(session.scalars(ends), default=first + WEEKLY)
    return min(last, first + LONGEST)


def _keep_source(change: Change, order: SourceLine, team: Team) -> None:
    """Read this address from now on, and no other; an empty one: none."""
    standing = select(CalendarSource).where(
        CalendarSource.team_id == key(team), col(CalendarSource.withdrawn_at).is_(None)
    )
    for row in change.session.scalars(standing).all():
        if not row.address.startswith("file:"):
            withdraw_row(change, row)
    if not order.address:
        return
    row = CalendarSource(
        workspace_id=change.line.workspace_id,
        team_id=key(team),
        address=order.address,
        line_id=key(change.line),
        next_at=change.at,
    )
    # The address may be a secret: the audit says that one was set, not which.
    keep_row(change, row, {"calendar": "an address"})
