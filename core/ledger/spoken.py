"""What a line says once the bot's own mention is taken out of it."""

from sqlmodel import Session

from core.model import Line, Workspace


def spoken(session: Session, line: Line, text: str | None = None) -> str:
    """The text of a line (or another version of it) without "@Spinkeeper"."""
    said = line.text if text is None else text
    workspace = session.get(Workspace, line.workspace_id)
    if workspace is None or not workspace.bot_user_id:
        return said
    return said.replace(f"<@{workspace.bot_user_id}>", " ")
