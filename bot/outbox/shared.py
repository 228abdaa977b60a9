"""What all processes posted together: the rows in the database carry Slack's timestamps.

Each process keeps to the pace by itself; this keeps any number of them within one minute's
posts of a workspace.
"""

from datetime import UTC, datetime, timedelta

from sqlmodel import Session, col, select

from core.model import OutboxMessage, Workspace

MINUTE = timedelta(minutes=1)
#: Posts of one workspace in any minute; a few under the limit, for those being sent just now.
MOST = 290


def full_until(session: Session) -> dict[str, datetime]:
    """For each workspace when a minute holds fewer posts than the most; it may be long past."""
    found: dict[str, datetime] = {}
    for workspace_id in session.exec(select(Workspace.id)):
        oldest = session.exec(
            select(OutboxMessage.ts)
            .where(OutboxMessage.workspace_id == workspace_id, col(OutboxMessage.ts).is_not(None))
            .order_by(col(OutboxMessage.ts).desc())
            .offset(MOST - 1)
            .limit(1)
        ).first()
        if oldest is not None:
            found[workspace_id] = datetime.fromtimestamp(float(oldest), UTC) + MINUTE
    return found
