"""The app is installed: one workspace to a database, the newest token, and states used once."""

from datetime import datetime, timedelta
from hashlib import sha256
from secrets import token_urlsafe
from typing import Any, Final, cast

from sqlalchemy import CursorResult, delete
from sqlmodel import Session, col, func, select

from core.leaving import open_workspace
from core.model import BotToken, InstallState, Workspace

#: How long somebody may take at Slack's page between the two of ours.
STATE_HOLDS: Final = timedelta(minutes=10)
#: Any fixed number will do: it keeps two workspaces from being the first one at once.
_LOCK: Final = 7_142_015


class OtherWorkspaceError(Exception):
    """The database belongs to another workspace already."""


def begin(session: Session, now: datetime) -> str:
    """A new state for one install, which holds for `STATE_HOLDS` from `now` (UTC)."""
    session.execute(delete(InstallState).where(col(InstallState.expires_at) <= now))
    state = token_urlsafe(32)
    session.add(InstallState(digest=_digest(state), expires_at=now + STATE_HOLDS))
    return state


def begun(session: Session, now: datetime) -> int:
    """How many installs are under way at `now` (UTC)."""
    holding = select(func.count()).select_from(InstallState)
    return session.exec(holding.where(col(InstallState.expires_at) > now)).one()


def holds(session: Session, state: str, now: datetime) -> bool:
    """Whether this state could be used up at `now` (UTC)."""
    kept = session.get(InstallState, _digest(state))
    return kept is not None and kept.expires_at > now


def use_up(session: Session, state: str, now: datetime) -> bool:
    """Whether this state holds at `now` (UTC); whoever asks first has it, once."""
    used = session.execute(
        delete(InstallState).where(
            col(InstallState.digest) == _digest(state), col(InstallState.expires_at) > now
        )
    )
    return cast(CursorResult[Any], used).rowcount == 1


def install(session: Session, workspace: Workspace, token: BotToken, now: datetime) -> None:
    """Keep the token of a workspace, in the place of an older one, and serve it from `now` (UTC).

    What is stored of the workspace stays, and a day of deletion is lifted. Raises
    `OtherWorkspaceError` where the database belongs to another one; then nothing is changed.
    """
    if session.get_bind().dialect.name == "postgresql":
        session.execute(select(func.pg_advisory_xact_lock(_LOCK)))
    others = select(Workspace.id).where(col(Workspace.id) != workspace.id)
    if session.exec(others).first() is not None:
        raise OtherWorkspaceError
    open_workspace(session, workspace, now)
    session.flush()
    session.merge(token)


def workspace_here(session: Session) -> str | None:
    """The workspace that the database belongs to, also while the app is taken away from it."""
    return session.exec(select(Workspace.id).order_by(Workspace.id)).first()


def _digest(state: str) -> str:
    return sha256(state.encode()).hexdigest()
