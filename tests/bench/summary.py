"""`python -m tests.bench.summary`: the Monday summaries of 1,000, 3,000 and 10,000 pitchers.

Each has a hundred outings; the teams have twelve. Every summary is computed and put into words,
team by team, each in a session of its own as the bot does it. The floor, in the same run, is
sqlite3 alone reading the same rows. Prints processor time, how often the floor that is, and
the memory added. Not a test: the figures depend on the machine.
"""

import sqlite3
import sys
from collections.abc import Callable
from multiprocessing import get_context
from pathlib import Path
from tempfile import TemporaryDirectory
from time import process_time

from sqlmodel import Session, col, select

from bot.wording import summary as say
from core.due.summary import PAGE, summary
from core.model import Team
from core.rulebooks import load_books
from core.store import Store
from tests.bench import season

SIZES = (1_000, 3_000, 10_000)
#: What the summaries read, one statement for each table.
FLOOR = (
    "SELECT * FROM team",
    "SELECT * FROM pitcher",
    "SELECT * FROM pitcherteam",
    'SELECT id, pitcher_id, "on", kind, pitches, breaking, curve, slider, changeup, fastball, '
    "strikes, breaking_strikes, outs, caught_outs, effort, last_batter_from, game, about, waiting, "
    "joins, joined_as FROM outing WHERE withdrawn_at IS NULL",
    "SELECT painreport.*, posted_at, answers FROM painreport JOIN line ON line_id = line.id",
    "SELECT * FROM hold",
    "SELECT * FROM clearance",
    "SELECT * FROM coachlimit",
    "SELECT * FROM outingbook",
    "SELECT * FROM season",
    "SELECT * FROM teamevent",
    "SELECT * FROM line WHERE state IN ('asked', 'not read') AND posted_at >= '2026-08-17'",
)


def floor(path: Path) -> None:
    """Read every row that the summaries use."""
    connection = sqlite3.connect(path)
    for statement in FLOOR:
        for _row in connection.execute(statement):
            pass
    connection.close()


def summaries(path: Path) -> None:
    """Compute every team's summary and put it into words."""
    store = Store(f"sqlite:///{path}")
    with store.reading() as session:
        teams = session.exec(select(Team.id).order_by(col(Team.id))).all()
    for team_id in teams:
        with store.reading() as session:
            _one(session, session.get_one(Team, team_id))
    store.close()


def _one(session: Session, team: Team) -> None:
    found = summary(session, team, season.DUE, load_books)
    if len(say.summary(found, PAGE)) < len(found.weeks):
        raise AssertionError("a summary has fewer paragraphs than arms")


def measured(work: Callable[[Path], None], path: Path) -> tuple[float, float]:
    """Processor seconds and MiB added at the peak, in a process of its own."""
    with get_context("spawn").Pool(1) as pool:
        return pool.apply(_measure, (work, path))


def _measure(work: Callable[[Path], None], path: Path) -> tuple[float, float]:
    before = _memory("VmRSS")
    start = process_time()
    work(path)
    return process_time() - start, _memory("VmHWM") - before


def _memory(what: str) -> float:
    """A figure of this process in MiB, as Linux tells it: in use now, or at the peak."""
    lines = Path("/proc/self/status").read_text("ascii").splitlines()
    return int(next(line for line in lines if line.startswith(what)).split()[1]) / 1024


def main() -> None:
    """Print the figures; sizes may be given as arguments."""
    for arms in map(int, sys.argv[1:]) if sys.argv[1:] else SIZES:
        with TemporaryDirectory() as folder:
            path = Path(folder) / "season.sqlite3"
            season.build(path, arms)
            measured(floor, path)  # the file is in the machine's cache from here on
            read, _ = measured(floor, path)
            spent, added = measured(summaries, path)
        sys.stdout.write(
            f"{arms:,} pitchers: {spent:.1f} s, {spent / read:.1f} times the {read:.2f} s of "
            f"sqlite3 alone, {1000 * spent / arms:.2f} ms a pitcher, {added:.0f} MiB added\n"
        )


if __name__ == "__main__":
    main()
