"""`spinkeeper team export`: the stored teams as a team file and its roster."""

from pathlib import Path

from sqlmodel import select

from bot.run import open_store
from bot.settings import Settings, database_url
from bot.team_file.export import export
from core.model import Team


class ExportError(Exception):
    """Nothing was written; the message is one sentence for a person."""


def export_files(settings: Settings, file: Path) -> tuple[Path, Path]:
    """Write `file` and the roster beside it. Raises `ExportError`, `StoreError`.

    Both hold dates of birth, so only their owner may read them.
    """
    roster = file.with_suffix(".csv")
    for path in (file, roster):
        if path.exists():
            raise ExportError(f"{path} is there already; move it away or choose another name.")
    store = open_store(database_url(settings))
    try:
        with store.reading() as session:
            workspace_id = session.exec(select(Team.workspace_id).order_by(Team.id)).first()  # type: ignore[arg-type]
            if workspace_id is None:
                raise ExportError("There is no team in the database yet, so nothing was written.")
            found = export(session, workspace_id, roster=roster.name)
    finally:
        store.close()
    for path, text in ((file, found.toml), (roster, found.roster)):
        path.touch(mode=0o600, exist_ok=False)
        path.write_text(text, encoding="utf-8")
    return file, roster
