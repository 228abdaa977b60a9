"""Taking the app away: sends stop at once, and what is stored is deleted after 14 days.

Also somebody whose account is closed: like a guardian without an account from then on, and
nothing of the record changes.
"""

from datetime import date, datetime, timedelta

from sqlalchemy import ColumnElement, Table, delete, update
from sqlalchemy.orm import Mapped
from sqlmodel import Session, col, select

from core.model import BotToken, InstallState, Person, Stored, Workspace

#: From the day on which the app was taken away to the deletion of its data, calendar days.
#: Slack's Marketplace guidelines allow 14 business days (docs.slack.dev), which is longer.
KEPT_FOR = timedelta(days=14)


def open_workspace(session: Session, workspace: Workspace, now: datetime) -> None:
    """Keep the row of a workspace whose token works (UTC): whatever was to end it is lifted."""
    workspace.opened_at, workspace.stopped_at, workspace.delete_on = now, None, None
    session.merge(workspace)


def take_away(session: Session, workspace_id: str, said_at: datetime, now: datetime) -> None:
    """Stop, forget the token, put down the day of deletion; said twice it changes nothing.

    Slack may tell late and twice: what it says of a time before the app was opened again
    (`said_at`, UTC) is about an earlier installation.
    """
    stop(session, workspace_id, said_at, now)
    session.execute(
        update(Workspace)
        .where(_still(workspace_id, said_at), col(Workspace.delete_on).is_(None))
        .values(delete_on=(now + KEPT_FOR).date())
    )
    of_then = select(Workspace.id).where(_still(workspace_id, said_at))
    session.execute(delete(BotToken).where(col(BotToken.workspace_id).in_(of_then)))


def stop(session: Session, workspace_id: str, known_at: datetime, now: datetime) -> None:
    """Send nothing more and let no schedule fall due, unless opened again after `known_at`."""
    session.execute(
        update(Workspace)
        .where(_still(workspace_id, known_at), col(Workspace.stopped_at).is_(None))
        .values(stopped_at=now)
    )


def is_served(workspace_id: Mapped[str]) -> ColumnElement[bool]:
    """Whether the workspace of a row is sent to."""
    stopped = select(Workspace.id).where(col(Workspace.stopped_at).is_not(None))
    return workspace_id.not_in(stopped)


def to_delete(session: Session, today: date) -> list[str]:
    """The workspaces whose day of deletion has come."""
    return list(session.exec(select(Workspace.id).where(col(Workspace.delete_on) <= today)))


def delete_all(session: Session, workspace_id: str) -> None:
    """Delete every row of a workspace, its own too."""
    for table in reversed(Stored.metadata.sorted_tables):  # what points to a row goes first
        if table.name == InstallState.__tablename__:
            continue  # of no workspace yet, and gone in minutes
        session.execute(delete(table).where(_is_of(table, workspace_id)))


def account_closed(session: Session, workspace_id: str, slack_id: str) -> None:
    """Write to that account no more; the person and the record stay."""
    session.execute(
        update(Person)
        .where(col(Person.workspace_id) == workspace_id, col(Person.slack_id) == slack_id)
        .values(slack_id=None, former_slack_id=slack_id)
    )


def account_open(session: Session, workspace_id: str, slack_ids: list[str]) -> None:
    """Write to these accounts again, if one of them was closed."""
    session.execute(
        update(Person)
        .where(
            col(Person.workspace_id) == workspace_id,
            col(Person.slack_id).is_(None),
            col(Person.former_slack_id).in_(slack_ids),
        )
        .values(slack_id=col(Person.former_slack_id), former_slack_id=None)
    )


def _is_of(table: Table, workspace_id: str) -> ColumnElement[bool]:
    """The rows of a workspace: by their own column, else by a row that they point to."""
    if table.name == Workspace.__tablename__:
        return table.c.id == workspace_id
    if "workspace_id" in table.c:
        return table.c.workspace_id == workspace_id
    points_to = min(table.foreign_keys, key=lambda one: one.parent.name)
    owner = points_to.column.table
    return points_to.parent.in_(select(points_to.column).where(_is_of(owner, workspace_id)))


def _still(workspace_id: str, since: datetime) -> ColumnElement[bool]:
    opened = col(Workspace.opened_at)
    return (col(Workspace.id) == workspace_id) & (opened.is_(None) | (opened <= since))
