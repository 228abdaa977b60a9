"""A database with rows in it goes through every migration and keeps them."""

from pathlib import Path

from sqlalchemy import text

from core.store import Store, migrate

ROWS = (
    "INSERT INTO workspace VALUES ('T', '', '')",
    "INSERT INTO person (workspace_id, slack_id, name) VALUES ('T', 'U', 'Dana')",
    "INSERT INTO pitcher (workspace_id, name, also_called, birth_date, throws, breaking_pitch,"
    " pitch_caller, rule_books) VALUES ('T', 'M', '[]', '2009-01-01', 'R', 'none', 'pitcher',"
    " '[]')",
    "INSERT INTO line (workspace_id, channel, ts, direct, author_slack_id, text, posted_at,"
    " received_at, state, entries, questions, answers) VALUES ('T', 'C', '1.0', 0, 'U', 'x',"
    " '2026-05-01', '2026-05-01', 'read', '[]', '[]', '[]')",
    'INSERT INTO outing (workspace_id, line_id, slot, pitcher_id, "on", about, waiting)'
    " VALUES ('T', 1, '1/0', 1, '2026-05-01', 0, '[]')",
)


def test_rows_of_the_first_schema_survive_to_the_newest(tmp_path: Path) -> None:
    store = Store(f"sqlite:///{tmp_path}/old.sqlite3")
    migrate(store, "0001")
    with store.writing() as session:
        for row in ROWS:
            session.execute(text(row))

    migrate(store)

    with store.reading() as session:
        assert session.execute(text("SELECT count(*) FROM outing")).scalar() == 1
        assert session.execute(text("PRAGMA foreign_key_check")).all() == []
        assert session.execute(text("PRAGMA foreign_keys")).scalar() == 1
    store.close()
