"""`spinkeeper team load`: a team file against the real workspace and its database."""

from pathlib import Path

from slack_sdk import WebClient
from sqlmodel import select

from bot.access import SlackAccessError, find_installation, make_client
from bot.clock import Clock
from bot.outbox import owe
from bot.run import open_store
from bot.settings import Settings, database_url
from bot.starting import remember_workspace
from bot.team_file import load_team_file
from bot.team_file.slack_directory import read_directory
from core.leaving import account_open
from core.model import BotToken
from core.rulebooks import builtin_ids, load_books, own_ids
from core.store import Store


def load_from_slack(settings: Settings, file: Path, clock: Clock, *, dry_run: bool) -> list[str]:
    """Load `file` into the workspace that the token opens; gives the report's lines.

    Raises `SlackAccessError`, `StoreError`, `TeamFileError`, `DirectoryError`, and
    `RuleBookError` for a file in the club's own folder; then nothing was written.
    """
    known = (*builtin_ids(), *own_ids(settings.rulebooks))
    load_books(known, settings.rulebooks)
    store = open_store(database_url(settings))
    try:
        client = _client(settings, store)
        installation = find_installation(client)
        directory = read_directory(client)
        remember_workspace(store, installation, settings, clock.now())
        with store.writing() as session:
            if not dry_run:  # somebody may have come back while nobody listened
                account_open(session, installation.workspace_id, directory.accounts)
            report = load_team_file(
                file,
                directory,
                session,
                installation.workspace_id,
                known_books=known,
                now=clock.now(),
                dry_run=dry_run,
            )
            owe(session, installation.workspace_id, report.notices)
        return report.lines()
    finally:
        store.close()


def _client(settings: Settings, store: Store) -> WebClient:
    """By the installed token, else by the environment's; `SlackAccessError` without either."""
    with store.reading() as session:
        token = session.exec(select(BotToken.token)).first()
    if token is None and settings.bot_token is not None:
        token = settings.bot_token.get_secret_value()
    if token is None:
        raise SlackAccessError(
            "SLACK_BOT_TOKEN is missing, and the app is not installed in this database: the "
            "team's channels and people are looked up in Slack."
        )
    return make_client(token, settings.api_url)
