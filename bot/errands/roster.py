"""A roster that was sent: fetched and looked at, applied at a word, and forgotten after a day."""

import urllib.error
import urllib.request
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from slack_sdk import WebClient
from sqlmodel import Session

from bot.errands.errand import ErrandError, Finish, Tools
from bot.team_file import Directory, LoadReport, TeamFileError, read_directory
from bot.team_file.export import export
from bot.team_file.load import load_parsed
from bot.team_file.parse import parse_texts
from core.ledger import Notice
from core.matters import matter_notices
from core.model import Errand, Matter, MatterState, Person
from core.roster.people import coached_teams

#: A roster is a few kilobytes (bytes).
LARGEST = 200_000
#: Seconds to wait for a file.
PATIENCE = 10


def look(tools: Tools, errand: Errand, now: datetime) -> Finish:
    """Fetch the file, and show what loading it would change or what is wrong in it."""
    matter_id = int(errand.data["matter"])
    with tools.store.reading() as session:
        data = dict(session.get_one(Matter, matter_id).data)
    csv = data["csv"] if "csv" in data else _fetched(tools, matter_id, str(data["url"]), now)
    directory = read_directory(tools.client)
    with tools.store.reading() as session:
        matter = session.get_one(Matter, matter_id)
        found = _load(tools, session, matter, csv, directory, now, dry_run=True)
    return _keeping(matter_id, {**found, "csv": csv}, now)


def apply(tools: Tools, errand: Errand, now: datetime) -> Finish:
    """Load a roster that was looked at; what is wrong with it by now is told."""
    matter_id = int(errand.data["matter"])
    directory = read_directory(tools.client)

    def finish(session: Session) -> list[Notice]:
        matter = session.get_one(Matter, matter_id)
        if "csv" not in matter.data:
            return []
        notices: list[Notice] = []
        csv = str(matter.data["csv"])
        found = _load(tools, session, matter, csv, directory, now, dry_run=False, owed=notices)
        matter.data = {**found, "applied": True}
        session.add(matter)
        return [*notices, *matter_notices(session, matter, now)]

    return finish


def forget(_tools: Tools, errand: Errand, now: datetime) -> Finish:
    """Forget a roster that nobody applied: it holds dates of birth."""

    def finish(session: Session) -> list[Notice]:
        matter = session.get_one(Matter, errand.data["matter"])
        if matter.state != MatterState.OPEN:
            return []
        matter.state, matter.data, matter.settled_at = MatterState.CANCELLED, {"old": True}, now
        session.add(matter)
        return matter_notices(session, matter, now)

    return finish


def _keeping(matter_id: int, data: dict[str, Any], now: datetime) -> Finish:
    def finish(session: Session) -> list[Notice]:
        matter = session.get_one(Matter, matter_id)
        if matter.state == MatterState.OPEN:
            matter.data = data
            session.add(matter)
        return matter_notices(session, matter, now)

    return finish


def _load(
    tools: Tools,
    session: Session,
    matter: Matter,
    csv: str,
    directory: Directory,
    now: datetime,
    *,
    dry_run: bool,
    owed: list[Notice] | None = None,
) -> dict[str, Any]:
    """Load a roster for the teams that its sender coaches; gives what it says, or its faults."""
    sender = session.get_one(Person, matter.person_id)
    teams = coached_teams(session, sender)
    if not teams:
        return {"unreadable": "no team"}
    toml = export(session, matter.workspace_id, teams).toml
    try:
        parsed = parse_texts(toml, csv, Path(), "the team", "roster")
        report = load_parsed(
            parsed,
            directory,
            session,
            matter.workspace_id,
            known_books=tools.known_books,
            now=now,
            dry_run=dry_run,
        )
    except TeamFileError as wrong:
        return {"problems": [str(problem) for problem in wrong.problems]}
    if owed is not None:
        owed += report.notices
    return {"says": [] if report.changes_nothing else _without_dates(report)}


def _without_dates(report: LoadReport) -> Sequence[str]:
    """The report's lines without dates of birth, the first line of a dry run left out."""
    lines = [line for line in report.lines() if not line.startswith("Dry run")]
    return [
        "  birth date: corrected" if line.strip().startswith("birth date:") else line
        for line in lines
    ]


def _fetched(tools: Tools, matter_id: int, url: str, now: datetime) -> str:
    try:
        content = fetch(tools.client, url)
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        reason = "not text"
    except FileRefused as refused:
        reason = refused.reason
    raise ErrandError(f"roster file: {reason}", _keeping(matter_id, {"unreadable": reason}, now))


class FileRefused(Exception):  # noqa: N818 - what Slack did
    """A file that cannot be had; `reason` is "too large" or "not given"."""

    def __init__(self, reason: str) -> None:
        """Name the reason."""
        super().__init__(reason)
        self.reason = reason


def fetch(client: WebClient, url: str) -> bytes:
    """A file from Slack, with the bot's token, which goes to Slack alone.

    Raises `FileRefused`, and OSError when Slack is away.
    """
    if not _is_slack(client, url):
        raise FileRefused("not given")
    request = urllib.request.Request(url, headers={"Authorization": f"Bearer {client.token}"})
    try:
        with _OPENER.open(request, timeout=PATIENCE) as answer:
            content: bytes = answer.read(LARGEST + 1)
            kind = str(answer.headers.get("Content-Type", ""))
    except urllib.error.HTTPError as refused:
        if refused.code >= 500:
            raise
        raise FileRefused("not given") from refused
    if len(content) > LARGEST:
        raise FileRefused("too large")
    if "html" in kind:  # Slack's page to sign in: the token may not read files
        raise FileRefused("not given")
    return content


class _NoRedirect(urllib.request.HTTPRedirectHandler):
    """Follows nothing: the token must not go anywhere else."""

    def redirect_request(self, *_args: Any, **_more: Any) -> None:
        return None


_OPENER = urllib.request.build_opener(_NoRedirect)


def _is_slack(client: WebClient, url: str) -> bool:
    asked, known = urlsplit(url), urlsplit(client.base_url)
    if asked.netloc == known.netloc and asked.scheme == known.scheme:
        return True
    return asked.scheme == "https" and (asked.hostname or "").endswith(".slack.com")
