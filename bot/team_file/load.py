"""Load a team file: read, check, look up, compare, write."""

from collections.abc import Collection
from datetime import datetime
from pathlib import Path

from sqlmodel import Session

from bot.team_file.apply import apply_plan
from bot.team_file.check import check
from bot.team_file.directory import Directory
from bot.team_file.parse import ParsedFile, parse
from bot.team_file.plan import make_plan
from bot.team_file.problems import Problem, TeamFileError
from bot.team_file.report import LoadReport
from bot.team_file.resolve import resolve
from bot.team_file.stored import read_stored


def load_team_file(
    path: Path,
    directory: Directory,
    session: Session,
    workspace_id: str,
    *,
    known_books: Collection[str],
    now: datetime,
    dry_run: bool = False,
) -> LoadReport:
    """Bring a workspace's teams to what the file at `path` and its roster say.

    Works in the caller's open transaction and does not commit; with `dry_run` it only
    reads. `known_books` are the ids of rule books that need no file beside, `now` is UTC. What
    must be told (requests for consent, …) stands in the report, for the caller to owe.
    Raises `TeamFileError` with every problem found, before anything is written, and
    `DirectoryError` when Slack refuses.
    """
    parsed = parse(path)
    return load_parsed(
        parsed, directory, session, workspace_id, known_books=known_books, now=now, dry_run=dry_run
    )


def load_parsed(
    parsed: ParsedFile,
    directory: Directory,
    session: Session,
    workspace_id: str,
    *,
    known_books: Collection[str],
    now: datetime,
    dry_run: bool = False,
) -> LoadReport:
    """The same for files that were read already. Raises `TeamFileError`."""
    today = now.date()
    resolved = resolve(parsed, directory, today)
    problems = [*parsed.problems, *check(parsed, known_books, today), *resolved.problems]
    if problems:
        raise TeamFileError(problems)
    plan = make_plan(read_stored(session, workspace_id), resolved.wanted)
    if plan.conflicts:
        raise TeamFileError([Problem(parsed.file, None, says) for says in plan.conflicts])
    notices = [] if dry_run else apply_plan(session, workspace_id, plan, now)
    return LoadReport(plan, tuple(resolved.notes), dry_run, tuple(notices))
