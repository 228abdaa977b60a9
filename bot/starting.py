"""Which workspace a start serves: the one of the installed token, else of the environment's."""

import logging
from datetime import datetime

from sqlmodel import Session, col, delete, select

from bot.access import (
    Installation,
    SlackAccessError,
    TokenRefusedError,
    find_installation,
    make_client,
)
from bot.manifest import INSTALL_PATH
from bot.settings import Settings
from core.leaving import open_workspace, stop
from core.model import BotToken, Workspace
from core.rulebooks import own_ids
from core.store import Store

log = logging.getLogger(__name__)


def remember_workspace(
    store: Store, installation: Installation, settings: Settings, now: datetime
) -> None:
    """Keep the workspace's own row up to date; its token works, so it is served from now on."""
    workspace = Workspace(
        id=installation.workspace_id,
        name=installation.workspace_name,
        bot_user_id=installation.bot_user_id,
        own_books=list(own_ids(settings.rulebooks)),
    )
    with store.writing() as session:
        open_workspace(session, workspace, now)


def find_access(settings: Settings, store: Store, now: datetime) -> Installation | None:
    """What to work with at the start (UTC): the installed token before the environment's.

    Whichever works, its workspace is served from now on. Gives what the environment's token
    opens where that one is used; none where an installed one is, or where somebody must install
    the app first. Raises `SlackAccessError` where only a start with another environment helps.
    """
    with store.reading() as session:
        installed = session.exec(select(BotToken)).all()
    if any(_is_used(kept, settings, store, now) for kept in installed):
        return None
    own = _of_environment(settings)
    if own is None:
        log.warning("the app is not installed: open %s at the bot's address", INSTALL_PATH)
        return None
    with store.writing() as session:
        _forget(session, own.workspace_id)  # Slack did not accept it, and accepts this one
    remember_workspace(store, own, settings, now)
    return own


def _is_used(kept: BotToken, settings: Settings, store: Store, now: datetime) -> bool:
    """Whether an installed token is worked with; so is one of which Slack cannot be asked."""
    client = make_client(kept.token, settings.api_url)
    try:
        remember_workspace(store, find_installation(client, "the installed token"), settings, now)
    except TokenRefusedError:
        log.error(
            "workspace %s: Slack no longer accepts the installed token; install the app again",
            kept.workspace_id,
        )
        with store.writing() as session:
            if session.get_one(BotToken, kept.workspace_id).token == kept.token:
                stop(session, kept.workspace_id, now, now)
        return False
    except SlackAccessError:
        log.warning(
            "workspace %s: Slack cannot be asked now whether the installed token works; lines are "
            "kept, and messages go out as soon as it answers",
            kept.workspace_id,
        )
    return True


def _of_environment(settings: Settings) -> Installation | None:
    if settings.bot_token is None:
        return None
    client = make_client(settings.bot_token.get_secret_value(), settings.api_url)
    try:
        return find_installation(client)
    except TokenRefusedError as problem:
        if settings.client_id is None:
            raise
        log.error("%s", problem)  # the pages of installing are there to give a better one
        return None


def _forget(session: Session, workspace_id: str) -> None:
    session.execute(delete(BotToken).where(col(BotToken.workspace_id) == workspace_id))
