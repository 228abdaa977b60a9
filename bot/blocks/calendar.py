"""The answer to a line about the team's calendar, and the calendar itself."""

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from sqlmodel import Session

from bot.wording import calendar as say
from core.calendar.days import entries, in_order
from core.ledger.calendar_lines import Calendaring, calendar_here
from core.ledger.crew import crew_of, load_crew
from core.ledger.of_line import standing_of_line
from core.ledger.settings import coached_teams
from core.model import (
    CalendarEntry,
    CalendarSource,
    CalledOff,
    Line,
    OutboxMessage,
    Person,
    Team,
    key,
)
from core.reading.calendar_lines import CalendarLine, CalendarList

LONG_AHEAD = timedelta(days=400)
#: A list of the calendar looks ahead so far.
AHEAD = timedelta(days=21)


def calendar_list(session: Session, line: Line) -> str:
    """The calendar that a line asks for; empty where it asks for none."""
    said = _said(session, line)
    if said is None or not isinstance(said.order, CalendarList):
        return ""
    author = session.get_one(Person, line.author_id)
    coached = coached_teams(session, load_crew(session, author, None))
    return "\n\n".join(
        _list(session, line, team, for_staff=key(team) in coached) for team in said.teams
    )


def calendar_said(session: Session, line: Line) -> list[str]:
    """What a line changed on the calendar; nothing for a line about something else."""
    sources = standing_of_line(session, line, CalendarSource)
    added = sorted(standing_of_line(session, line, CalendarEntry), key=in_order)
    off = [
        session.get_one(CalendarEntry, one.entry_id)
        for one in standing_of_line(session, line, CalledOff)
    ]
    texts = [say.will_read(_team(session, one.team_id)) for one in sources]
    if added:
        texts.append(say.added(_team(session, added[0].team_id), added))
    if off:
        texts.append(say.called_off(_team(session, off[0].team_id), off))
    return texts


def unchanged(session: Session, line: Line) -> str:
    """What is said where a line put nothing new on the calendar; empty for another line."""
    said = _said(session, line)
    if said is None:
        return ""
    return say.ALREADY if isinstance(said.order, CalendarLine) else say.NO_MORE


def source_text(session: Session, row: OutboxMessage, now: datetime) -> str:
    """What became of reading a calendar address; empty where it is read no more."""
    _kind, source_id, what, _at = row.slot.split("/", 3)
    source = session.get_one(CalendarSource, int(source_id))
    if source.withdrawn_at is not None:
        return ""
    team = session.get_one(Team, source.team_id)
    if what == "failed":
        return say.not_read(team.name, source.problem or "no answer", source.read_at is not None)
    today = now.astimezone(ZoneInfo(team.time_zone)).date()
    coming = entries(session, [key(team)], today, today + LONG_AHEAD)
    return say.was_read(team.name, source, coming[0] if coming else None)


def _said(session: Session, line: Line) -> Calendaring | None:
    crew = crew_of(session, line)
    return calendar_here(session, line, crew) if crew is not None else None


def _team(session: Session, team_id: int) -> str:
    return session.get_one(Team, team_id).name


def _list(session: Session, line: Line, team: Team, *, for_staff: bool) -> str:
    today = line.posted_at.astimezone(ZoneInfo(team.time_zone)).date()
    last = today + AHEAD
    found = entries(session, [key(team)], today, last)
    return say.listing(team.name, found, last, for_staff=for_staff)
