"""`python -m tests.bench.home`: the Home tab of a coach of 20 pitchers, in SQLite.

Each pitcher has a hundred outings. Prints the processor time to the finished view,
the best and the median of the runs, and how many statements the database was asked. Not a test:
the figures depend on the machine.
"""

import sqlite3
import statistics
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from time import process_time

from sqlalchemy import event

from bot.blocks.home import home_view
from core.ledger import NoticeKind
from core.model import OutboxMessage
from core.rulebooks import load_books
from core.store import Store
from tests.bench import season

ARMS, RUNS = 20, 30


def build(path: Path) -> None:
    """One team with all the arms."""
    season.build(path, ARMS)
    connection = sqlite3.connect(path)
    with connection:
        connection.execute("UPDATE pitcherteam SET team_id = 1")
        connection.execute("UPDATE outing SET team_id = 1")
    connection.close()


def main() -> None:
    """Print the figures."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "season.sqlite3"
        build(path)
        store = Store(f"sqlite:///{path}")
        asked: list[str] = []
        event.listen(store.engine, "before_cursor_execute", lambda *args: asked.append(args[2]))
        spent: list[float] = []
        statements = blocks = 0
        for _ in range(RUNS):
            asked.clear()
            row = OutboxMessage(
                workspace_id=season.WORKSPACE, slot="home/UC1", kind=NoticeKind.HOME,
                destination="UC1", not_before=season.DUE,
            )  # fmt: skip
            with store.reading() as session:
                begin = process_time()
                view = home_view(session, row, season.DUE, load_books)
                spent.append(process_time() - begin)
            statements, blocks = (
                sum(not one.startswith("BEGIN") for one in asked),
                len(view.view["blocks"]),
            )
        store.close()
    sys.stdout.write(
        f"{ARMS} pitchers: best {1000 * min(spent):.1f} ms, median "
        f"{1000 * statistics.median(spent):.1f} ms, {statements} statements, {blocks} blocks\n"
    )


if __name__ == "__main__":
    main()
