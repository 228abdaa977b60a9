"""Typed lines: commit first, then the acknowledgement; messages go out by the outbox."""

from typing import Any

from slack_bolt import App, BoltContext
from sqlalchemy.exc import IntegrityError

from bot.listeners.desk import Desk
from bot.listeners.events import Heard, understand
from bot.outbox import owe
from core.ledger import Deleted, Edited, Said, correct, record, withdraw
from core.model import Workspace


def register(app: App, desk: Desk) -> None:
    """Listen to every message event; whatever is no typed line is acknowledged and left alone."""

    @app.event("message")
    def heard(event: dict[str, Any], context: BoltContext) -> None:
        said = understand(event, str(context.team_id))
        if said is not None:
            keep(desk, said)

    @app.event("app_mention")
    def mentioned() -> None:
        """The same message comes as a `message` event too; that one is read."""


def keep(desk: Desk, heard: Heard) -> None:
    """Store what was heard and what must be told in one transaction.

    Raises the database's error when it cannot commit: then Slack gets no acknowledgement
    and sends the event again.
    """
    try:
        _write(desk, heard)
    except IntegrityError:
        with desk.store.reading() as session:
            if session.get(Workspace, _workspace_of(heard)) is not None:
                raise
        # The app was taken away and the data is deleted: nothing is kept any more.
        return
    desk.committed()


def _write(desk: Desk, heard: Heard) -> None:
    now = desk.clock.now()
    with desk.store.writing() as session:
        match heard:
            case Edited(said):
                notices = correct(session, heard, now)
            case Deleted(said):
                notices = withdraw(session, heard, now)
            case Said() as said:
                notices = record(session, said, now)
        owe(session, said.workspace_id, notices)


def _workspace_of(heard: Heard) -> str:
    return heard.workspace_id if isinstance(heard, Said) else heard.said.workspace_id
