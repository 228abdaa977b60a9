"""Typed lines: commit first, then the acknowledgement; messages go out by the outbox."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime
from typing import Any

from slack_bolt import App, BoltContext
from sqlalchemy.exc import IntegrityError
from sqlmodel import Session

from bot.listeners.desk import Desk
from bot.listeners.events import Heard, understand
from bot.outbox import owe
from bot.outbox.homes import refresh_homes
from bot.roster_file import begin, is_roster
from core.ledger import Deleted, Edited, Notice, Said, correct, record, withdraw
from core.ledger.by_hand import Hand
from core.ledger.claim import claim, find_place
from core.model import Workspace
from core.roster.people import coached_teams
from core.store.held import hold


def register(app: App, desk: Desk) -> None:
    """Listen to every message event; whatever is no typed line is acknowledged and left alone."""

    @app.event("message")
    def heard(event: dict[str, Any], context: BoltContext) -> None:
        said = understand(event, str(context.team_id))
        if said is not None:
            keep(desk, said, roster_in(event))

    @app.event("app_mention")
    def mentioned() -> None:
        """The same message comes as a `message` event too; that one is read."""


def roster_in(event: Mapping[str, Any]) -> dict[str, Any] | None:
    """The file of a message to the bot that may be a roster: its name and address."""
    if event.get("channel_type") != "im" or event.get("subtype") != "file_share":
        return None
    found = [file for file in event.get("files") or () if is_roster(file)]
    url = found[0].get("url_private_download") or found[0].get("url_private") if found else None
    return {"name": str(found[0].get("name") or ""), "url": str(url)} if url else None


def keep(desk: Desk, heard: Heard, roster: dict[str, Any] | None = None) -> None:
    """Store what was heard and what must be told in one transaction.

    Raises the database's error when it cannot commit: then Slack gets no acknowledgement
    and sends the event again.
    """
    try:
        _write(desk, heard, roster)
    except IntegrityError:
        with desk.store.reading() as session:
            if session.get(Workspace, _workspace_of(heard)) is not None:
                raise
        # The app was taken away and the data is deleted: nothing is kept any more.
        return
    desk.committed()


def _write(desk: Desk, heard: Heard, roster: dict[str, Any] | None) -> None:
    now = desk.clock.now()
    with desk.store.writing() as session:
        hold(session)
        match heard:
            case Edited(said):
                notices = correct(session, heard, now)
            case Deleted(said):
                notices = withdraw(session, heard, now)
            case Said() as said:
                sent = _roster(session, said, roster, now) if roster is not None else None
                notices = record(session, said, now) if sent is None else sent
        owe(session, said.workspace_id, notices)
        refresh_homes(session, said.workspace_id, notices, now)


def _roster(
    session: Session, said: Said, roster: dict[str, Any], now: datetime
) -> list[Notice] | None:
    """Take a roster that somebody of the staff sent, once; none where it is no roster of his."""
    place = find_place(session, said)
    if place is None or place.person is None or not coached_teams(session, place.person):
        return None
    if claim(session, replace(said, text=""), place, now) is None:
        return []  # the same event again
    return begin(Hand(session, place.person, now), roster)


def _workspace_of(heard: Heard) -> str:
    return heard.workspace_id if isinstance(heard, Said) else heard.said.workspace_id
