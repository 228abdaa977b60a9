"""The Home tab: published by the outbox when it is opened, and when a page is turned."""

from collections.abc import Callable
from datetime import datetime
from typing import Any

from slack_bolt import Ack, App, BoltContext
from sqlmodel import Session, col, select

from bot.blocks.home import PAGE
from bot.listeners.actions import carried_by
from bot.listeners.desk import Desk, presser
from bot.outbox import owe
from bot.outbox.homes import slot_of
from core.ledger import Notice, NoticeKind
from core.model import HomeTab, OutboxMessage, Workspace
from core.roster.first_steps import opened_home
from core.store.once import insert_once

FirstSteps = Callable[[Session, str, str, datetime], list[Notice]]


def register(app: App, desk: Desk) -> None:
    """Listen to openings of the Home tab, and to its pages."""

    @app.event("app_home_opened")
    def opened(event: dict[str, Any], context: BoltContext) -> None:
        if event.get("tab") == "home":
            stands = bool(event.get("view"))
            _owe(desk, str(context.team_id), str(event["user"]), stands=stands, first=opened_home)

    @app.action(f"{PAGE}.0")
    @app.action(f"{PAGE}.1")
    def turned(ack: Ack, body: dict[str, Any], context: BoltContext) -> None:
        page = int(carried_by(body)["page"])
        _owe(desk, str(context.team_id), presser(body), page=page)
        ack()


def _owe(
    desk: Desk,
    workspace_id: str,
    slack_id: str,
    *,
    page: int | None = None,
    stands: bool = True,
    first: FirstSteps | None = None,
) -> None:
    """Owe somebody's Home tab; where none stands in Slack, it is put there even unchanged.

    `first` gives what else follows when Home is opened: the welcome, the first steps.
    """
    now = desk.clock.now()
    slot = str(slot_of(slack_id))
    with desk.store.writing() as session:
        if session.get(Workspace, workspace_id) is None:
            return  # the app was taken away and the data is deleted
        tab = {"workspace_id": workspace_id, "slack_id": slack_id, "page": 1, "opened_at": now}
        insert_once(session, HomeTab, tab)
        known = session.get_one(HomeTab, (workspace_id, slack_id))
        known.page, known.opened_at = page if page is not None else known.page, now
        if not stands:
            _forget(session, workspace_id, slot)
        more = first(session, workspace_id, slack_id, now) if first is not None else []
        owe(session, workspace_id, [Notice(slot, NoticeKind.HOME, slack_id, now), *more])
    desk.committed()


def _forget(session: Session, workspace_id: str, slot: str) -> None:
    """What was shown is shown no more: after a new installation nothing stands there."""
    row = session.exec(
        select(OutboxMessage).where(
            OutboxMessage.workspace_id == workspace_id, col(OutboxMessage.slot) == slot
        )
    ).first()
    if row is not None:
        row.shown = None
        session.add(row)
