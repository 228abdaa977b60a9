"""`spinkeeper calendar …`: a team's calendar in and out of the database, without Slack."""

import time
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from sqlmodel import Session, select

from bot.calendar_fetch import LARGEST, Fetcher
from bot.calendars import EVERY
from bot.run import open_store
from bot.settings import Settings, database_url
from bot.wording import calendar as say
from core.calendar.bring import bring_up, source_for
from core.calendar.ics import CalendarError, read_ics
from core.model import Team
from core.store import StoreError


class CommandError(Exception):
    """What was asked for cannot be done; the message is one sentence for a person."""


def import_calendar(settings: Settings, team_name: str, source: str, now: datetime) -> str:
    """Read a file or an https address into a team's calendar; gives what changed, in words.

    A second time it changes nothing. An address is read again once a day by the bot. `now` is
    UTC. Raises `CommandError`.
    """
    try:
        content, address = _content(source)
        store = open_store(database_url(settings))
        with store.writing() as session:
            team = team_called(session, team_name)
            today = now.astimezone(ZoneInfo(team.time_zone)).date()
            found = read_ics(content, team.time_zone, today)
            row = source_for(session, team, address)
            row.next_at = now + EVERY if address.startswith("https:") else None
            changes = bring_up(session, row, found, today, now)
            name = team.name
        store.close()
    except CalendarError as wrong:
        raise CommandError(f"Nothing was changed: {say.PROBLEMS[wrong.problem]}") from wrong
    except StoreError as wrong:
        raise CommandError(str(wrong)) from wrong
    return say.imported(name, changes)


def team_called(session: Session, name: str) -> Team:
    """The one team whose name is, or else holds, what was typed. Raises `CommandError`."""
    teams = list(session.exec(select(Team).order_by(Team.name)))
    wanted = name.casefold()
    found = [one for one in teams if one.name.casefold() == wanted] or [
        one for one in teams if wanted in one.name.casefold()
    ]
    if len(found) != 1:
        names = ", ".join(one.name for one in found or teams) or "none is loaded"
        raise CommandError(f"Which team is “{name}”? The teams: {names}.")
    return found[0]


def _content(source: str) -> tuple[bytes, str]:
    """The bytes, and under which address they are known."""
    if source.lower().startswith(("http://", "https://", "webcal://")):
        address = source.replace("webcal://", "https://", 1)
        return Fetcher(time.monotonic)(address), address
    path = Path(source)
    try:
        if path.stat().st_size > LARGEST:
            raise CalendarError("too large")
        return path.read_bytes(), f"file:{path.name}"
    except OSError as wrong:
        raise CommandError(f"{source} cannot be read: {wrong.strerror}.") from wrong
