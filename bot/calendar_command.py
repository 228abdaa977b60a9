"""`spinkeeper calendar …`: a team's calendar in and out of the database, without Slack."""

import time
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from sqlmodel import Session, select

from bot.calendar_fetch import LARGEST, Fetcher
from bot.calendar_file import as_ics
from bot.calendars import EVERY
from bot.run import books_from, open_store
from bot.settings import Settings, database_url
from bot.wording import calendar as say
from bot.wording.feed import written
from core.calendar.bring import bring_up, source_for
from core.calendar.feed import feed_of_person, feed_of_team
from core.calendar.ics import CalendarError, read_ics
from core.model import Person, Team
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


def export_calendar(
    settings: Settings, team_name: str, person_name: str, file: Path, now: datetime
) -> str:
    """Write the calendar of a team's staff, or of one person's family, to a file.

    One of the two names is empty. `now` is UTC. Raises `CommandError`.
    """
    if bool(team_name) == bool(person_name):
        raise CommandError("Say for whom: --team TEAM for the staff, or --for NAME for a family.")
    try:
        store = open_store(database_url(settings))
    except StoreError as wrong:
        raise CommandError(str(wrong)) from wrong
    books = books_from(settings)
    with store.reading() as session:
        if team_name:
            team = team_called(session, team_name)
            whose, items = f"the staff of {team.name}", feed_of_team(session, team, now, books)
            name = team.name
        else:
            person = person_called(session, person_name)
            whose, items = person.name, feed_of_person(session, person, now, books)
            name = ", ".join(sorted({one.whose for one in items if one.is_of_an_arm})) or whose
    store.close()
    try:
        file.touch(mode=0o600)
        file.write_bytes(as_ics(items, name, now))
    except OSError as wrong:
        raise CommandError(f"{file} cannot be written: {wrong.strerror}.") from wrong
    return written(str(file), whose, len(items))


def person_called(session: Session, name: str) -> Person:
    """The one guardian or pitcher of this name. Raises `CommandError`."""
    wanted = name.casefold()
    people = [one for one in session.exec(select(Person)) if one.name.casefold() == wanted]
    if len(people) != 1:
        many = "more than one person is" if people else "nobody is"
        raise CommandError(f"In the roster {many} called “{name}”. Use the whole name.")
    return people[0]


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
