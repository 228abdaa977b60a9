"""What a line says once the bot's own mention is taken out of it."""

from sqlmodel import Session

from core.model import Line, Workspace


def spoken(session: Session, line: Line, text: str | None = None) -> str:
    """The text of a line (or another version of it) without "@Spinkeeper"."""
    said = line.text if text is None else text
    mention = _mention(session, line.workspace_id)
    return said.replace(mention, " ") if mention else said


def _mention(session: Session, workspace_id: str) -> str:
    """How the bot is mentioned; asked once a session, for every kind of order asks for it."""
    known: dict[str, str] = session.info.setdefault("mention of the bot", {})
    if workspace_id not in known:
        workspace = session.get(Workspace, workspace_id)
        named = workspace is not None and workspace.bot_user_id
        known[workspace_id] = f"<@{named}>" if named else ""
    return known[workspace_id]
